/** What two versions are weighed by: each runner's length, bends, turning and least gap, and its tube's mass. mm, °, kg. */
import type { Design } from '../../shared/design/types';
import { checkHeader } from '../check/check';
import { checkSurroundings, checkTubeToTube } from '../check/clearances';
import type { Meshes } from '../check/meshes';
import { obstaclesOf } from '../check/obstacles';
import type { CheckReport, Margin } from '../check/report';
import { massOf, massOfAll } from '../header/mass';
import { type Header, resolveHeader } from '../header/resolve';

export type RunnerMeasures = {
  readonly id: string;
  /** What lies in the head included. */
  readonly length: number;
  readonly bends: number;
  /** All bend angles together. */
  readonly turned: number;
  /** Of the tube along its middle; null where the material is in no table. */
  readonly mass: number | null;
  /** Tightest place that this runner has a part in; `margin` is what it has to spare. Null where nothing is near. */
  readonly tightest: Margin | null;
};

export type HeaderMeasures = {
  readonly report: CheckReport;
  readonly runners: readonly RunnerMeasures[];
  /** Of all tubes; null where one of them is unknown. */
  readonly mass: number | null;
};

export function measuresOf(design: Design, meshes: Meshes): HeaderMeasures {
  const header = resolveHeader(design);
  const report = checkHeader(header, meshes);
  const tightest = tightestPlaces(header, meshes);
  const runners = report.runners.map((r): RunnerMeasures => {
    const runner = design.runners.find(({ id }) => id === r.id)!;
    return {
      id: r.id,
      length: r.length,
      bends: r.bends,
      turned: r.angles.reduce((sum, angle) => sum + angle, 0),
      mass: massOf(design.tubes[runner.tube]!, r.centerline),
      tightest: tightest.get(r.id) ?? null,
    };
  });
  return { report, runners, mass: massOfAll(design, report.runners) };
}

/** The tightest place of each runner: of its pairs with every other, and of itself against what stands around. */
function tightestPlaces(header: Header, meshes: Meshes): ReadonlyMap<string, Margin> {
  const { obstacles } = obstaclesOf(header, meshes);
  const found = new Map<string, Margin>();
  const note = (margin: Margin | null, ...ids: string[]): void => {
    for (const id of ids) if (margin && margin.margin < (found.get(id)?.margin ?? Infinity)) found.set(id, margin);
  };
  const routed = header.runners.filter((r) => r.centerline);
  for (const [i, a] of routed.entries()) {
    note(checkSurroundings({ ...header, runners: [a] }, obstacles).least, a.runner.id);
    for (const b of routed.slice(i + 1))
      note(checkTubeToTube({ ...header, runners: [a, b] }).least, a.runner.id, b.runner.id);
  }
  return found;
}
