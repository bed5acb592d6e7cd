/**
 * Shapes drawn at random between two ends, of a given length where one is asked: the raw material of the search. Not valid,
 * only near enough for the solver to make them so. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import { RADIANS } from '../tolerance';
import { addScaled, anySquareTo, cross, lerp, reject, scale, sub, unit } from '../vector';
import { arcPoints, partsOf, turnToward } from './continuousBend';
import { lengthAlong, ofLength } from './ofLength';
import type { RunnerTask } from './task';

export type Proposal = {
  readonly points: readonly Vec3[];
  readonly radii: readonly number[];
  /** Whether point i and point i + 1 (of those that turn) are parts of one continuous bend. */
  readonly joined: readonly boolean[];
};

/** End legs are the least straight and this many bend radii more, drawn evenly on a logarithmic scale. */
const SHORTEST_LEG = 0.15;
const LONGEST_LEG = 7;
/** Inner points lie off the line between the outer ones by up to this many bend radii. */
const WIDEST = 7;
/** Inner points lie along that line from this part of it (before its beginning) to as much beyond its end. */
const BEYOND = -0.1;

/** Share of shapes bent with one die throughout: a change of die costs time, and is seldom what makes room. */
const ONE_DIE = 0.7;
/** A bend as wide as this may be one continuous bend of several points. */
const WIDE = 150 * RADIANS;
/** What one point can hardly do, and the share of shapes with a continuous bend where the tooling goes beyond and where not. */
const ONE_POINT = 172 * RADIANS;
const CONTINUOUS = 0.35;
const SELDOM = 0.05;
/** They are drawn so often before it is given up: few lead to where they should at the length asked. */
const CONTINUOUS_DRAWS = 5;

/**
 * @param bends as the bender counts them: a continuous bend is one, of several points
 * @param length of the centerline, or null where any will do
 * @returns null where this draw leads to none of that length
 */
export function propose(
  task: RunnerTask,
  start: Pose,
  end: Pose,
  bends: number,
  length: number | null,
  random: () => number,
): Proposal | null {
  const most = task.resolved.tooling.maxBendAngle * RADIANS;
  const isNeeded = most > ONE_POINT;
  const isContinuous = most > WIDE && random() < (isNeeded ? CONTINUOUS : SELDOM);
  for (let k = 0; k < (isContinuous && isNeeded ? CONTINUOUS_DRAWS : 1); k++) {
    const continuous = isContinuous ? continuousBend(most, bends, random) : null;
    const shape = drawn(task, start, end, radiiFor(task.dies, bends, random), continuous, length, random);
    if (shape) return shape;
  }
  return null;
}

/** @param radii one for each bend */
function drawn(
  task: RunnerTask,
  start: Pose,
  end: Pose,
  radii: readonly number[],
  continuous: Continuous | null,
  length: number | null,
  random: () => number,
): Proposal | null {
  const { tooling } = task.resolved;
  const bends = radii.length;
  const R = radii[0]!;
  const leg = (least: number): number => least + R * SHORTEST_LEG * (LONGEST_LEG / SHORTEST_LEG) ** random();
  const A = addScaled(start.position, start.direction, leg(tooling.firstStraight));
  const places = new Float64Array(3 * (bends + 2));
  places.set(start.position);
  places.set(A, 3);
  places.set(end.position, 3 * (bends + 1));
  const shape = (): Proposal | null => shapeOf(start, end, radii, continuous, pointsIn(places));
  const lengthNow = (): number => {
    if (!continuous) return lengthAlong(places, radii);
    const now = shape();
    return now ? lengthAlong(Float64Array.from(now.points.flat()), now.radii) : Number.NaN;
  };
  /** Of a family of shapes, which `move` sets the places to, one of the length asked; where any will do, that at `any`. */
  const one = (move: (t: number) => void, any: () => number, low: number, high: number): Proposal | null => {
    const lengthAt = (t: number): number => {
      move(t);
      return lengthNow();
    };
    const t = length === null ? any() : ofLength(lengthAt, length, low, high, random);
    if (t === null) return null;
    move(t);
    return shape();
  };
  if (bends === 2) {
    const move = (b: number): void => placeOff(places, 2, end.position, end.direction, -b);
    const { lastStraight } = tooling;
    return one(move, () => leg(lastStraight), lastStraight + 0.1 * R, lastStraight + (LONGEST_LEG + 1) * R);
  }
  const B = addScaled(end.position, end.direction, -leg(tooling.lastStraight));
  places.set(B, 3 * bends);
  const across = unit(sub(B, A));
  const lean = unit(reject(start.direction, across));
  const side = lean.some((x) => x !== 0) ? lean : anySquareTo(across);
  const other = cross(across, side);
  let phi = 2 * Math.PI * random();
  const parts = Array.from({ length: bends - 2 }, () => BEYOND + (1 - 2 * BEYOND) * random()).sort((p, q) => p - q);
  const inner = parts.map((part) => {
    const off = addScaled(scale(side, Math.cos(phi)), other, Math.sin(phi));
    phi += (random() - 0.5) * Math.PI * (random() < 0.25 ? 2 : 0.8);
    return { on: lerp(A, B, part), off, much: 0.2 + 0.8 * random() };
  });
  const move = (wide: number): void => {
    for (let k = 0; k < inner.length; k++) {
      const { on, off, much } = inner[k]!;
      placeOff(places, k + 2, on, off, wide * much);
    }
  };
  return one(move, () => R * WIDEST * random() ** 2, 0, WIDEST * R);
}

function placeOff(places: Float64Array, k: number, from: Vec3, direction: Vec3, by: number): void {
  places[3 * k] = from[0] + by * direction[0];
  places[3 * k + 1] = from[1] + by * direction[1];
  places[3 * k + 2] = from[2] + by * direction[2];
}

const pointsIn = (places: Float64Array): Vec3[] =>
  Array.from({ length: places.length / 3 }, (_, k) => [places[3 * k]!, places[3 * k + 1]!, places[3 * k + 2]!]);

function radiiFor(dies: readonly number[], bends: number, random: () => number): number[] {
  const any = (): number => dies[Math.floor(random() * dies.length)]!;
  if (dies.length === 1 || random() > ONE_DIE) return Array.from({ length: bends }, any);
  return Array<number>(bends).fill(any());
}

type Continuous = {
  /** Which bend, from 0. */
  readonly bend: number;
  /** Whether it is built from the far side. */
  readonly backward: boolean;
  /** Whether it turns away from where it leads to. */
  readonly away: boolean;
  readonly most: number;
};

function continuousBend(most: number, bends: number, random: () => number): Continuous {
  const bend = Math.floor(random() * bends);
  const backward = bend === bends - 1 || (bend > 0 && random() < 0.5);
  return { bend, backward, away: random() < 0.5, most };
}

/** From places to a shape: one place may become the beginning of a continuous bend that leads to the next. */
function shapeOf(
  start: Pose,
  end: Pose,
  radii: readonly number[],
  continuous: Continuous | null,
  places: readonly Vec3[],
): Proposal | null {
  const apart = radii.map(() => false);
  if (!continuous) return { points: places, radii, joined: apart };
  const { bend, backward, away, most } = continuous;
  const R = radii[bend]!;
  const at = places[bend + 1]!;
  const before = bend === 0 ? start.direction : unit(sub(at, places[bend]!));
  const after = bend === radii.length - 1 ? end.direction : unit(sub(places[bend + 2]!, at));
  const direction = backward ? scale(after, -1) : before;
  const turn = turnToward(at, direction, places[backward ? bend : bend + 2]!, R, away);
  if (!turn || turn.angle < WIDE || turn.angle > most) return null;
  const parts = partsOf(turn.angle);
  const arc = arcPoints(at, direction, turn.side, R, turn.angle, parts);
  if (backward) arc.reverse();
  return {
    points: [...places.slice(0, bend + 1), ...arc, ...places.slice(bend + 2)],
    radii: [...radii.slice(0, bend), ...arc.map(() => R), ...radii.slice(bend + 1)],
    joined: [...apart.slice(0, bend), ...arc.map((_, k) => k < parts - 1), ...apart.slice(bend + 1)],
  };
}
