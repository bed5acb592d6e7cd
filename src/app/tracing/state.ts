/** The sheet that takes a flange's outline from a drawing or a scan: which flange it is open for, and the action that opens it. */
import { create } from 'zustand';
import type { Action } from '../actions/list/action';
import { documents } from '../document';
import { useSession } from '../session';

export const useOutline = create<{ readonly flange: string | null }>()(() => ({ flange: null }));

export const openOutline = (flange: string): void => useOutline.setState({ flange });
export const closeOutline = (): void => useOutline.setState({ flange: null });

/** The flange that is picked, else the only one there is. */
function meant(): string | null {
  const flanges = documents.store.getState().settled?.flanges ?? [];
  const { selected } = useSession.getState();
  const picked = selected && (selected.kind === 'flange' || selected.kind === 'fastener') ? selected.id : null;
  return flanges.find(({ id }) => id === picked)?.id ?? (flanges.length === 1 ? flanges[0]!.id : null);
}

export const tracingActions: readonly Action[] = [
  {
    id: 'flange.outline',
    name: 'Outline from a drawing or scan…',
    group: 'Edit',
    also: 'flange gasket trace dxf import picture photo holes openings',
    ready: () => meant() !== null,
    why: () => 'Pick a flange first',
    run: () => openOutline(meant()!),
  },
];
