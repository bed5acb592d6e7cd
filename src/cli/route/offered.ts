/** What a layout is weighed by beside others. mm, degrees, kg. */
import { type Layout, massOfAll } from '../../../geometry';

export type Offered = {
  readonly bends: number;
  readonly angle: number;
  /** Least room beyond what the rules ask; null where nothing is near anything. */
  readonly margin: number | null;
  readonly length: number;
  /** Of all tubes; null where the density of one is not known. */
  readonly mass: number | null;
  /** By collector: the runner in each inlet, from 1; null in one that is free. */
  readonly inlets: Readonly<Record<string, readonly (string | null)[]>>;
};

export function offered({ design, report, bends, angle, length, margin }: Layout): Offered {
  const inlets = design.merges.map(({ id, inlets: count }) => {
    const inside = (k: number) => design.runners.find((r) => r.to.merge === id && r.to.inlet === k + 1)?.id ?? null;
    return [id, Array.from({ length: count }, (_, k) => inside(k))] as const;
  });
  return {
    ...{ bends, angle, length },
    margin: Number.isFinite(margin) ? margin : null,
    mass: massOfAll(design, report.runners),
    inlets: Object.fromEntries(inlets),
  };
}
