/** The real parts that the drawn header has, and how far apart they are drawn just now: gliding where motion is allowed. */
import { useEffect, useMemo, useRef, useState } from 'react';
import type { Header } from '../../../geometry';
import { type Owned, type OwnerKey, stillOwned } from '../made/owned';
import type { ShownPart } from '../made/shape';
import { useMade } from '../made/state';
import { useViewState } from '../viewState';
import { ASSEMBLED, type Exploded, explodedBy } from './model/explode';

const GLIDE_MS = 420;
/** What a slide moves at a time follows the hand at once. */
const STEP = 0.2;

export type Apart = {
  readonly made: ReadonlyMap<OwnerKey, Owned>;
  /** All of them while they are apart; none while they are together. */
  readonly parts: readonly ShownPart[];
  readonly exploded: Exploded;
  /** Where they glide to. */
  readonly goal: Exploded;
};

const NONE: readonly ShownPart[] = [];

export function useApart(header: Header | null): Apart {
  const parts = useMade((s) => s.parts);
  const of = useMade((s) => s.of);
  const target = useViewState((s) => s.exploded);
  const share = useGlidingShare(target);
  const isApart = share > 0 || target > 0;
  const made = useMemo(() => (header ? stillOwned(parts, of, header) : new Map()), [header, parts, of]);
  const still = useMemo(() => (isApart ? [...made.values()].flatMap((own) => own.parts) : NONE), [made, isApart]);
  const exploded = useMemo(() => (header ? explodedBy(header, still, share) : ASSEMBLED), [header, still, share]);
  const goal = useMemo(() => (header ? explodedBy(header, still, target) : ASSEMBLED), [header, still, target]);
  return { made, parts: still, exploded, goal };
}

function useGlidingShare(target: number): number {
  const [share, setShare] = useState(target);
  const now = useRef(share);
  useEffect(() => {
    const put = (next: number) => {
      now.current = next;
      setShare(next);
    };
    const from = now.current;
    if (Math.abs(target - from) < STEP || matchMedia('(prefers-reduced-motion: reduce)').matches) {
      put(target);
      return;
    }
    let frame = 0;
    let start: number | null = null;
    const step = (time: number) => {
      start ??= time;
      const t = Math.min(1, (time - start) / GLIDE_MS);
      put(t === 1 ? target : from + (target - from) * t * t * (3 - 2 * t));
      if (t < 1) frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [target]);
  return share;
}
