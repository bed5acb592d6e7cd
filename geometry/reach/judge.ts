/**
 * Whether one way of one tool is free, bare or wrapped; by how much it is not, and who is to blame. `slack` is what everything in
 * the way is taken to stand back: the least that frees a way is what it lacks. mm.
 */
import type { Fixed } from './fixed';
import type { Near } from './local';
import { type Arm, eachStand, freeRuns, STAND, STANDS, shadow, standsOf } from './swing';
import type { Bar, Way } from './ways';

export type Scene = {
  readonly near: Near;
  readonly fixed: readonly Fixed[];
  readonly room: number;
};

/** The stands over which it can be swung, and one at which it can be put on. */
export type Stance = { readonly first: number; readonly count: number; readonly stand: number };

/** Null where the way is not free. A way without arms has the stance of all stands. */
export function stanceOf(scene: Scene, way: Way, wrapped: boolean, slack = 0): Stance | null {
  if (way.unfit !== null || !barsFree(scene, way.bars, wrapped, slack)) return null;
  if (way.arms.length === 0) return { first: 0, count: STANDS, stand: 0 };
  const taken = takenBy(scene, way.arms, wrapped, slack, 'arms');
  const need = standsOf(way.swing);
  const runs = freeRuns(taken)
    .filter((run) => run.count >= need)
    .sort((a, b) => b.count - a.count || a.first - b.first);
  if (runs.length === 0) return null;
  const blocked = way.approach.length > 0 ? takenBy(scene, way.approach, wrapped, slack, 'approach') : null;
  for (const run of runs) {
    const stand = nearestFree(run.first, run.count, blocked);
    if (stand !== null) return { ...run, stand };
  }
  return null;
}

/** Every least swing that is free, begun at each `stride`-th stand, with the stand nearest to its middle at which it is put on. */
export function stancesAmong(taken: Uint8Array, barred: Uint8Array | null, need: number, stride: number): Stance[] {
  const found: Stance[] = [];
  for (let first = 0; first < STANDS; first += stride) {
    let k = 0;
    while (k < need && !taken[(first + k) % STANDS]) k++;
    const stand = k === need ? nearestFree(first, need, barred) : null;
    if (stand !== null) found.push({ first, count: need, stand });
  }
  return found;
}

/** The free stand nearest to the middle of a run. */
function nearestFree(first: number, count: number, blocked: Uint8Array | null): number | null {
  const middle = first + Math.floor(count / 2);
  for (let k = 0; k <= count; k++) {
    const at = middle + (k % 2 === 0 ? k / 2 : -(k + 1) / 2);
    if (at < first || at >= first + count) continue;
    if (!blocked?.[at % STANDS]) return at % STANDS;
  }
  return null;
}

export const barsFree = (scene: Scene, bars: readonly Bar[], wrapped: boolean, slack: number): boolean =>
  barsLack(scene, bars, wrapped, slack) <= slack;

/** The least slack that frees the bars, where it is more than 0; where it is more than `enough`, anything that is. */
function barsLack(
  { near, fixed, room }: Scene,
  bars: readonly Bar[],
  wrapped: boolean,
  enough = Number.POSITIVE_INFINITY,
): number {
  let lack = 0;
  for (const f of fixed) lack = Math.max(lack, -f.bars);
  const { count, rho, z, bare } = near;
  const own = wrapped ? near.wrapped : bare;
  const widest = bars.reduce((most, b) => Math.max(most, b.radius), 0);
  for (let i = 0; i < count && lack <= enough; i++) {
    const ball = own[i]! + room;
    if (own[i]! < 0 || rho[i]! - widest - ball >= -lack) continue;
    for (const bar of bars) lack = Math.max(lack, ball - toBar(bar, rho[i]!, z[i]!));
  }
  return lack;
}

/** Negative within. */
export function toBar({ from, to, radius }: Bar, rho: number, z: number): number {
  const aside = rho - radius;
  const beyond = Math.max(from - z, z - to);
  if (aside <= 0 || beyond <= 0) return Math.max(aside, beyond);
  return Math.sqrt(aside * aside + beyond * beyond);
}

export function takenBy(
  { near, fixed, room }: Scene,
  arms: readonly Arm[],
  wrapped: boolean,
  slack: number,
  which: 'arms' | 'approach',
): Uint8Array {
  const taken = new Uint8Array(STANDS);
  for (const f of fixed) {
    const gaps = f[which];
    if (gaps) for (let k = 0; k < STANDS; k++) if (gaps[k]! < -slack) taken[k] = 1;
  }
  const mark = (stand: number): void => {
    taken[stand] = 1;
  };
  const own = wrapped ? near.wrapped : near.bare;
  const keep = room - slack;
  const { count, rho, z, theta } = near;
  for (const arm of arms)
    for (let i = 0; i < count; i++) {
      const ball = own[i]! + keep;
      if (own[i]! < 0 || ball <= 0 || rho[i]! - ball >= arm.length + arm.radius) continue;
      const half = shadow(arm, rho[i]!, z[i]!, ball);
      if (half >= Math.PI) return taken.fill(1);
      eachStand(theta[i]!, half, mark);
    }
  return taken;
}

/** Lacks beyond this are all the same, mm. */
const MOST_LACK = 64;
const FINE_LACK = 0.05;

export type Lack = { readonly lack: number; readonly stance: Stance | null };

/** The least slack with which the way is free, and how it then stands; `MOST_LACK` and null where no slack that is looked for helps. */
export function lackOf(scene: Scene, way: Way, wrapped: boolean, below = MOST_LACK): Lack {
  const nothing = { lack: MOST_LACK, stance: null };
  if (way.unfit !== null) return nothing;
  // Mostly it is the bars: then their lack is all of it.
  let low = barsLack(scene, way.bars, wrapped, below);
  if (low > below) return nothing;
  const first = stanceOf(scene, way, wrapped, low);
  if (first) return { lack: low, stance: first };
  let high = below;
  let stance = stanceOf(scene, way, wrapped, high);
  if (!stance) return nothing;
  while (high - low > FINE_LACK) {
    const middle = (low + high) / 2;
    const found = stanceOf(scene, way, wrapped, middle);
    if (found) [high, stance] = [middle, found];
    else low = middle;
  }
  return { lack: high, stance };
}

export type Culprit = {
  readonly id: string;
  /** How far it stands in the way, mm. */
  readonly depth: number;
  /** Of a runner, where it is deepest. */
  readonly station: number | null;
};

/** Stands of a swing at which it is asked who is in the way. */
const LOOKS = 5;

/** Who is in the way of this stance, the deepest first. */
export function culprits({ near, fixed, room }: Scene, way: Way, stance: Stance | null, wrapped: boolean): Culprit[] {
  const looks = stance && way.arms.length > 0 ? looksOf(stance, standsOf(way.swing)) : [];
  const deepest = new Map<string, Culprit>();
  const note = (id: string, depth: number, station: number | null): void => {
    if (depth > Math.max(0, deepest.get(id)?.depth ?? 0)) deepest.set(id, { id, depth, station });
  };
  for (const f of fixed) {
    note(f.id, -f.bars, null);
    for (const k of looks) note(f.id, -(f.arms?.[k] ?? 0), null);
    if (stance) note(f.id, -(f.approach?.[stance.stand] ?? 0), null);
  }
  const own = wrapped ? near.wrapped : near.bare;
  for (let i = 0; i < near.count; i++) {
    const ball = own[i]!;
    if (ball < 0) continue;
    const [rho, theta, z] = [near.rho[i]!, near.theta[i]!, near.z[i]!];
    const id = near.clouds[near.cloud[i]!]!.runner;
    let gap = ball + room - Math.max(0, deepest.get(id)?.depth ?? 0);
    for (const bar of way.bars) gap = Math.min(gap, toBar(bar, rho, z));
    for (const arm of way.arms)
      if (Math.abs(z - arm.height) - arm.radius - arm.length * Math.sin(arm.rise) < gap)
        for (const k of looks) gap = Math.min(gap, toArm(arm, rho, theta - k * STAND, z));
    if (stance) for (const arm of way.approach) gap = Math.min(gap, toArm(arm, rho, theta - stance.stand * STAND, z));
    note(id, ball + room - gap, near.station[i]!);
  }
  return [...deepest.values()].sort((a, b) => b.depth - a.depth);
}

const looksOf = ({ first, count }: Stance, need: number): number[] => {
  const start = first + Math.max(0, Math.floor((count - need) / 2));
  return Array.from({ length: LOOKS }, (_, k) => (start + Math.round((k * (need - 1)) / (LOOKS - 1))) % STANDS);
};

/** From the arm's surface to a point that stands `turn` round from it. */
export function toArm(arm: Arm, rho: number, turn: number, z: number): number {
  const [c, s] = [Math.cos(arm.rise), Math.sin(arm.rise)];
  const [px, py, pz] = [rho * Math.cos(turn), rho * Math.sin(turn), z - arm.height];
  const along = Math.min(arm.length, Math.max(0, px * c + pz * s));
  const [dx, dz] = [px - along * c, pz - along * s];
  if (arm.flat === undefined) return Math.sqrt(dx * dx + py * py + dz * dz) - arm.radius;
  const aside = Math.max(0, Math.sqrt(dx * dx + py * py) - arm.radius);
  const over = Math.max(0, Math.abs(pz) - arm.flat);
  return Math.sqrt(aside * aside + over * over);
}
