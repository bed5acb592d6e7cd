/** What many runs came to: times to the first layout that holds, class by class, with quality beside them, and the limits. */
import type { Outcome } from './solve';

/** Classes with a limit on their times: the share that must be solved within so many seconds. */
const LIMITS: Readonly<Record<string, readonly (readonly [share: number, seconds: number])[]>> = {
  easy: [[1, 2]],
  medium: [[1, 2]],
  classic: [[1, 2]],
  hard: [
    [0.98, 10],
    [1, 30],
  ],
};
const OWN: readonly (readonly [number, number])[] = [[1, 30]];
const HARD_MEDIAN = 0.5;
const MOST = { bends: 1.14, angle: 1.07, more: 0.1 };

const kindsOf = (outcomes: readonly Outcome[]): string[] => [...new Set(outcomes.map((o) => o.problem.kind))].sort();

/** Those that were not solved count as slower than all others. */
const times = (outcomes: readonly Outcome[]): number[] =>
  outcomes.map((o) => o.firstValidSeconds ?? Number.POSITIVE_INFINITY).sort((a, b) => a - b);

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;

export type Quality = {
  readonly bends: number;
  readonly angle: number;
  readonly more: number;
  readonly counted: number;
};

/** Of solved ones with a reference: sums over sums, and how many have more bends than the known layout. */
export function quality(outcomes: readonly Outcome[]): Quality {
  const rated = outcomes.filter((o) => o.firstValidSeconds !== null && o.problem.reference);
  const sum = (of: (o: Outcome) => number): number => rated.reduce((total, o) => total + of(o), 0);
  return {
    bends: sum((o) => o.bends) / sum((o) => o.problem.reference!.bends),
    angle: sum((o) => o.angle) / sum((o) => o.problem.reference!.angle),
    more: rated.filter((o) => o.bends > o.problem.reference!.knownBends).length,
    counted: rated.length,
  };
}

export function classLines(outcomes: readonly Outcome[]): string[] {
  return kindsOf(outcomes).map((kind) => {
    const of = outcomes.filter((o) => o.problem.kind === kind);
    const sorted = times(of);
    const solved = sorted.filter(Number.isFinite).length;
    const { bends, angle, more, counted } = quality(of);
    const first = `median ${shown(at(sorted, 0.5))}  90th percentile ${shown(at(sorted, 0.9))}  greatest ${shown(sorted.at(-1)!)}`;
    const good =
      counted > 0 ? `  bends ${bends.toFixed(3)} ×  angle ${angle.toFixed(3)} ×  more bends ${more} of ${counted}` : '';
    return `${kind.padEnd(18)} solved ${solved} of ${of.length}  first ${first}${good}`;
  });
}

/** The limits beside what was measured, on one line; `(!)` marks what is beyond its limit or was not measured far enough. */
export function summary(outcomes: readonly Outcome[], against: string): string {
  const parts = kindsOf(outcomes).flatMap((kind) => {
    const sorted = times(outcomes.filter((o) => o.problem.kind === kind));
    const within = (LIMITS[kind] ?? OWN).map(([share, seconds]) => {
      const reached = sorted.filter((t) => t <= seconds).length / sorted.length;
      return `${kind} ${(100 * reached).toFixed(1)} % in ${seconds} s (≥ ${100 * share})${mark(reached >= share)}`;
    });
    if (kind !== 'hard') return within;
    const median = at(sorted, 0.5);
    return [...within, `hard median ${shown(median)} (< ${HARD_MEDIAN})${mark(median < HARD_MEDIAN)}`];
  });
  const { bends, angle, more, counted } = quality(outcomes);
  const share = more / counted;
  if (counted > 0)
    parts.push(
      `bends ${bends.toFixed(3)} × (≤ ${MOST.bends})${mark(bends <= MOST.bends)}`,
      `angle ${angle.toFixed(3)} × (≤ ${MOST.angle})${mark(angle <= MOST.angle)}`,
      `more bends ${(100 * share).toFixed(1)} % (≤ ${100 * MOST.more})${mark(share <= MOST.more)}`,
    );
  return `route: ${[...parts, against].join('; ')}`;
}

const mark = (holds: boolean): string => (holds ? '' : ' (!)');
const shown = (seconds: number): string => (Number.isFinite(seconds) ? `${seconds.toFixed(2)} s` : 'never');
