/** The lines that a search for the shortest and the longest begins from, most promising first. Deterministic. mm. */
import type { Vec3 } from '../../shared/vec3';
import { centerline } from '../curve/centerline';
import { randomNumbers } from '../layout/random';
import { anySquareTo, cross, distance, scale, sub, unit } from '../vector';
import type { Alone } from './alone';
import { type Hindrance, type Rated, rated } from './rate';
import { farOut, type Line, nudged, oneBend, type Random, sampled } from './sampled';
import { arcStraightArc, threeArcs } from './tangentArcs';

/** Lines drawn by chance for each runner, over its inlets and bend counts. */
const DRAWN = 200;
const DRAWN_MORE = 1500;
/** Of those drawn for a crowded place, so many are moved about, so often, by so many bend radii at first. */
const FREED = 24;
const SHAKES = 90;
const SHAKE = 2;
/** Worse by so much is borne, as a mean, mm. */
const BORNE = 6;
const MOST_BENDS = 5;
/** A millimetre of a missed rule counts for so many of length. */
const MISSED_COUNTS = 3;
/** Lines whose points all lie nearer than this are one start, mm. */
const ALIKE = 25;
const APART = 80;
/** Past this the tooling can turn a tube right round, degrees. */
const HALF_TURN = 180;

export type Starts = {
  readonly lines: readonly Rated[];
  /** Others at every call, moved out of the way of what they ran into; those that miss the least first. For crowded places. */
  freed(): readonly Rated[];
};

/** @param radii allowed, least first */
export function startsFor(
  options: readonly Alone[],
  radii: readonly number[],
  hindered: readonly Hindrance[],
  seed: number,
): Starts {
  const random = randomNumbers(seed);
  const { tooling } = options[0]!.runner;
  const most = Math.min(tooling.maxBends, MOST_BENDS);
  const found: Rated[] = [];
  const add = (alone: Alone, line: Line | null): void => {
    const one = line && rated(alone, line, hindered);
    if (one) found.push(one);
  };
  const draw = (many: number): void => {
    for (const alone of options)
      for (let n = 2; n <= most; n++)
        for (let k = 0; k < many / (options.length * (most - 1)); k++)
          add(alone, sampled(alone, tooling, radii[0]!, n, random));
  };
  for (const alone of options) {
    if (isStraightAhead(alone)) add(alone, { points: [alone.start.position, alone.end.position], radii: [] });
    for (const radius of radii) {
      if (most >= 1) add(alone, oneBend(alone, radius));
      if (most >= 2) for (const line of tightest(alone, radius)) add(alone, line);
    }
  }
  draw(DRAWN);
  const lines = [...found].sort((a, b) => score(a) - score(b));
  return {
    lines,
    freed() {
      found.length = 0;
      draw(DRAWN_MORE);
      const promising = diverse(
        found.sort((a, b) => eased(a) - eased(b)),
        FREED,
        APART,
      );
      return promising.map((one) => shaken(one, hindered, random)).sort((a, b) => eased(a) - eased(b));
    },
  };
}

/**
 * Moved about by chance, less and less, for what misses the rules by the least; a little worse is borne on the way, or it
 * would never come round a corner (simulated annealing).
 */
function shaken(from: Rated, hindered: readonly Hindrance[], random: Random): Rated {
  let now = from;
  let best = from;
  if (from.line.radii.length < 2) return from;
  for (let k = 0; k < SHAKES && best.missed > 0; k++) {
    const left = 1 - k / SHAKES;
    const by = from.line.radii[0]! * SHAKE * left * random();
    const next = rated(from.alone, nudged(now.line, from.alone, by, random), hindered);
    if (!next || next.missed > now.missed - BORNE * left * Math.log(1 - random())) continue;
    now = next;
    if (now.missed < best.missed) best = now;
  }
  return best;
}

const eased = ({ length, missed }: Rated): number => missed + length / 30;
const score = ({ length, missed }: Rated): number => length + MISSED_COUNTS * missed;

function isStraightAhead({ start, end }: Alone): boolean {
  const way = sub(end.position, start.position);
  return distance(unit(way), start.direction) < 1e-6 && distance(start.direction, end.direction) < 1e-6;
}

function tightest(alone: Alone, radius: number): (Line | null)[] {
  const { start, end, runner } = alone;
  const { firstStraight, lastStraight, maxBendAngle, maxBends } = runner.tooling;
  const ahead = unit(sub(end.position, start.position));
  const straight = (long: readonly [boolean, boolean], guess: Vec3): Line | null =>
    arcStraightArc(start, end, firstStraight, lastStraight, radius, long, guess);
  if (maxBendAngle <= HALF_TURN) return [straight([false, false], ahead)];
  const side = anySquareTo(ahead);
  const plane = cross(start.direction, ahead);
  const aside = unit(cross(plane, ahead));
  const guesses = [ahead, scale(ahead, -1), aside, scale(aside, -1), side, scale(side, -1)].filter((g) =>
    g.some((x) => x !== 0),
  );
  const lines = [false, true].flatMap((first) =>
    [false, true].flatMap((last) => guesses.map((guess) => straight([first, last], guess))),
  );
  if (maxBends >= 3) lines.push(...threeArcs(start, end, firstStraight, lastStraight, radius));
  return lines;
}

/** The best so many that differ, no more than half of them with the same number of bends. */
export function diverse(found: readonly Rated[], many: number, apart = ALIKE): Rated[] {
  const kept: Rated[] = [];
  const share = Math.max(1, Math.ceil(many / 2));
  for (const one of found) {
    if (kept.length >= many) break;
    if (kept.filter((k) => k.bends === one.bends).length >= share) continue;
    if (!kept.some((k) => alike(k, one, apart))) kept.push(one);
  }
  return kept;
}

function alike(a: Rated, b: Rated, apart: number): boolean {
  const [p, q] = [a.line, b.line];
  return (
    a.alone === b.alone &&
    p.points.length === q.points.length &&
    p.radii.every((r, i) => r === q.radii[i]) &&
    p.points.every((x, i) => distance(x, q.points[i]!) < apart)
  );
}

/** Corners and faces of a cube: where a runner could go far away. */
const AWAY: readonly Vec3[] = [-1, 0, 1].flatMap((x) =>
  [-1, 0, 1].flatMap((y) =>
    [-1, 0, 1].flatMap((z): Vec3[] => (x === 0 && y === 0 && z === 0 ? [] : [unit([x, y, z])])),
  ),
);
const SECANTS = 3;

/** Lines of a given centerline length that go far away and come back, those that miss the least first. */
export function farLines(
  options: readonly Alone[],
  radius: number,
  length: number,
  hindered: readonly Hindrance[],
): Rated[] {
  const found: Rated[] = [];
  for (const alone of options) {
    const { tooling } = alone.runner;
    for (const bendCount of [2, 3, 4]) {
      if (bendCount > tooling.maxBends) continue;
      for (const away of bendCount === 2 ? AWAY.slice(0, 1) : AWAY) {
        const line = (far: number): Line => farOut(alone, tooling, radius, bendCount, away, far);
        // Length grows with distance, evenly from not far out: the solver takes up what is left.
        let far = length / 2;
        for (let k = 0; k < SECANTS; k++) far = Math.max(radius, far + (length - lengthOf(line(far))) / 2);
        const one = rated(alone, line(far), hindered);
        if (one) found.push(one);
      }
    }
  }
  return found.sort((a, b) => a.missed - b.missed);
}

const lengthOf = ({ points, radii }: Line): number => centerline(points, radii).length;
