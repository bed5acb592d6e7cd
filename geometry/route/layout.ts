/** One way of laying a header, measured: what the router finds, compares and offers. mm and degrees. */
import type { Design } from '../../shared/design/types';
import { check } from '../check/check';
import type { Meshes } from '../check/meshes';
import type { CheckReport } from '../check/report';

export type Layout = {
  readonly design: Design;
  readonly report: CheckReport;
  readonly bends: number;
  /** All bend angles together, degrees. */
  readonly angle: number;
  /** All centerlines together, mm. */
  readonly length: number;
  /** Least room beyond what the rules ask, of tubes to each other and to what stands around, mm. */
  readonly margin: number;
};

export function measuredLayout(design: Design, meshes: Meshes): Layout {
  const report = check(design, meshes);
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const { tubeToTube, surroundings, mergeBodies } = report.clearance;
  return {
    design,
    report,
    bends: sum(report.runners.map((r) => r.bends)),
    angle: sum(report.runners.map((r) => sum(r.angles))),
    length: sum(report.runners.map((r) => r.centerline)),
    margin: Math.min(...[tubeToTube, surroundings, mergeBodies].map((m) => m?.margin ?? Number.POSITIVE_INFINITY)),
  };
}

/** Angles are compared in steps of this, degrees, since nobody tells less apart: of those in one step the roomier is the better. */
const SAME_ANGLE = 0.5;

/** Negative where `a` is the better: every rule, then fewest bends, least turning, most room. */
export function compareLayouts(a: Layout, b: Layout): number {
  if (a.report.ok !== b.report.ok) return a.report.ok ? -1 : 1;
  if (!a.report.ok) return a.report.problems.length - b.report.problems.length;
  if (a.bends !== b.bends) return a.bends - b.bends;
  const [one, other] = [Math.round(a.angle / SAME_ANGLE), Math.round(b.angle / SAME_ANGLE)];
  if (one !== other) return one - other;
  return a.margin === b.margin ? a.angle - b.angle : b.margin - a.margin;
}
