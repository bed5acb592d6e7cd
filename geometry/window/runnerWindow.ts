/**
 * The shortest and the longest that one runner can be by itself: many starts, each settled onto the rules and then stretched
 * one way until it goes no further; the best of them that `check` finds whole. mm.
 */
import { balanceLength } from '../check/lengths';
import type { Obstacle } from '../check/obstacles';
import type { Header, ResolvedRunner } from '../header/resolve';
import { type LayoutProblem, place } from '../layout/layoutProblem';
import { distance } from '../vector';
import { type Alone, aloneIn, holds, lineOf, problemOf } from './alone';
import { type Hindrance, hindrances, type Rated, rated } from './rate';
import { beyondUse, type RunnerWindow } from './report';
import type { Line } from './sampled';
import { diverse, farLines, startsFor } from './starts';
import { type Cancelled, lengthAt, type Stretched, stretch } from './stretch';

export type WindowOptions = {
  /** Starting lines followed for the shortest and, where it is bounded, for the longest. Default 8. */
  readonly starts?: number;
  /** Asked now and then; true ends the search with what it has. */
  readonly cancelled?: Cancelled;
};

const STARTS = 8;
/** Where fewer of the starts than this come to hold, others are tried; so many times where none does. */
const ENOUGH = 3;
const PATIENCE = 3;
/** Lines that are tried for a length that was asked for. */
const INSISTENCE = 24;
/** Further off than this, what was found is not likely to have missed it. */
const NEAR_SHORTEST = 0.8;
const NEAR_LONGEST = 2;
/** A line that misses the rules by less holds almost as it is drawn. */
const WHOLE = 1;
const SETTLING = 16;
const STRETCHING = 60;
/** Several steps that gain less end a try, and the best of all tries, mm. */
const RACING = 1;
const FINISHED = 0.02;
/** Lines to far away that are tried before the longest is sought step by step. */
const FAR = 6;
const FAR_FROM = 3;
const SEED = 7919;

/** A line that holds, with the problem that it was found in. */
type Found = Stretched & { readonly alone: Alone; readonly problem: LayoutProblem };

/**
 * @param rough the same obstacles, or quicker ones to seek beside: what is found is settled again beside the true ones
 * @param wanted the length that its group asks for, what lies in the head included
 */
export function runnerWindow(
  header: Header,
  runner: ResolvedRunner,
  obstacles: readonly Obstacle[],
  rough: readonly Obstacle[],
  wanted: number | null,
  { starts = STARTS, cancelled }: WindowOptions,
): RunnerWindow {
  const { id, locked = false, to } = runner.runner;
  const nothing = { id, shortest: null, longest: null, unbounded: false, inlet: null, locked };
  if (locked && runner.centerline) {
    const length = balanceLength(runner);
    return { ...nothing, shortest: length, longest: length, inlet: to.inlet ?? null };
  }
  const options = aloneIn(header, runner, obstacles);
  if (options.length === 0 || cancelled?.()) return nothing;
  const hindered = hindrances(options[0]!);
  const radii = radiiFor(runner);
  const inHead = runner.lengthInHead;
  const search = startsFor(options, radii, hindered, SEED + header.runners.indexOf(runner));
  const sound = new WeakSet<Found>();
  const drawn = drawnLine(runner, options, hindered);

  const begun = drawn ? settle(drawn, undefined, obstacles) : [];
  const whole = search.lines.filter((l) => l.missed < WHOLE).sort((a, b) => a.length - b.length);
  for (const one of new Set([...diverse(whole, starts / 2), ...diverse(search.lines, starts)]))
    begun.push(...settle(one));
  // In a crowded place the short ones are blocked: others come first that were moved out of the way.
  for (let k = 0; k < PATIENCE && begun.length < (k === 0 ? ENOUGH : 1) && !cancelled?.(); k++)
    for (const one of search.freed()) {
      begun.push(...settle(one));
      if (begun.length >= ENOUGH) break;
    }
  const asked = wanted === null ? null : wanted - inHead;
  if (begun.length === 0 && asked !== null) begun.push(...ofLength(asked, []));
  const shortened = byLength(begun, -1)
    .slice(0, starts / 2)
    .flatMap((f) => stretched(f, -1));
  const raced = soundest([...shortened, ...begun], -1);
  if (!raced) return nothing;
  if (asked !== null && asked < raced.length && asked > NEAR_SHORTEST * raced.length)
    shortened.push(...ofLength(asked, begun).flatMap((f) => stretched(f, -1)));
  const nearly = soundest([...shortened, raced], -1)!;
  const shortest = otherDies(soundest([...stretched(nearly, -1, FINISHED, undefined, obstacles), nearly], -1)!);
  const found = { ...nothing, shortest: inHead + shortest.length, inlet: shortest.alone.inlet };

  const enough = beyondUse(found.shortest) - inHead;
  if (goesFar(enough)) return { ...found, unbounded: true };
  const roomy = [...search.lines, ...search.freed()].sort((a, b) => longish(b) - longish(a));
  for (const one of diverse(roomy, starts)) begun.push(...settle(one));
  const lengthened: Found[] = [];
  for (const f of byLength(begun, 1).slice(0, starts)) {
    lengthened.push(...stretched(f, 1, RACING, enough));
    if (lengthened.some((l) => l.length >= enough)) break;
  }
  const reached = Math.max(...lengthened.map((f) => f.length));
  if (asked !== null && reached < asked && asked < NEAR_LONGEST * reached)
    lengthened.push(...ofLength(asked, begun).flatMap((f) => stretched(f, 1, RACING, enough)));
  const longest = soundest([...lengthened, ...begun, shortest], 1)!;
  if (longest.length >= enough) return { ...found, unbounded: true };
  return { ...found, longest: inHead + longest.length };

  /** @param length that it must have, where one is asked */
  function settle({ alone, line }: Rated, length?: number, beside = rough): Found[] {
    if (cancelled?.()) return [];
    const problem = problemOf(alone, line);
    if (problem.unknowns === 0) {
      // A straight tube has nothing to move.
      const x = problem.start;
      const still: Found = { alone, problem, x, length: lengthAt(problem, x) };
      return holds(alone, problem) ? [still] : [];
    }
    const groups = length === undefined ? [] : [{ id: '', at: -1, length: length + inHead, members: problem.runners }];
    const start = stretch({ ...problem, groups }, beside, problem.start, { way: 0, steps: SETTLING, cancelled });
    return start ? [{ ...start, alone, problem }] : [];
  }

  /**
   * A length that a group asks for and the search has not come to is sought by itself, from whatever is nearest to it, before
   * anybody is told that it is out of reach.
   */
  function ofLength(length: number, near: readonly Found[]): Found[] {
    if (cancelled?.()) return [];
    const known = near.flatMap((f) => {
      place(f.problem, f.x);
      return rated(f.alone, lineOf(f.problem), hindered) ?? [];
    });
    const off = (l: Rated): number => Math.abs(l.length - length) + 2 * l.missed;
    const lines = [...known, ...search.lines, ...search.freed(), ...search.freed()].sort((a, b) => off(a) - off(b));
    for (const one of diverse(lines, INSISTENCE)) {
      const found = settle(one, length).flatMap(confirmed);
      if (found.length > 0) return found;
    }
    return [];
  }

  function stretched(
    f: Found,
    way: -1 | 1,
    gain = RACING,
    until = way * Number.POSITIVE_INFINITY,
    beside = rough,
  ): Found[] {
    if (f.problem.unknowns === 0) return [f];
    const found = stretch(f.problem, beside, f.x, {
      way,
      steps: STRETCHING,
      gain,
      enough: (length) => (way < 0 ? length <= until : length >= until),
      cancelled,
    });
    return found ? [{ ...f, ...found }] : [];
  }

  /** The best by length that `check` agrees with. */
  function soundest(list: readonly Found[], way: -1 | 1): Found | null {
    for (const f of byLength(list, way)) {
      const [found] = confirmed(f);
      if (found) return found;
    }
    return null;
  }

  function confirmed(f: Found): Found[] {
    if (sound.has(f)) return [f];
    const exact = rough === obstacles || f.problem.unknowns === 0 ? f : settledBesideAll(f);
    if (!exact) return [];
    place(exact.problem, exact.x);
    if (!holds(exact.alone, exact.problem)) return [];
    sound.add(exact);
    return [exact];
  }

  function settledBesideAll(f: Found): Found | null {
    const found = stretch(f.problem, obstacles, f.x, { way: 0, steps: SETTLING, cancelled });
    return found && { ...f, ...found };
  }

  /** Bend by bend with every other radius in the shop, as long as that makes it shorter. */
  function otherDies(from: Found): Found {
    let now = from;
    if (radii.length < 2) return now;
    for (let i = 0; i < now.problem.runners[0]!.path.bends; i++)
      for (const radius of radii) {
        place(now.problem, now.x);
        const line = lineOf(now.problem);
        if (line.radii[i] === radius || !line.radii[i]) continue;
        const next = rated(now.alone, { ...line, radii: line.radii.with(i, radius) }, hindered);
        for (const f of next ? settle(next).flatMap((g) => stretched(g, -1)) : [])
          if (f.length < now.length) now = confirmed(f).find((g) => g.length < now.length) ?? now;
      }
    return now;
  }

  /** Whether a line of a length that nobody asks for holds: then there is room for any that somebody does. */
  function goesFar(length: number): boolean {
    const from = [shortest.alone, ...options.filter((o) => o !== shortest.alone)].slice(0, FAR_FROM);
    return farLines(from, radii[0]!, length, hindered)
      .slice(0, FAR)
      .some((one) => settle(one, length).some((f) => confirmed(f).length > 0));
  }
}

const longish = ({ length, missed }: Rated): number => length - 5 * missed;

const byLength = (list: readonly Found[], way: -1 | 1): Found[] =>
  [...list].sort((a, b) => way * (b.length - a.length));

/** What the shop can bend this tube with, least first. */
function radiiFor({ tooling, tubeRadius }: ResolvedRunner): number[] {
  const all = new Set([tooling.centerlineRadius, ...(tooling.otherRadii ?? [])]);
  return [...all].filter((r) => r >= tubeRadius).sort((a, b) => a - b);
}

/** The runner as it is routed, into the inlet where it ends. */
function drawnLine(
  { centerline: line }: ResolvedRunner,
  options: readonly Alone[],
  hindered: readonly Hindrance[],
): Rated | null {
  if (!line) return null;
  const end = line.points.at(-1)!;
  const nearest = options.reduce((a, b) => (distance(b.end.position, end) < distance(a.end.position, end) ? b : a));
  const drawn: Line = { points: line.points, radii: line.radii };
  return rated(nearest, drawn, hindered);
}
