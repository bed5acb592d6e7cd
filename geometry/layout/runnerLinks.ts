/**
 * The links of each runner for one step of the solver, with what tells quickly that something is nowhere near them. Memory is
 * kept from step to step and from header to header: thousands are looked at. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { SolverRunner } from './layoutProblem';
import { refill, type SolverLink, type Writable } from './links';

/** A runner's links with the box about them: most of what there is is nowhere near. */
export type RunnerLinks = {
  readonly runner: SolverRunner;
  readonly links: readonly SolverLink[];
  /** A ball about each link, four numbers: its middle and radius. */
  readonly balls: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
};

type Pool = {
  runner: SolverRunner | null;
  /** Every link there ever was, for use again. */
  readonly made: Writable<SolverLink>[];
  readonly links: Writable<SolverLink>[];
  balls: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
};

/** One for each runner's number. */
const pools: Pool[] = [];

const emptyPool = (): Pool => ({
  runner: null,
  made: [],
  links: [],
  balls: new Float64Array(0),
  low: new Float64Array(3),
  high: new Float64Array(3),
});

/**
 * The same in memory that is used again: good until it is next asked for a runner of that number, of whatever header.
 * @param number among the header's runners
 */
export function linksNow(r: SolverRunner, number: number): RunnerLinks {
  while (pools.length <= number) pools.push(emptyPool());
  const pool = pools[number]!;
  // A runner that stays where it is keeps its links through all steps.
  if (pool.runner === r && r.at < 0) return pool as RunnerLinks;
  pool.runner = r;
  const { made, links } = pool;
  const count = refill(r, made);
  if (links.length > count) links.length = count;
  for (let k = links.length; k < count; k++) links.push(made[k]!);
  boxAbout(pool);
  return pool as RunnerLinks;
}

function boxAbout(pool: Pool): void {
  const { links, low, high } = pool;
  if (pool.balls.length < 4 * links.length) pool.balls = new Float64Array(8 * links.length);
  const { balls } = pool;
  let lx = Number.POSITIVE_INFINITY;
  let ly = lx;
  let lz = lx;
  let hx = Number.NEGATIVE_INFINITY;
  let hy = hx;
  let hz = hx;
  for (let k = 0; k < links.length; k++) {
    const { half, stray, middleX, middleY, middleZ } = links[k]!;
    const out = half + stray;
    balls[4 * k] = middleX;
    balls[4 * k + 1] = middleY;
    balls[4 * k + 2] = middleZ;
    balls[4 * k + 3] = out;
    if (middleX - out < lx) lx = middleX - out;
    if (middleY - out < ly) ly = middleY - out;
    if (middleZ - out < lz) lz = middleZ - out;
    if (middleX + out > hx) hx = middleX + out;
    if (middleY + out > hy) hy = middleY + out;
    if (middleZ + out > hz) hz = middleZ + out;
  }
  low[0] = lx;
  low[1] = ly;
  low[2] = lz;
  high[0] = hx;
  high[1] = hy;
  high[2] = hz;
}

/** Whether a ball surely keeps out of the box about a runner by `margin`. */
export function isClearOfBall({ low, high }: RunnerLinks, centre: Vec3, radius: number, margin: number): boolean {
  const x = Math.max(low[0]! - centre[0], centre[0] - high[0]!, 0);
  const y = Math.max(low[1]! - centre[1], centre[1] - high[1]!, 0);
  const z = Math.max(low[2]! - centre[2], centre[2] - high[2]!, 0);
  const out = radius + margin;
  return x * x + y * y + z * z >= out * out;
}

/** Whether the box about a runner surely stands `margin` from a box given by its two corners. */
export function isClearOfBox({ low, high }: RunnerLinks, bounds: Float64Array, margin: number): boolean {
  const x = Math.max(low[0]! - bounds[3]!, bounds[0]! - high[0]!, 0);
  const y = Math.max(low[1]! - bounds[4]!, bounds[1]! - high[1]!, 0);
  const z = Math.max(low[2]! - bounds[5]!, bounds[2]! - high[2]!, 0);
  return x * x + y * y + z * z >= margin * margin;
}

/** Whether the ball about link `i` surely stands `margin` from that box. */
export function isBallClearOfBox({ balls }: RunnerLinks, i: number, bounds: Float64Array, margin: number): boolean {
  const o = 4 * i;
  const x = balls[o]!;
  const y = balls[o + 1]!;
  const z = balls[o + 2]!;
  const out = balls[o + 3]! + margin;
  const dx = Math.max(x - bounds[3]!, bounds[0]! - x, 0);
  const dy = Math.max(y - bounds[4]!, bounds[1]! - y, 0);
  const dz = Math.max(z - bounds[5]!, bounds[2]! - z, 0);
  return dx * dx + dy * dy + dz * dz >= out * out;
}
