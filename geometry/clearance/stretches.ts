/**
 * A runner cut where the allowed gap changes: tubes may touch within the bundle of a merge's inlets (or of siamesed
 * ports), and nowhere else. Each stretch has flat ends of its own.
 */
import type { ResolvedMerge, ResolvedPort, ResolvedRunner } from '../header/resolve';
import { BUNDLE_OVERLAP } from '../tolerance';
import { type Chain, chain } from './chain';

export type Stretch = {
  readonly chain: Chain;
  /** Whether its port's neighbours may touch it. */
  readonly inPortBundle: boolean;
  /** The merge whose other tubes may touch it. A short runner can lie in both bundles at once. */
  readonly inMergeBundle: string | null;
};

export function stretches(
  r: ResolvedRunner,
  merges: ReadonlyMap<string, ResolvedMerge>,
  ports: ReadonlyMap<string, ResolvedPort>,
): Stretch[] {
  const line = r.centerline;
  if (!line) return [];
  const merge = merges.get(r.runner.to.merge)!;
  const within = (x: number): number => Math.min(line.length, Math.max(0, x));
  const portEnd = within('port' in r.runner.from ? ports.get(r.runner.from.port)!.bundle : 0);
  const mergeStart = within(line.length - merge.bundle);
  const cuts = [0, Math.min(portEnd, mergeStart), Math.max(portEnd, mergeStart), line.length];
  return cuts.slice(1).flatMap((to, i): Stretch[] => {
    const from = cuts[i]!;
    const found = chain(line, r.tubeRadius, from, to);
    if (!found) return [];
    return [{ chain: found, inPortBundle: to <= portEnd, inMergeBundle: from >= mergeStart ? merge.merge.id : null }];
  });
}

/** The least gap allowed between two stretches of different runners. */
export function requiredGap(a: Stretch, b: Stretch, tubeToTube: number): number {
  const atPorts = a.inPortBundle && b.inPortBundle;
  const atMerge = a.inMergeBundle !== null && a.inMergeBundle === b.inMergeBundle;
  return atPorts || atMerge ? -BUNDLE_OVERLAP : tubeToTube;
}
