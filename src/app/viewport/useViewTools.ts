/** What the view's tools make of the header: what of it is seen, where it is cut, and what a click on it means. */
import { useEffect, useMemo, useRef } from 'react';
import type { Header } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { placeThing } from '../measure/things';
import { useTakingPicks } from '../measure/useMeasured';
import { sameRef } from '../refs';
import { type Ref, useSession } from '../session';
import { useViewState } from '../viewState';
import type { Rig } from './camera/rig';
import { eyeAxes, halfHeight } from './camera/view';
import { type CutPlane, cutPlanes, extentOf, isCutAway } from './cuts/planes';
import type { Picked } from './gl/pick';
import { headerBalls } from './model/content';
import { useHiding, withoutHidden } from './seen';

/** A tangent point or a corner this near to the pointer is what is meant, px. */
const SNAP_PX = 9;

export function useSeen(header: Header | null): Header | null {
  const { hidden, only } = useHiding();
  return useMemo(() => header && withoutHidden(header, { hidden, only }), [header, hidden, only]);
}

/** @param seen cuts run over what is shown, and begin in its middle; one that was placed stays there */
export function useCuts(seen: Header | null) {
  const cuts = useViewState((s) => s.cuts);
  const extent = useMemo(() => extentOf(seen ? headerBalls(seen) : []), [seen]);
  const planes = useMemo(() => cutPlanes(cuts, extent), [cuts, extent]);
  // Read by picking, which outlives a render.
  const now = useRef<readonly CutPlane[]>(planes);
  now.current = planes;
  const isGone = useMemo(() => (at: Vec3) => isCutAway(now.current, at), []);
  return { extent, planes, isGone };
}

/** Parallel or not is the session's wish; the rig obeys. */
export function useProjection(rig: Rig): boolean {
  const parallel = useViewState((s) => s.parallel);
  useEffect(() => {
    if (rig.view().parallel !== parallel) rig.project(parallel);
  }, [rig, parallel]);
  useTakingPicks();
  return parallel;
}

/** @param adds picks one more, or lets that one go */
export function clickOn(found: Picked | null, adds: boolean, rig: Rig, header: Header | null): void {
  const session = useSession.getState();
  const view = useViewState.getState();
  if (view.measuring) {
    if (!found || !header) return;
    if (view.grain === 'place') view.take(placeThing(header, found.ref, found.at, SNAP_PX * mmPerPx(rig, found.at)));
    else session.select(view.grain === 'whole' ? whole(found.ref) : found.ref);
    return;
  }
  if (adds) {
    if (found) session.toggle(found.ref);
    return;
  }
  // Glass fills much of the picture: a second click on what is picked there clears, as a click beside it would.
  const again = found?.ref.kind === 'surrounding' && sameRef(found.ref, session.selected);
  session.select(found && !again ? found.ref : null);
}

const whole = (ref: Ref): Ref => (ref.kind === 'runner' ? { kind: 'runner', id: ref.id } : ref);

function mmPerPx(rig: Rig, at: Vec3): number {
  const view = rig.drawn();
  const { back } = eyeAxes(view);
  const nearer = at.reduce((sum, x, i) => sum + (x - view.target[i]!) * back[i]!, 0);
  const depth = view.parallel ? view.distance : Math.max(1, view.distance - nearer);
  return (2 * halfHeight(depth)) / rig.size().height;
}
