/** Taking the eye to a place: the camera looks, the place is marked, what is meant is picked; and lighting things in pairs. */
import type { Vec3 } from '../../../shared/vec3';
import { type Ref, useSession } from '../session';

/** How much of the neighbourhood to show, mm. */
const LOOK_RADIUS = 90;

/** @param mark whether the place is marked: not where something is drawn there that a mark would cover */
export function goTo(at: Vec3, refs: readonly (Ref | null)[], radius = LOOK_RADIUS, mark = true): void {
  const { selectAll, setMark, ask } = useSession.getState();
  const known = refs.filter((ref) => ref !== null);
  // The last one picked is what panels for one thing show: the first meant.
  if (known.length > 0) selectAll([...known].reverse());
  setMark(mark ? at : null);
  ask({ kind: 'look', at, radius });
}

/** Lights two things at once. */
export function light(first: Ref | null, beside: Ref | null): void {
  const [one, other] = first ? [first, beside] : [beside, null];
  useSession.getState().hover(one && other ? { ...one, beside: other } : one);
}

export const unlight = (): void => useSession.getState().hover(null);
