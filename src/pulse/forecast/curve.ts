/**
 * A torque curve of one engine on one gas path, and what is read off it: peaks, and what lies under it within a band. rpm, N m, W.
 */
import type { Assumed, EngineSetup } from '../engine/types';
import type { GasPath } from '../path/types';
import type { SpeedJob, Team } from './job';
import type { Band } from './speeds';
import type { SpeedAnswer, SpeedFailure, TorqueCurve } from './types';

/** What is followed: an engine on a gas path, with what nobody gave. */
export type Subject = {
  readonly title: string;
  readonly engine: EngineSetup;
  readonly path: GasPath;
  readonly assumed: readonly Assumed[];
  /** Sentences on what the path leaves out. */
  readonly notes: readonly string[];
};

export type How = {
  /** Longest cell, m. Default 0.01. */
  readonly cell?: number;
  /** Speeds whose traces are kept. */
  readonly traced?: readonly number[];
  /** Speeds whose waves are kept, with their traces. */
  readonly waved?: readonly number[];
  /** Told once for each speed that is done. */
  readonly tell?: () => void;
  readonly stopped?: () => boolean;
  /** Of several curves: each whole before the next, or all at a speed before the next speed. Default: curves. */
  readonly order?: 'curves' | 'speeds';
};

/** Of a speed that was never told, because it was stopped before. */
export const NOT_FOLLOWED = 'not followed: interrupted';

export const isAnswer = (point: SpeedAnswer | SpeedFailure): point is SpeedAnswer => !('failed' in point);

export const jobsOf = (
  { engine, path }: Pick<Subject, 'engine' | 'path'>,
  speeds: readonly number[],
  { cell, traced = [], waved = [] }: How = {},
): SpeedJob[] =>
  speeds.map((rpm) => ({
    ...{ engine, path, rpm },
    ...(cell === undefined ? {} : { cell }),
    ...(traced.includes(rpm) ? { keep: 'traces' as const } : {}),
    ...(waved.includes(rpm) ? { keep: 'waves' as const } : {}),
  }));

/** The curves of several subjects at the same speeds, followed together so that no core waits between two of them. */
export async function followCurves(
  team: Team,
  subjects: readonly Pick<Subject, 'engine' | 'path'>[],
  speeds: readonly number[],
  how: How = {},
): Promise<TorqueCurve[]> {
  const curves = subjects.map((subject) => jobsOf(subject, speeds, how));
  const jobs = how.order === 'speeds' ? speeds.flatMap((_, at) => curves.map((curve) => curve[at]!)) : curves.flat();
  const told: (SpeedAnswer | SpeedFailure)[] = jobs.map(({ rpm }) => ({ rpm, failed: NOT_FOLLOWED }));
  await team.follow(
    jobs,
    (index, answer) => {
      told[index] = answer;
      how.tell?.();
    },
    how.stopped,
  );
  const placeOf = (curve: number, at: number): number =>
    how.order === 'speeds' ? at * subjects.length + curve : curve * speeds.length + at;
  return subjects.map((_, curve) => speeds.map((_, at) => told[placeOf(curve, at)]!));
}

export const followCurve = async (
  team: Team,
  subject: Pick<Subject, 'engine' | 'path'>,
  speeds: readonly number[],
  how: How = {},
): Promise<TorqueCurve> => (await followCurves(team, [subject], speeds, how))[0]!;

/** `atEnd`: it lies at the first or last speed followed, so the true one may lie beyond. */
export type Peak = { readonly rpm: number; readonly value: number; readonly atEnd: boolean };

/** What all that is read off a curve needs of a point of it; what a study keeps has it too. */
export type TorquePoint = {
  readonly rpm: number;
  readonly torque: number;
  readonly power: number;
  readonly settled: boolean;
};

export type Summary = {
  /** N m and W; null where nothing was answered. */
  readonly torque: Peak | null;
  readonly power: Peak | null;
  /** Under the torque curve within the band, N m × rpm, and that over the width of what is covered: N m. */
  readonly area: number | null;
  readonly mean: number | null;
  /** The part of the band that the curve reaches over. */
  readonly covered: Band | null;
  /** How many speeds were answered. */
  readonly answered: number;
  /** Speeds without an answer, which area and peaks pass over in a straight line; and those that had not settled. */
  readonly missing: readonly number[];
  readonly unsettled: readonly number[];
};

/** @param curve speeds rising */
export function sumUp(curve: readonly (TorquePoint | SpeedFailure)[], band: Band): Summary {
  const points = curve.filter((point): point is TorquePoint => !('failed' in point));
  const covered = coveredBy(points, band);
  const torques = points.map(({ rpm, torque }) => [rpm, torque] as const);
  const area = covered === null ? null : areaUnder(torques, covered);
  return {
    torque: peakOf(torques),
    power: peakOf(points.map(({ rpm, power }) => [rpm, power])),
    area,
    mean: covered === null || area === null ? null : area / (covered[1] - covered[0]),
    covered,
    answered: points.length,
    missing: curve.filter((point) => 'failed' in point).map(({ rpm }) => rpm),
    unsettled: points.filter(({ settled }) => !settled).map(({ rpm }) => rpm),
  };
}

function coveredBy(points: readonly TorquePoint[], [lowest, highest]: Band): Band | null {
  if (points.length < 2) return null;
  const low = Math.max(lowest, points[0]!.rpm);
  const high = Math.min(highest, points.at(-1)!.rpm);
  return low < high ? [low, high] : null;
}

type Pair = readonly [x: number, y: number];

/** The vertex of the parabola through the highest point and its neighbours. */
export function peakOf(points: readonly Pair[]): Peak | null {
  if (points.length === 0) return null;
  const top = points.reduce((best, [, y], k) => (y > points[best]![1] ? k : best), 0);
  const [x1, y1] = points[top]!;
  const before = points[top - 1];
  const after = points[top + 1];
  if (!before || !after) return { rpm: x1, value: y1, atEnd: true };
  const [x0, y0] = before;
  const rise = (y1 - y0) / (x1 - x0);
  const bend = ((after[1] - y1) / (after[0] - x1) - rise) / (after[0] - x0);
  // Level over all three: no vertex.
  if (!(bend < 0)) return { rpm: x1, value: y1, atEnd: false };
  const x = (x0 + x1) / 2 - rise / (2 * bend);
  return { rpm: x, value: y0 + rise * (x - x0) + bend * (x - x0) * (x - x1), atEnd: false };
}

/** Trapezoids over the part of a piecewise linear curve from `from` to `to`, both within it. */
export function areaUnder(points: readonly Pair[], [from, to]: Band): number {
  let area = 0;
  for (let k = 1; k < points.length; k++) {
    const [x0, y0] = points[k - 1]!;
    const [x1, y1] = points[k]!;
    const a = Math.max(from, x0);
    const b = Math.min(to, x1);
    if (!(a < b)) continue;
    const at = (x: number): number => y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
    area += (b - a) * 0.5 * (at(a) + at(b));
  }
  return area;
}
