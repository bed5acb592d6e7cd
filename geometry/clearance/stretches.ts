/**
 * A runner cut where the allowed gap changes: tubes may touch within the bundle of a merge's inlets (or of siamesed
 * ports), and nowhere else. Each stretch has flat ends of its own.
 */
import type { ResolvedMerge, ResolvedPort, ResolvedRunner } from '../header/resolve';
import { BUNDLE_OVERLAP } from '../tolerance';
import { type Chain, chain } from './chain';

export type Stretch = {
  readonly chain: Chain;
  /** The merge or port whose neighbours may touch this stretch. */
  readonly bundle: { readonly kind: 'merge' | 'port'; readonly id: string } | null;
};

export function stretches(
  r: ResolvedRunner,
  merges: ReadonlyMap<string, ResolvedMerge>,
  ports: ReadonlyMap<string, ResolvedPort>,
): Stretch[] {
  const line = r.centerline;
  if (!line) return [];
  const port = 'port' in r.runner.from ? ports.get(r.runner.from.port)! : null;
  const merge = merges.get(r.runner.to.merge)!;
  const lastStart = Math.max(0, line.length - merge.bundle);
  const firstEnd = Math.min(port?.bundle ?? 0, lastStart);
  const part = (from: number, to: number, bundle: Stretch['bundle']): Stretch[] => {
    const found = chain(line, r.tubeRadius, from, to);
    return found ? [{ chain: found, bundle }] : [];
  };
  return [
    ...(port ? part(0, firstEnd, { kind: 'port', id: port.port.id }) : []),
    ...part(firstEnd, lastStart, null),
    ...part(lastStart, line.length, { kind: 'merge', id: merge.merge.id }),
  ];
}

/** The least gap allowed between two stretches of different runners. */
export function requiredGap(a: Stretch, b: Stretch, tubeToTube: number): number {
  if (!a.bundle || !b.bundle || a.bundle.kind !== b.bundle.kind) return tubeToTube;
  const touching = a.bundle.kind === 'port' || a.bundle.id === b.bundle.id;
  return touching ? -BUNDLE_OVERLAP : tubeToTube;
}
