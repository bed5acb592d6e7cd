/**
 * Where round a tube a cut's curve stands highest and lowest. A saddle has two of each where its branch stands square, so all
 * of them are found. mm, radians in [0, 2π).
 */
import { LENGTH_TOLERANCE } from '../tolerance';

const TURN = 2 * Math.PI;
/** A half-degree: cuts have a few ups and downs a turn. */
const SAMPLES = 720;
/** Golden sections: 0.618^60 of a degree is below rounding. */
const NARROWINGS = 60;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Nearer than this in height, two places are equally high; a saw does not tell them apart. */
const SAME_HEIGHT = LENGTH_TOLERANCE * 1000;

export type Extremes = {
  readonly highest: readonly number[];
  readonly lowest: readonly number[];
  readonly max: number;
  readonly min: number;
};

/** @param corners where the curve has a kink: looked at by themselves, since narrowing stops short of them */
export function extremes(height: (angle: number) => number, corners: readonly number[] = []): Extremes {
  const highest = peaks(height, corners);
  const lowest = peaks((a) => -height(a), corners);
  return { highest, lowest, max: height(highest[0]!), min: height(lowest[0]!) };
}

function peaks(f: (angle: number) => number, corners: readonly number[]): number[] {
  const step = TURN / SAMPLES;
  const heights = Array.from({ length: SAMPLES }, (_, i) => f(i * step));
  const level = levelStretches(heights);
  const found: number[] = [...corners, ...level.map(({ from, to }) => ((from + to) / 2) * step)];
  for (let i = 0; i < SAMPLES; i++) {
    const here = heights[i]!;
    const [before, after] = [heights[(i + SAMPLES - 1) % SAMPLES]!, heights[(i + 1) % SAMPLES]!];
    if (here - before > LEVEL || here - after > LEVEL)
      if (here >= before - LEVEL && here >= after - LEVEL) found.push(narrowed(f, (i - 1) * step, (i + 1) * step));
  }
  const best = Math.max(...found.map(f));
  const topmost = level.filter(({ from }) => heights[from]! > best - SAME_HEIGHT);
  const top = found.filter((a) => f(a) > best - SAME_HEIGHT).map(wrapped);
  // What lies on one level stretch is one place: its middle.
  const onLevel = (a: number) => topmost.some(({ from, to }) => liesBetween(a, (from - 1) * step, (to + 1) * step));
  const places = [
    ...top.filter((a) => !onLevel(a)),
    ...topmost.map(({ from, to }) => wrapped(((from + to) / 2) * step)),
  ];
  return places
    .sort((a, b) => a - b)
    .filter((a, i, all) => i === 0 || a - all[i - 1]! > step)
    .filter((a, i, all) => i === 0 || i < all.length - 1 || a - TURN < all[0]! - step);
}

/** Two samples nearer in height than this are level. */
const LEVEL = LENGTH_TOLERANCE;
/** Samples in a row that make a level stretch. */
const LEAST_STRETCH = 3;

/** Runs of samples on one level, round the turn; a run across the seam goes on past the last sample, and a whole turn is at the seam. */
function levelStretches(heights: readonly number[]): { from: number; to: number }[] {
  const n = heights.length;
  const joined = heights.map((h, i) => Math.abs(h - heights[(i + 1) % n]!) < LEVEL);
  if (joined.every(Boolean)) return [{ from: 0, to: 0 }];
  const starts = joined.flatMap((j, i) => (j && !joined[(i + n - 1) % n] ? [i] : []));
  return starts
    .map((from) => {
      let to = from;
      while (joined[to % n]) to++;
      return { from, to };
    })
    .filter(({ from, to }) => to - from + 1 >= LEAST_STRETCH);
}

const liesBetween = (a: number, from: number, to: number): boolean =>
  [a, a + TURN, a - TURN].some((x) => x >= from && x <= to);

function narrowed(f: (angle: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  // The middle is kept where nothing beside it is higher: so symmetric curves give round answers.
  const middle = (a + b) / 2;
  for (let k = 0; k < NARROWINGS; k++) {
    const [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
    if (f(c) > f(d)) b = d;
    else a = c;
  }
  const narrow = (a + b) / 2;
  return f(narrow) > f(middle) + LENGTH_TOLERANCE * LENGTH_TOLERANCE ? narrow : middle;
}

function wrapped(angle: number): number {
  const a = ((angle % TURN) + TURN) % TURN;
  return TURN - a < 1e-9 ? 0 : a;
}
