/**
 * `route DESIGN -o OUT`: lays every runner that is not locked. Rounds with the same numbers come to the same file however
 * many threads there are; seconds and an interrupt only end it early, and then the best so far is written.
 */
import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import {
  firingOrderProblem,
  type Harvest,
  type InletOrder,
  type Layout,
  lengthWindows,
  measuredLayout,
  nothingYet,
  outOfReach,
  type Problem,
  swallowedEnds,
} from '../../../geometry';
import { writeDesign } from '../../../shared/design/write';
import { numberArgument, wholeArgument } from '../arguments';
import { insistWritable, writeWhole } from '../files';
import { FAILS, HOLDS, type Io, UnusableInput } from '../io';
import { findings } from '../print/report';
import { printRouted, progressLine } from '../print/routed';
import { type Loaded, loadDesign } from '../readDesign';
import { isOver, type Job, now, sharedNumbers } from '../route/job';
import { offered } from '../route/offered';
import { runRounds } from '../route/runRounds';

export type RouteArguments = {
  readonly output: string;
  readonly seed?: string;
  readonly rounds?: string;
  readonly seconds?: string;
  readonly inlets?: string;
  readonly threads?: string;
  readonly alternatives?: string;
  readonly json?: boolean;
};

const USUAL_SECONDS = 10;
const MOST_SECONDS = 1_000_000;
/** Where an end is swallowed nothing can hold: one round for something to look at, and not for long. */
const HOPELESS_SECONDS = 2;

/** Everything known of a search once it has ended. */
export type Routed = {
  readonly harvest: Harvest;
  readonly firstValidSeconds: number | null;
  readonly seconds: number;
  readonly rounds: number;
  readonly interrupted: boolean;
  /** Groups whose length cannot be had, with the runner that sets the limit; empty where that was not asked or cannot be told. */
  readonly reach: readonly string[];
};

export async function routeCommand(path: string, given: RouteArguments, io: Io): Promise<number> {
  const started = now();
  const asked = options(given);
  const output = resolve(io.cwd, given.output);
  const others = given.alternatives === undefined ? null : resolve(io.cwd, given.alternatives);
  insistWritable(output);
  if (others !== null) insistWritable(alternativePath(others, 2));
  const loaded = loadDesign(path, io);

  const unordered = asked.order === 'firing' ? firingOrderProblem(loaded.design) : null;
  if (unordered !== null) throw new UnusableInput(`--inlets firing: ${unordered}`);

  const idle = nothingToLay(loaded);
  const swallowed = idle === null ? swallowedEnds(loaded.design, loaded.meshes) : [];
  if (swallowed.length > 0 && !given.json) io.out(`${findings(swallowed)}\n\n`);

  const routed = idle === null ? await search(loaded, asked, swallowed, started, io) : asItIs(loaded, started);
  const best = routed.harvest.best ?? (routed.interrupted ? null : measuredLayout(loaded.design, loaded.meshes));
  if (!best) {
    io.err('evenrun: interrupted before anything was found; nothing is written\n');
    return FAILS;
  }
  writeWhole(output, writeDesign(best.design));
  const written = others === null ? [] : writeOthers(others, routed.harvest.layouts);
  if (given.json) io.out(`${JSON.stringify(answer(best, routed, swallowed, given.output), null, 2)}\n`);
  else io.out(printRouted(best, routed, { output: given.output, idle, alternatives: written.length }));
  return best.report.ok && !routed.interrupted ? HOLDS : FAILS;
}

type Asked = ReturnType<typeof options>;

function options({ seed, rounds, seconds, inlets, threads }: RouteArguments) {
  const limit = seconds === undefined ? (rounds === undefined ? USUAL_SECONDS : Infinity) : secondsArgument(seconds);
  return {
    seed: seed === undefined ? 1 : wholeArgument('--seed', seed, 0, 2 ** 32 - 1),
    rounds: rounds === undefined ? Infinity : wholeArgument('--rounds', rounds, 1, 1_000_000),
    seconds: limit,
    order: inlets === undefined ? ('free' as const) : orderArgument(inlets),
    threads: threads === undefined ? availableParallelism() : wholeArgument('--threads', threads, 1, 256),
  };
}

function secondsArgument(text: string): number {
  const value = numberArgument('--seconds', text);
  if (value > 0 && value <= MOST_SECONDS) return value;
  throw new UnusableInput(`--seconds: found "${text}"; allowed: more than 0, at most ${MOST_SECONDS}`);
}

function orderArgument(text: string): InletOrder {
  if (text === 'free' || text === 'firing') return text;
  throw new UnusableInput(`--inlets: found "${text}"; allowed: free, firing`);
}

async function search(
  { design, meshes }: Loaded,
  { seed, rounds, seconds, order, threads }: Asked,
  swallowed: readonly Problem[],
  started: number,
  io: Io,
): Promise<Routed> {
  const hopeless = swallowed.length > 0;
  const job: Job = {
    design,
    meshes,
    options: { seed, order },
    rounds: hopeless ? 1 : rounds,
    deadline: started + 1000 * Math.min(seconds, hopeless ? HOPELESS_SECONDS : Infinity),
    shared: sharedNumbers(),
  };
  const { startThread, onInterrupt, status } = io.process ?? {};
  let reach: readonly string[] = [];
  const meanwhile = (): void => {
    const windows = lengthWindows(design, meshes, { cancelled: () => isOver(job) });
    // Cut short, it knows too little to say that a length cannot be had.
    if (!isOver(job)) reach = outOfReach(windows, design);
  };
  const { found, interrupted } = await runRounds(job, {
    threads,
    meanwhile,
    ...(startThread ? { startThread } : {}),
    ...(onInterrupt ? { onInterrupt } : {}),
    ...(status ? { progress: (f) => status(progressLine(f, (now() - started) / 1000)) } : {}),
  });
  status?.('');
  return {
    harvest: found.harvest(),
    firstValidSeconds: found.firstValid === null ? null : (found.firstValid - started) / 1000,
    seconds: (now() - started) / 1000,
    rounds: found.ended,
    interrupted,
    reach: found.firstValid === null ? reach : [],
  };
}

/** Why there is nothing to do; null where there is. */
function nothingToLay({ design: { runners } }: Loaded): string | null {
  if (runners.length === 0) return 'Nothing to lay: the design has no runners';
  return runners.every((r) => r.locked) ? 'Nothing to lay: every runner is locked' : null;
}

function asItIs({ design, meshes }: Loaded, started: number): Routed {
  const layout = measuredLayout(design, meshes);
  const seconds = (now() - started) / 1000;
  const harvest = layout.report.ok ? { best: layout, layouts: [layout] } : { ...nothingYet, best: layout };
  return {
    harvest,
    firstValidSeconds: layout.report.ok ? seconds : null,
    seconds,
    rounds: 0,
    interrupted: false,
    reach: [],
  };
}

function answer(best: Layout, routed: Routed, swallowed: readonly Problem[], output: string) {
  const { harvest, firstValidSeconds, seconds, rounds, reach } = routed;
  const { report, bends, angle } = best;
  return {
    ...report,
    problems: [...swallowed, ...report.problems],
    ...{ firstValidSeconds, seconds, rounds, bends, angle },
    alternatives: harvest.layouts.map(offered),
    reach,
    output,
  };
}

const alternativePath = (prefix: string, n: number): string => `${prefix}-${n}.evenrun.json`;

/** The best is in OUT; these are numbered as in the table. */
function writeOthers(prefix: string, layouts: readonly Layout[]): string[] {
  return layouts.slice(1).map(({ design }, i) => {
    const path = alternativePath(prefix, i + 2);
    writeWhole(path, writeDesign(design));
    return path;
  });
}
