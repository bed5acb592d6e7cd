/** The room round the header, as actions. */
import type { Action } from '../actions/list/action';
import { needsDesign } from '../actions/list/workActions';
import { useLeaf } from '../leaf';
import { useRoomLook } from './look';

export const roomActions: readonly Action[] = [
  {
    id: 'room.open',
    name: 'Show the room round the header',
    group: 'View',
    also: 'gaps clearance tools spanner socket reach wrap removal off sensors bung rock heat',
    ...needsDesign,
    run: () => useLeaf.getState().ask('room'),
  },
  {
    id: 'room.tint',
    name: 'Colour tubes by room, or by their own colours again',
    group: 'View',
    also: 'gap clearance map',
    ...needsDesign,
    run: () => useRoomLook.getState().set({ tinted: !useRoomLook.getState().tinted }),
  },
];
