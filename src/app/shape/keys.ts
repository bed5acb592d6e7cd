/**
 * Keys while something is held, before anyone else's: axes, digits, Tab, Enter, Escape. And the arrow keys that nudge what
 * is picked, along the design's axis that runs most nearly that way on the screen.
 */
import { MM_PER_INCH } from '../../../shared/units';
import type { Vec3 } from '../../../shared/vec3';
import { documents } from '../document';
import { useSession } from '../session';
import { mainHandle } from './choose';
import { holds } from './machine';
import { screenAxis } from './pointer';
import { shaper } from './shaper';

type Key = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'metaKey' | 'altKey'>;

/** @returns whether the key was for the hand, and nobody else should hear of it */
export function keyWhileHeld(e: Key): boolean {
  const state = shaper.state();
  const { dispatch } = shaper;
  if (!holds(state) && state.phase !== 'pressed') return false;
  if (e.key === 'Escape') {
    dispatch({ kind: 'cancel' });
    return true;
  }
  // Arrows go on with the burst; Control and Command act on the page, after the burst is one step.
  if (state.phase === 'nudging') {
    if (!isArrow(e.key) && !['Shift', 'Alt', 'Control', 'Meta'].includes(e.key)) dispatch({ kind: 'rest' });
    return false;
  }
  if (e.ctrlKey || e.metaKey) return false;
  if (e.key === 'Enter') dispatch({ kind: 'enter' });
  else if (state.phase === 'typing') {
    if (e.key !== 'Tab') return false;
    dispatch({ kind: 'field', step: e.shiftKey ? -1 : 1 });
  } else if (/^[xyz]$/i.test(e.key)) dispatch({ kind: 'axis', axis: e.key.toLowerCase() as 'x' | 'y' | 'z' });
  else if (/^[\d.,+(−-]$/.test(e.key)) dispatch({ kind: 'type', text: e.key });
  return true;
}

/** How far one press of an arrow goes: a millimetre, or a thirty-second of an inch where inches are shown. */
const nudgeStep = (): number => (documents.store.getState().settled?.display === 'in' ? MM_PER_INCH / 32 : 1);

const isArrow = (key: string): boolean => key.startsWith('Arrow') || key === 'PageUp' || key === 'PageDown';

/** @returns whether the key moved what is picked */
export function nudge(e: Key, eye: { readonly right: Vec3; readonly up: Vec3; readonly back: Vec3 }): boolean {
  if (e.ctrlKey || e.metaKey || e.altKey || !isArrow(e.key)) return false;
  const handle = mainHandle(useSession.getState().selected);
  const state = shaper.state();
  if (!handle || state.phase === 'typing' || state.phase === 'dragging') return false;
  const grip = shaper.grip(handle);
  if (!grip || grip.refusal) return false;
  const [axis, sign] = ({
    ArrowRight: [eye.right, 1],
    ArrowLeft: [eye.right, -1],
    ArrowUp: [eye.up, 1],
    ArrowDown: [eye.up, -1],
    PageUp: [eye.back, -1],
    PageDown: [eye.back, 1],
  }[e.key] ?? [eye.up, 0]) as [Vec3, number];
  const size = sign * nudgeStep() * (e.shiftKey ? 0.2 : 1);
  const by = screenAxis(axis).map((x) => x * size) as unknown as Vec3;
  shaper.dispatch({ kind: 'nudge', grip, by: { kind: 'move', by } });
  return true;
}

/** Opens exact entry for a handle. @returns whether there is anything to enter it for */
export function openExact(handle = mainHandle(useSession.getState().selected)): boolean {
  const grip = handle && shaper.grip(handle);
  if (!grip || grip.refusal) return false;
  shaper.dispatch({ kind: 'exact', grip, at: null });
  return shaper.state().phase === 'typing';
}
