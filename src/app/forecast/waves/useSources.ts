/** What the overlap's pressure comes from, found once the face is drawn: it takes the better part of a second. Kept with its answer. */
import { useEffect, useMemo, useState } from 'react';
import type { SpeedAnswer } from '../../../pulse/forecast/types';
import { type OverlapSources, overlapSources } from '../../../pulse/forecast/waveSources';
import type { WaveRun } from './runs';

const known = new WeakMap<SpeedAnswer, Map<number, OverlapSources | null>>();

const lookUp = ({ answer }: WaveRun, cylinder: number): OverlapSources | null | undefined =>
  known.get(answer)?.get(cylinder);

function find(run: WaveRun, cylinder: number): void {
  const found = known.get(run.answer) ?? new Map<number, OverlapSources | null>();
  known.set(run.answer, found.set(cylinder, overlapSources(run, cylinder)));
}

/** In the order of the runs; null where not found yet, or nothing can be. */
export function useSources(runs: readonly WaveRun[], cylinder: number): readonly (OverlapSources | null)[] {
  const [found, setFound] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a count of what was found since
  const sources = useMemo(() => runs.map((run) => lookUp(run, cylinder) ?? null), [runs, cylinder, found]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: and the next one after it
  useEffect(() => {
    const missing = runs.find((run) => lookUp(run, cylinder) === undefined);
    if (!missing) return;
    // One at a time, so that the page answers between them.
    const timer = setTimeout(() => {
      find(missing, cylinder);
      setFound((count) => count + 1);
    }, 30);
    return () => clearTimeout(timer);
  }, [runs, cylinder, found]);
  return sources;
}
