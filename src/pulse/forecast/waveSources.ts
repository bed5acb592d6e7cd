/**
 * Where the pressure at an exhaust valve in the overlap comes from: the wave that runs toward the valve then is followed back against time,
 * along u ± c, to each pipe's end, and there into everything that it can be made of, until each part has left a valve while that was
 * open. At each place the gas itself says how large the part was, less its mean over the cycle; areas say how much of it went which
 * way. What that leaves unexplained is told. SI units; crank degrees of the cylinder whose valve it is.
 */

import { withinCycle } from './cycle';
import { firesAfter, valveTimes } from './gasExchange';
import { type BackLeg, traceBack } from './traceBack';
import { pipesOf, type Side, type SourcePipes } from './waveEnds';
import { fieldOf, type WaveField } from './waveField';
import type { PathRun } from './wavePath';
import { type Past, pastQueue } from './waveQueue';
import { routeOf, type Turn } from './waveRoute';

export type SourcePart = {
  /** Cylinder whose open valve it left. */
  readonly from: number;
  /** The finish of a pipe of the way from this valve, farthest from it: there it turned toward the valve, or came into its way. */
  readonly turn: Turn;
  /** Not at that finish but where the pipe before it widens or narrows. */
  readonly taper: boolean;
  /** Of the pressure that runs to the valve in the overlap, Pa, mean over the overlap. */
  readonly pressure: number;
  /** When it left that valve, in the degrees of that cylinder, and what it was there, Pa: below 0 less than the mean is sent. */
  readonly left: number;
  readonly sent: number;
  /** One of the heaviest of it, from that valve to this one. */
  readonly legs: readonly BackLeg[];
};

export type OverlapSources = {
  /** Of the wave that runs to the valve, less its mean over the cycle, Pa, mean over the overlap: all parts, `small` and `rest` add up to it. */
  readonly toward: number;
  /** The largest first. */
  readonly parts: readonly SourcePart[];
  /** Of what was too small, or too long ago, to be followed on. */
  readonly small: number;
  /** What changed on the way other than by areas: friction, steepening, strong stream; and what following waves alike as one leaves out. */
  readonly rest: number;
};

/** Instants of the overlap that are followed back. */
const INSTANTS = 7;
/** Pa at the valve: smaller parts are followed no further. Many small ones cancel, so it must be far below what is told. */
const SMALL = 10;
/** Degrees before the overlap after which nothing is followed back further. */
const LONGEST = 720;
/** Of the heaviest part that went a way: as much may be drawn for it where its way is plainer. */
const PLAIN = 0.3;

type Leaf = {
  readonly wave: Past;
  readonly from: number;
  readonly left: number;
  readonly pressure: number;
  readonly sent: number;
};

/** Null without waves or without an overlap. */
export function overlapSources(run: PathRun, cylinder: number): OverlapSources | null {
  const { waves } = run.answer;
  const { overlap } = valveTimes(run.engine);
  const valve = run.path.valves.find((place) => place.cylinder === cylinder);
  if (!waves || !overlap || !valve) return null;
  const field = fieldOf(waves);
  const pipes = pipesOf(run, field);
  const { turns } = routeOf(run.path, cylinder, pipes.stream);
  const way = turns.map(({ pipe }) => pipe);
  const seen = firesAfter(run.engine, cylinder);
  const x = pipes.placeOf(valve.pipe, 'start');
  const here = pipes.stations(valve.pipe, x);
  const starts: Past[] = [];
  let toward = 0;
  for (let k = 0; k < INSTANTS; k++) {
    const angle = overlap[0] + ((k + 0.5) / INSTANTS) * (overlap[1] - overlap[0]) + seen;
    toward += (here.at(-1, angle) * here.worth) / INSTANTS;
    starts.push({
      ...{ pipe: valve.pipe, direction: -1, x, angle, weight: here.worth / INSTANTS },
      ...{ reached: -1, taper: false, later: null },
    });
  }
  const { leaves, small } = followBack(run, pipes, way, starts);
  const legsOf = (wave: Past) => legsFrom(field, run.answer.rpm, wave, seen);
  const told = leaves.reduce((sum, { pressure }) => sum + pressure, small);
  return { toward, small, rest: toward - told, parts: grouped(leaves, turns, legsOf) };
}

/** From the latest to the earliest, so that all that runs alike is met together. */
function followBack(run: PathRun, pipes: SourcePipes, way: readonly string[], starts: readonly Past[]) {
  const { exhaustOpens, exhaustCloses } = valveTimes(run.engine);
  const worthOf = (wave: Past) => wave.weight * pipes.stations(wave.pipe, wave.x).at(wave.direction, wave.angle);
  const leaves: Leaf[] = [];
  let small = 0;
  const waiting = pastQueue(starts);
  const oldest = Math.max(...starts.map(({ angle }) => angle)) - LONGEST;
  for (let wave = waiting.next(); wave; wave = waiting.next()) {
    const worth = worthOf(wave);
    if (Math.abs(worth) < SMALL || wave.angle < oldest) {
      small += worth;
      continue;
    }
    const found = before(pipes, way, wave);
    if (found === null) continue;
    const { next, valve } = found;
    if (valve) {
      const left = withinCycle(valve.angle - firesAfter(run.engine, valve.cylinder));
      if (left >= exhaustOpens && left <= exhaustCloses) {
        const at = pipes.stations(valve.pipe, valve.x);
        const sent = at.at(1, valve.angle);
        leaves.push({ wave, from: valve.cylinder, left, pressure: valve.weight * sent, sent: sent * at.worth });
      } // Shut: what comes to it goes back whole.
      else next.push({ ...wave, ...valve, direction: -1, later: wave });
    }
    for (const one of next) waiting.add(one);
  }
  return { leaves, small };
}

type AtValve = Pick<Past, 'pipe' | 'x' | 'angle' | 'weight'> & { readonly cylinder: number };

/** What a wave was made of where it came into its pipe, and in the tapers since; null where no wave comes that way. */
function before(pipes: SourcePipes, way: readonly string[], wave: Past) {
  const { pipe, direction, x } = wave;
  const bore = pipes.boreOf(pipe);
  const side: Side = direction > 0 ? 'start' : 'finish';
  const end = pipes.placeOf(pipe, side);
  const tapers = bore.tapers.filter(({ middle }) => direction * (x - middle) > 1e-9);
  const stops = tapers.map(({ middle }) => middle);
  const delays = pipes.passages(pipe, direction, x, stops, wave.angle);
  if (!delays) return null;
  const along = direction < 0 ? way.indexOf(pipe) : -1;
  const isFarther = along > wave.reached;
  const reached = Math.max(along, wave.reached);
  const weightOf = (root: number) => (wave.weight * root) / bore.root(x);
  const next: Past[] = tapers.map(({ middle, from, to }, k) => ({
    ...{ pipe, x: middle, angle: wave.angle - delays[k]!, direction: direction > 0 ? -1 : 1, later: wave, reached },
    weight: weightOf(direction * (edge(bore, wave, to) - edge(bore, wave, from))),
    taper: isFarther || wave.taper,
  }));
  const angle = wave.angle - delays.at(-1)!;
  const weight = weightOf(bore.root(end));
  const source = pipes.sourceAt(pipe, side);
  if (source.kind === 'valve') {
    const valve: AtValve = { pipe, x: end, angle, weight, cylinder: source.cylinder };
    return { next, valve };
  }
  for (const inflow of source.inflows)
    next.push({
      ...{ pipe: inflow.pipe, direction: inflow.direction, angle, weight: weight * inflow.part, later: wave, reached },
      x: pipes.placeOf(inflow.pipe, inflow.direction > 0 ? 'finish' : 'start'),
      taper: along < wave.reached && wave.taper,
    });
  return { next, valve: null };
}

/** A taper that begins or ends where the wave is counts from there. */
const edge = ({ root }: { root(x: number): number }, { direction, x }: Past, at: number): number =>
  root(direction > 0 ? Math.min(at, x) : Math.max(at, x));

/** Traced once more, exactly, from this valve back to that one. */
function legsFrom(field: WaveField, rpm: number, last: Past, seen: number): BackLeg[] {
  const waves: Past[] = [];
  for (let wave: Past | null = last; wave; wave = wave.later) waves.push(wave);
  // From the earliest on: each ends where the next begins.
  return waves.flatMap((wave, k): BackLeg[] => {
    const leg = traceBack(field, rpm, wave.pipe, wave.direction, wave.x, wave.angle);
    if (!leg) return [];
    const before = waves[k - 1];
    const begins = before && before.pipe === wave.pipe && before.direction !== wave.direction ? before.x : null;
    const first =
      begins === null
        ? 0
        : Math.max(
            0,
            leg.x.findIndex((at) => wave.direction * (at - begins) >= -1e-9),
          );
    return [{ ...leg, angles: leg.angles.slice(first).map((angle) => angle - seen), x: leg.x.slice(first) }];
  });
}

const legsIn = (wave: Past): number => (wave.later ? 1 + legsIn(wave.later) : 1);

function grouped(leaves: readonly Leaf[], turns: readonly Turn[], legsOf: (wave: Past) => BackLeg[]): SourcePart[] {
  const groups = new Map<string, Leaf[]>();
  for (const leaf of leaves) {
    const { reached, taper } = leaf.wave;
    const key = `${leaf.from} ${reached} ${taper}`;
    const group = groups.get(key);
    if (group) group.push(leaf);
    else groups.set(key, [leaf]);
  }
  const parts = [...groups.values()].map((group): SourcePart => {
    const pressure = group.reduce((sum, leaf) => sum + leaf.pressure, 0);
    const same = group.filter((leaf) => leaf.pressure < 0 === pressure < 0);
    const all = same.reduce((sum, leaf) => sum + Math.abs(leaf.pressure), 0);
    const mean = (value: (leaf: Leaf) => number) =>
      same.reduce((sum, leaf) => sum + value(leaf) * Math.abs(leaf.pressure), 0) / all;
    const most = Math.max(...same.map((leaf) => Math.abs(leaf.pressure)));
    // Of those that weigh much, the plainest way.
    const heaviest = same
      .filter((leaf) => Math.abs(leaf.pressure) >= PLAIN * most)
      .reduce((a, b) => (legsIn(b.wave) < legsIn(a.wave) ? b : a));
    const { from, wave } = heaviest;
    return {
      ...{ from, turn: turns[Math.max(0, wave.reached)]!, taper: wave.taper, pressure },
      ...{ left: mean(({ left }) => left), sent: mean(({ sent }) => sent), legs: legsOf(wave) },
    };
  });
  return parts.sort((a, b) => Math.abs(b.pressure) - Math.abs(a.pressure));
}
