/** Keys of the named views, as data; and the keys that steer the camera while the 3D view has the focus. */
import type { ViewPreset } from '../../session';
import type { Rig } from './rig';
import { orbit, pan, zoom } from './view';

export const VIEWS: readonly { readonly preset: ViewPreset; readonly word: string; readonly key: string }[] = [
  { preset: 'corner', word: 'Corner', key: '1' },
  { preset: 'front', word: 'Front', key: '2' },
  { preset: 'back', word: 'Back', key: '3' },
  { preset: 'left', word: 'Left', key: '4' },
  { preset: 'right', word: 'Right', key: '5' },
  { preset: 'top', word: 'Top', key: '6' },
  { preset: 'bottom', word: 'Bottom', key: '7' },
];
export const FIT_KEY = 'F';
export const PARALLEL_KEY = 'P';

const TURN = Math.PI / 24;
const STEP = 0.12;
const ZOOM = 1.2;

/** @returns whether the key meant something here */
export function press(
  e: {
    readonly key: string;
    readonly shiftKey: boolean;
    readonly ctrlKey: boolean;
    readonly metaKey: boolean;
    readonly altKey: boolean;
  },
  rig: Rig,
): boolean {
  if (e.ctrlKey || e.metaKey || e.altKey) return false;
  const arrow = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
  if (arrow) {
    const [x, y] = arrow as [number, number];
    if (e.shiftKey) rig.move((v) => pan(v, -x * STEP, -y * STEP));
    else rig.move((v) => orbit(v, x * TURN, y * TURN));
    return true;
  }
  const action = {
    '+': () => rig.move((v) => zoom(v, 1 / ZOOM)),
    '=': () => rig.move((v) => zoom(v, 1 / ZOOM)),
    '-': () => rig.move((v) => zoom(v, ZOOM)),
    _: () => rig.move((v) => zoom(v, ZOOM)),
  }[e.key.toUpperCase()];
  action?.();
  return action !== undefined;
}
