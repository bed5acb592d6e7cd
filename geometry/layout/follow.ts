/**
 * A header that follows a hand: for each place the hand asks for, the nearest header in which every rule holds. What is
 * held goes where it is asked as far as the rules allow; the runner it belongs to makes up the length; other runners
 * move only where their group or a clearance needs it. What cannot be is answered by the nearest that can, with the
 * rules that resist. Deterministic for a given series of asks. mm.
 */
import type { Design, Runner } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import { share } from '../../shared/share';
import { checkHeader } from '../check/check';
import type { Meshes } from '../check/meshes';
import type { CheckReport } from '../check/report';
import { type Header, resolveHeader } from '../header/resolve';
import { solverObstacles } from '../motion/replicas';
import { distance } from '../vector';
import { balancePoints, type Limit, routedOnly } from './balance';
import { type Held, partWay, shortfall } from './held';
import { assignInlets } from './inlets';
import { designAt, type LayoutProblem, layoutProblem, type Scope } from './layoutProblem';
import { brokenRules, missedRules, resistingRules } from './resistance';
import { ownScope, pressedUpon, type Reach, stuckBy, widened } from './scope';
import { type Solved, solve } from './solve';

export type Answer = {
  readonly design: Design;
  readonly report: CheckReport;
  /** How far what is held stays from where it was asked to be, mm. */
  readonly short: number;
  /** The rules that resist, the strongest first; empty where the ask was met. */
  readonly limits: readonly Limit[];
  /** Whether `further` may come nearer: an answer is given in time for the next frame, and some ways take longer. */
  readonly more: boolean;
  /** False where the header broke rules before the hand came, and more than following can mend: it is then drawn as asked. */
  readonly follows: boolean;
};

export type Follower = {
  /** The header that asks start from: as given, or balanced first where its lengths were not yet even. */
  readonly start: Answer;
  /** @param asked the start with what is held put where it is wanted; points may have been added to its runner or taken out */
  ask(asked: Design): Answer;
  /** The last ask again, from where its answer came to. */
  further(): Answer;
};

/** As in `balance`: lengths end far inside the promised 0.001 mm. */
const FEASIBLE = 2e-5;
/** What misses by no more holds as well, mm: the promise is 0.001. */
const HOLDS = 2e-4;
/** Steps of what is held smaller than this are not worth another round, mm. */
const SETTLED = 0.02;
const MAX_ITERATIONS = 16;
/** Steps toward the ask in one answer: the next goes on from there. */
const NEARING = 3;
/** Coming nearer by less than this is not worth another answer, mm. */
const WORTH = 0.05;
/** Nearer than this, an ask was met, mm. */
const MET = 0.05;
/** Times that what presses back is allowed to give way. */
const WIDENINGS = 2;
/** Part of the way from the last ask that held, tried where the whole way leads nowhere. */
const PART = 1 / 2;
/** What is held no farther from where it began than this is as good as back there, mm. */
const NEAR_HOME = 2;
/** Asks that pass after that led nowhere either. */
const PATIENCE = 3;
/** What did not help is tried again once the hand pulls so many times as far. */
const INSISTED = 1.5;

/** Moves of any point up to this are no leap, mm, nor up to so many times what the hand moved. */
const LEAP = 8;
const STRIDE = 4;
/** Part of a leap that it must bring what is held nearer. */
const GAIN = 0.3;

type Attempt = {
  readonly design: Design;
  readonly header: Header;
  readonly short: number;
  readonly problem: LayoutProblem;
  readonly solved: Solved;
  readonly scope: Scope;
};

/**
 * @param from routed; runners without points stay as they are
 * @param known a header that shares parts with it: what was measured of those is not measured again
 */
export function follower(from: Design, meshes: Meshes, held: Held, known?: Header): Follower {
  const reportOf = remembered((of: Header) => checkHeader(of, meshes));
  /** As it was resolved last: what the next shares with it is neither resolved nor measured again. */
  let header = resolveHeader(from, known);
  const start = startOf();
  /** What was asked for and found when it last held. */
  let last: { asked: Design; answer: Answer } = { asked: start.design, answer: start };
  let told = start;
  /** The last ask, and how far the hand moved since. */
  let before = start.design;
  let step = 0;
  /** Whether the hand is back where it began: there the header is sought from where it began, too. */
  let isNearHome = true;
  let warm: ReadonlySet<string> = new Set();

  const resistanceTo = remembered(({ problem, solved }: Attempt) =>
    resistingRules(problem, obstacles(problem), problem.start, solved.x),
  );
  const own = ownScope(header, held);
  const stuck = stuckBy(header, held);
  let lastScope = own;
  /** Scopes that brought what is held no nearer, with how far it was then. */
  const useless = new Map<string, number>();
  /** Asks to let pass before part of the way is tried again. */
  let patience = 0;

  return { start, ask, further };

  function ask(given: Design): Answer {
    if (!start.follows) return asDrawn(given);
    const asked = start.design === from ? given : onto(start.design, given, held);
    step = shortfall(asked, before, held);
    before = asked;
    isNearHome = shortfall(asked, start.design, held) < NEAR_HOME;
    told = stuck ? stay(asked, [stuck]) : answerTo(asked);
    return told;
  }

  function further(): Answer {
    if (!told.more) return told;
    const { short } = told;
    step = 0;
    const answer = answerTo(before);
    told = { ...answer, more: answer.more && short - answer.short > WORTH };
    return told;
  }

  function answerTo(asked: Design): Answer {
    const whole = seek(asked);
    if (holds(whole) && !leaps(asked, whole)) return keep(asked, whole, answerOf(asked, whole));
    const limits = whatStops(whole);
    const nearer = --patience < 0 ? partWay(last.asked, asked, held, PART) : null;
    const found = nearer && attempt(nearer, lastScope);
    if (nearer && found && holds(found) && !leaps(nearer, found))
      return keep(nearer, found, { ...answerOf(asked, found), limits });
    if (nearer) patience = PATIENCE;
    return stay(asked, limits);
  }

  /** What was drawn last, still: what is asked now leads nowhere. */
  function stay(asked: Design, limits: readonly Limit[]): Answer {
    return { ...last.answer, short: shortfall(asked, last.answer.design, held), limits, more: false };
  }

  /**
   * Where a way of lying comes to its end the nearest other may be far off. A hand that hardly moved does not expect it:
   * the header holds on, and leaps only once that brings what is held a good deal nearer.
   */
  function leaps(asked: Design, { design, short }: Attempt): boolean {
    const drawn = last.answer.design;
    const leap = farthestMove(drawn.runners, design.runners);
    if (leap <= Math.max(LEAP, STRIDE * step)) return false;
    const homeward =
      farthestMove(start.design.runners, drawn.runners) - farthestMove(start.design.runners, design.runners);
    return shortfall(asked, drawn, held) - short < GAIN * leap && homeward < GAIN * leap;
  }

  function asDrawn(asked: Design): Answer {
    header = resolveHeader(share(start.design, asked), header);
    return {
      design: header.design,
      report: reportOf(header),
      short: 0,
      limits: [],
      more: false,
      follows: false,
    };
  }

  function keep(asked: Design, found: Attempt, answer: Answer): Answer {
    last = { asked, answer };
    warm = found.solved.warm;
    lastScope = found.scope;
    return answer;
  }

  function answerOf(asked: Design, found: Attempt): Answer {
    const { design, header, solved } = found;
    const short = shortfall(asked, design, held);
    const limits = short > MET ? resistanceTo(found) : [];
    return { design, report: reportOf(header), short, limits, more: short > MET && solved.isCutShort, follows: true };
  }

  function whatStops({ header, problem, solved, scope }: Attempt): readonly Limit[] {
    const missed = isSolved(solved) ? [] : missedRules(problem, obstacles(problem), solved.x);
    if (missed.length > 0) return missed;
    const report = reportOf(header);
    if (!report.ok) return brokenRules(report);
    // It could be had, but only by a leap: what holds on are the rules that press where the header still lies.
    const drawn = drawnIn(problem, scope);
    return drawn ? resistingRules(problem, obstacles(problem), problem.start, drawn) : last.answer.limits;
  }

  /** With those that had to move last time: back to the held thing's own runners once they are home, more where it helps. */
  function seek(asked: Design): Attempt {
    let found = attempt(asked, lastScope);
    if (lastScope !== own && isGood(asked, found) && atHome(found.design)) {
      const alone = attempt(asked, own);
      if (isGood(asked, alone)) return alone;
    }
    for (let k = 0; k < WIDENINGS && !isGood(asked, found); k++) {
      const scope = widened(found.scope, whatPresses(found), found.header);
      const mayHold = isSolved(found.solved) && (found.short > MET || holds(found));
      if (!scope || (mayHold && found.short < useless.get(scopeName(scope))! * INSISTED)) break;
      const next = attempt(asked, scope);
      const better =
        !mayHold ||
        (isSolved(next.solved) && (next.short < found.short - MET || (leaps(asked, found) && !leaps(asked, next))));
      if (!better) {
        useless.set(scopeName(scope), found.short);
        break;
      }
      found = next;
    }
    return found;
  }

  /** As `check` measures it, which is dearer than solving: only of what is to be drawn. */
  function holds({ solved, header }: Attempt): boolean {
    return isSolved(solved) && reportOf(header).ok;
  }

  /** Whether all but the held thing's own runners lie where they did. */
  function atHome(design: Design): boolean {
    const others = design.runners.filter((r) => !own.runners.has(r.id));
    const began = start.design.runners.filter((r) => !own.runners.has(r.id));
    return farthestMove(began, others) <= MET;
  }

  function isGood(asked: Design, found: Attempt): boolean {
    return found.short <= MET && isSolved(found.solved) && !leaps(asked, found) && holds(found);
  }

  function whatPresses(found: Attempt): Reach {
    const { problem, solved, header } = found;
    const rules = isSolved(solved) ? resistanceTo(found) : missedRules(problem, obstacles(problem), solved.x);
    return pressedUpon(rules.length > 0 ? rules : brokenRules(reportOf(header)), header);
  }

  function attempt(asked: Design, scope: Scope): Attempt {
    const target = resolveHeader(share(start.design, assignInlets(asked)), header);
    const problem = layoutProblem(routedOnly(target), scope);
    const solved = solveFrom(problem, scope);
    const design = share(start.design, problem.unknowns > 0 ? designAt(problem) : target.design);
    header = resolveHeader(design, header);
    return { design, header, short: shortfall(asked, design, held), problem, solved, scope };
  }

  function solveFrom(problem: LayoutProblem, scope: Scope): Solved {
    if (problem.unknowns === 0) return { x: problem.start, miss: 0, iterations: 0, isCutShort: false, warm: new Set() };
    const options = { maxIterations: MAX_ITERATIONS, feasible: FEASIBLE, settled: SETTLED, nearing: NEARING, warm };
    const around = obstacles(problem);
    // From the last answer, which held: a pointer's next ask is not far from it.
    const drawn = isNearHome ? null : drawnIn(problem, scope);
    if (drawn) {
      const near = solve(problem, around, problem.start, drawn, options);
      if (isSolved(near)) return near;
    }
    return solve(problem, around, problem.start, problem.start, options);
  }

  /** The last answer as a vector of this problem's unknowns; null where they mean other places. */
  function drawnIn(problem: LayoutProblem, scope: Scope): Float64Array | null {
    const drawn = layoutProblem(routedOnly(resolveHeader(last.answer.design, problem.header)), scope);
    return keyOf(drawn) === keyOf(problem) ? drawn.start : null;
  }

  function obstacles(problem: LayoutProblem) {
    return solverObstacles(problem.header, meshes);
  }

  function startOf(): Answer {
    const given = { design: from, report: reportOf(header), short: 0, limits: [], more: false, follows: true };
    if (given.report.ok) return given;
    const even = share(from, balancePoints(from, meshes, { restarts: 0 }).design);
    const evened = resolveHeader(even, header);
    const report = reportOf(evened);
    if (!report.ok) return { ...given, follows: false };
    header = evened;
    return { ...given, design: even, report };
  }
}

const isSolved = ({ miss }: Solved): boolean => miss <= HOLDS;

const scopeName = ({ runners, merges }: Scope): string => `${[...runners].sort()}|${[...merges].sort()}`;

/** Vectors of unknowns of problems with the same key mean the same places. */
const keyOf = (problem: LayoutProblem): string =>
  `${problem.runners.map((r) => `${r.resolved.runner.id} ${r.unknowns}`)}|${problem.merges.map((m) => m.resolved.merge.id)}|${problem.groups.map((g) => g.at)}`;

/** How far any point of a runner with as many points as before moved. */
function farthestMove(before: readonly Runner[], after: readonly Runner[]): number {
  let far = 0;
  for (const [i, { points }] of after.entries()) {
    const old = before[i]?.points;
    if (!points || !old || points === old || points.length !== old.length) continue;
    for (const [k, p] of points.entries()) far = Math.max(far, distance(p, old[k]!));
  }
  return far;
}

/** What is held as `asked` has it, all else as it lies in `base`. */
function onto(base: Design, asked: Design, held: Held): Design {
  const keeps = (kind: Held['kind'], id: string): boolean =>
    held.kind === kind && (held.kind === 'points' ? held.runner : held.id) === id;
  const runners = new Map(base.runners.map((r) => [r.id, r]));
  const merges = new Map(base.merges.map((m) => [m.id, m]));
  return {
    ...asked,
    runners: asked.runners.map((r) => (keeps('points', r.id) ? r : (runners.get(r.id) ?? r))),
    merges: asked.merges.map((m) => (keeps('merge', m.id) ? m : (merges.get(m.id) ?? m))),
  };
}
