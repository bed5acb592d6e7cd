/**
 * The pressure wave that an exhaust valve sends out when it opens: through the pipes to each joint and to the mouth, back to the
 * valve, and into the other cylinders' pipes. Where it is when, whether it comes back as suction, and whether it meets the overlap. SI
 * units; crank degrees of the cylinder whose valve it comes to, running on past 360 where a way takes long.
 */
import type { EngineSetup } from '../engine/types';
import type { GasPath } from '../path/types';
import type { PipePicture } from '../report';
import { CYCLE, withinCycle } from './cycle';
import { firesAfter, valveTimes } from './gasExchange';
import { twoWaves } from './superposition';
import { type Leg, type TracedLeg, traceWave } from './traceWave';
import type { SpeedAnswer } from './types';
import { burntSound, fieldOf, reachOf, readField, type WaveField } from './waveField';
import { routeOf, type Turn, type WaveRoute } from './waveRoute';

/** Which instant is followed: the valve's opening, or when the blow-down's pressure is highest beside it. */
export type WaveStart = 'opening' | 'peak';

export type WavePath = {
  readonly from: number;
  readonly to: number;
  readonly begins: WaveStart;
  /** Where it was sent back, or where it came out of another cylinder's way. */
  readonly turn: Turn;
  readonly start: number;
  /** Null: gas as fast as sound carries it along, so it never comes. */
  readonly arrival: number | null;
  readonly legs: readonly TracedLeg[];
  /** m there and back, and mean speed of sound on the way, m/s. */
  readonly length: number;
  readonly sound: number;
  /** Part of what was sent out that arrives, by areas alone: below 0 a pressure pulse arrives as suction. */
  readonly strength: number;
  /** What runs toward the valve when it arrives, above its mean over the cycle, Pa; with every other wave that arrives then. */
  readonly carried: number | null;
  readonly inOverlap: boolean;
  /** After the middle of the overlap, crank degrees. Null without an overlap. */
  readonly phase: number | null;
  /**
   * Q = c θ / (12 N l): how often the way there and back fits into the exhaust valve's open time. Fukuda & Izumi, Memoirs Fac. Eng.
   * Yamaguchi Univ. 16(1), 1965, found most power near 1. Of one pipe alone, as theirs; else null.
   */
  readonly tuning: number | null;
  /**
   * Speed at which it would meet the middle of the overlap if it took as long, rpm. Near this speed alone: gas and blow-down change with
   * speed, and by far speeds the same pipes told of 7400 to 10 100 rpm.
   */
  readonly tunedRpm: number | null;
};

export type PathRun = { readonly engine: EngineSetup; readonly path: GasPath; readonly answer: SpeedAnswer };

/** Ways weaker than this share are left out. */
const LEAST = 0.02;
/** The blow-down's peak is looked for from the opening to so far past bottom dead centre. */
const BLOWDOWN_ENDS = -135;

/** @returns its own returns in the order of the turns, then what comes from others; empty without a picture of the waves */
export function wavePaths(run: PathRun, cylinder: number, begins: WaveStart = 'peak'): WavePath[] {
  const { waves } = run.answer;
  if (!waves) return [];
  const field = fieldOf(waves);
  const stream = (id: string) => machAt(field, id);
  const own = routeOf(run.path, cylinder, stream);
  const paths = [...ownReturns(run, field, own, begins)];
  for (const other of run.engine.cylinders) {
    if (other === cylinder) continue;
    const across = crossing(own, routeOf(run.path, other, stream));
    if (across) paths.push(follow(run, field, { ...across, to: cylinder, from: other }, begins));
  }
  return paths;
}

type Way = {
  readonly from: number;
  readonly to: number;
  readonly turn: Turn;
  readonly legs: readonly Leg[];
  readonly strength: number;
  /** One pipe from the valve to the open air. */
  readonly alone?: boolean;
};

/**
 * There and back once. What the valve sends out again is not followed: it is open then, and whether a port with a cylinder behind it sends
 * pressure back as pressure or as suction changes with the lift.
 */
function* ownReturns(run: PathRun, field: WaveField, own: WaveRoute, begins: WaveStart): Generator<WavePath> {
  const { cylinder, turns } = own;
  const there: Leg[] = [];
  let passed = 1;
  for (const turn of turns) {
    there.push({ pipe: turn.pipe, direction: 1 });
    const strength = passed * turn.back;
    const legs = [...there, ...back(there)];
    const alone = turns.length === 1 && turn.kind === 'mouth';
    if (Math.abs(strength) > LEAST)
      yield follow(run, field, { from: cylinder, to: cylinder, turn, legs, strength, alone }, begins);
    passed *= turn.on * turn.up;
  }
}

const back = (legs: readonly Leg[]): Leg[] => [...legs].reverse().map(({ pipe }) => ({ pipe, direction: -1 }));

/** From another cylinder's valve to the first pipe that both share, and up the own way from there. */
function crossing(own: WaveRoute, other: WaveRoute): Pick<Way, 'turn' | 'legs' | 'strength'> | null {
  const legs: Leg[] = [];
  let strength = 1;
  for (const turn of other.turns) {
    legs.push({ pipe: turn.pipe, direction: 1 });
    strength *= turn.on;
    const met = own.turns.findIndex(({ onward }) => onward !== null && onward === turn.onward);
    if (met < 0) continue;
    const up = own.turns.slice(0, met + 1);
    legs.push(...back(up.map(({ pipe }) => ({ pipe, direction: 1 as const }))));
    // Into the joint's own branch it has come by `on`; further up, by each joint's share.
    for (const { up: share } of up.slice(0, -1)) strength *= share;
    return { turn, legs, strength };
  }
  return null;
}

function follow(run: PathRun, field: WaveField, way: Way, begins: WaveStart): WavePath {
  const { engine, answer } = run;
  const { overlap, exhaustOpens, exhaustCloses } = valveTimes(engine);
  const sent = firesAfter(engine, way.from);
  const seen = firesAfter(engine, way.to);
  const first = field.pipes.get(way.legs[0]!.pipe)!;
  const leaves = begins === 'opening' ? exhaustOpens : peakOf(run, field, first, way.from);
  const trace = traceWave(field, answer.rpm, way.legs, leaves + sent);
  // Told in the degrees of the cylinder it comes to: of another's cycle, the one that ends within this one's.
  const arrives = trace.arrival === null ? null : trace.arrival - seen;
  const shift = way.from === way.to || arrives === null ? -seen : withinCycle(arrives) - arrives - seen;
  const start = leaves + sent + shift;
  const arrival = trace.arrival === null ? null : trace.arrival + shift;
  const middle = overlap && (overlap[0] + overlap[1]) / 2;
  const half = trace.length / 2;
  return {
    from: way.from,
    to: way.to,
    begins,
    turn: way.turn,
    strength: way.strength,
    start,
    arrival,
    legs: trace.legs.map((leg) => ({ ...leg, angles: leg.angles.map((angle) => angle + shift) })),
    length: trace.length,
    sound: trace.sound,
    carried: arrival === null ? null : carriedAt(field, way.legs.at(-1)!.pipe, arrival + seen, engine.air.pressure),
    inOverlap: overlap !== null && arrival !== null && arrival >= overlap[0] && arrival <= overlap[1],
    phase: arrival === null || middle === null ? null : arrival - middle,
    tuning:
      arrival !== null && way.alone ? (trace.sound * (exhaustCloses - exhaustOpens)) / (12 * answer.rpm * half) : null,
    tunedRpm: arrival === null || middle === null ? null : near(answer.rpm, start, arrival, middle),
  };
}

/** How far from the speed that was followed another may lie to be told, as a share of it. */
const NEAR = 0.15;

function near(rpm: number, start: number, arrival: number, goal: number): number | null {
  const tuned = primarySweep(rpm, start, arrival, goal);
  return tuned !== null && Math.abs(tuned / rpm - 1) <= NEAR ? tuned : null;
}

/**
 * Speed at which a wave that leaves at `start` and comes at `arrival` would come at `goal`: its time stays, degrees in that time go with
 * speed. Null where it would have to leave after it comes. rpm, crank degrees.
 */
export function primarySweep(rpm: number, start: number, arrival: number, goal: number): number | null {
  return goal > start && arrival > start ? (rpm * (goal - start)) / (arrival - start) : null;
}

/**
 * When pressure beside the valve is highest, in the cylinder's own degrees: at the valve itself where traces are kept. The picture's first
 * cell, half a cell away, can have another of two humps higher.
 */
function peakOf({ engine, answer }: PathRun, field: WaveField, at: PipePicture, cylinder: number): number {
  const { exhaustOpens } = valveTimes(engine);
  const until = Math.max(exhaustOpens, BLOWDOWN_ENDS);
  const fires = firesAfter(engine, cylinder);
  const trace = answer.traces?.find((one) => one.cylinder === cylinder);
  let [best, highest] = [exhaustOpens, -Infinity];
  const take = (angle: number, pressure: number) => {
    if (pressure > highest) [best, highest] = [angle, pressure];
  };
  if (trace)
    trace.angle.forEach((angle, k) => {
      if (angle >= exhaustOpens && angle <= until) take(angle, trace.exhaustPort[k]!);
    });
  else
    for (let angle = exhaustOpens; angle <= until; angle++)
      take(angle, readField(field, at, angle + fires, 0).pressure);
  return best;
}

/** Mean over the cycle at the pipe's finish, without sign; 0 where the picture lacks it. */
export function machAt(field: WaveField, id: string): number {
  const pipe = field.pipes.get(id);
  if (!pipe) return 0;
  let mean = 0;
  for (let angle = 0; angle < CYCLE; angle += 2) {
    const { velocity, temperature } = readField(field, pipe, angle, reachOf(pipe)[1]);
    mean += ((velocity / burntSound(temperature)) * 2) / CYCLE;
  }
  return Math.abs(mean);
}

/** @param angle of the cylinder that fires first */
function carriedAt(field: WaveField, id: string, angle: number, rest: number): number {
  const pipe = field.pipes.get(id)!;
  const toward = (at: number) => {
    const { pressure, velocity, temperature } = readField(field, pipe, at, reachOf(pipe)[0]);
    return twoWaves(pressure, velocity, temperature, rest).back;
  };
  let mean = 0;
  for (let k = 0; k < CYCLE; k += 2) mean += toward(k) / (CYCLE / 2);
  return toward(angle) - mean;
}
