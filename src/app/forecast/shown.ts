/**
 * What the page shows: the runs that are chosen, how far they are, which speed is looked at closely. A run that was followed once
 * stays for as long as its engine, its way of gas and its speeds stay the same, whatever else of the design is edited.
 */
import { create } from 'zustand';
import { DesignError, type Refusal } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import type { SpeedJob } from '../../pulse/forecast/job';
import type { SpeedAnswer } from '../../pulse/forecast/types';
import { whenOpened } from '../document';
import type { Quantity } from './quantities';
import { emptyRun, type Run, type RunKind, type Subject, withTold } from './runs';
import { spread } from './spread';
import { type Crew, createCrew } from './team/crew';

export type Face = 'curve' | 'valves' | 'waves' | 'sizes' | 'engine';

/** One speed of one run, looked at closely. */
export type Picked = { readonly kind: RunKind; readonly rpm: number };

export type Detail =
  | { readonly is: 'following'; readonly done: number }
  | { readonly is: 'there'; readonly answer: SpeedAnswer }
  | { readonly is: 'failed'; readonly why: string };

export type Shown = {
  readonly face: Face;
  readonly quantity: Quantity;
  readonly chosen: readonly RunKind[];
  readonly runs: ReadonlyMap<RunKind, Run>;
  /** Kinds that cannot be followed, and why. */
  readonly barred: ReadonlyMap<RunKind, readonly Refusal[]>;
  /** The design that runs and refusals are of. */
  readonly of: Design | null;
  /** Jobs handed out and not told yet. */
  readonly waiting: number;
  /** Stopped by hand: what is missing is not followed until it is asked for. */
  readonly halted: boolean;
  readonly picked: Picked | null;
  /** Laid beside the one that is looked at closely, at the same speed; null: nobody said. */
  readonly beside: RunKind | 'alone' | null;
  readonly details: ReadonlyMap<string, Detail>;
  /** The two that the summary speaks of; null: the first two that are there. */
  readonly pair: readonly [one: RunKind, over: RunKind] | null;
};

export const FIRST_CHOICE: readonly RunKind[] = ['header', 'cast'];

const NOTHING: Shown = {
  face: 'curve',
  quantity: 'torque',
  chosen: FIRST_CHOICE,
  runs: new Map(),
  barred: new Map(),
  of: null,
  waiting: 0,
  halted: false,
  picked: null,
  beside: null,
  details: new Map(),
  pair: null,
};

export const useShown = create<Shown>()(() => NOTHING);

/** What the store stands on; replaced in tests. */
export type Ground = {
  crew(): Crew;
  /** @throws DesignError where there is no such run of it */
  subjectOf(kind: RunKind, design: Design): Subject;
  speedsOf(subject: Subject): readonly number[];
};

let ground: Ground | null = null;
let crew: Crew | null = null;
/** What was asked for before is told no more. */
let turn = 0;
/** Marks of what is followed now, by the names of the jobs. */
const handedOut = new Map<string, string>();
/** What was followed so far, by mark: a run that is left out, barred or edited away, and comes back, has its answers still. */
const known = new Map<string, Run>();
/** How many are kept: numbers alone, some 100 kB each. */
const MOST_KNOWN = 40;

export const standOn = (given: Ground): void => {
  ground = given;
};
export const ownCrew = (): Crew => {
  crew ??= ground?.crew() ?? createCrew();
  return crew;
};

type Followed = Pick<Subject, 'engine' | 'path'>;
const marks = new WeakMap<Followed, string>();
/** The same for subjects that come to the same answers. */
export function markOf(subject: Followed): string {
  const known = marks.get(subject);
  if (known) return known;
  const mark = JSON.stringify([subject.engine, { ...subject.path, title: '' }]);
  marks.set(subject, mark);
  return mark;
}

/** Whether a design's run of a kind is still what was followed. */
export function staysAs(kind: RunKind, { engine, path }: Followed): (design: Design) => boolean {
  const mark = markOf({ engine, path });
  return (design) => {
    try {
      return ground !== null && markOf(ground.subjectOf(kind, design)) === mark;
    } catch (error) {
      if (error instanceof DesignError) return false;
      throw error;
    }
  };
}

const detailKey = (run: Run, rpm: number): string => `${rpm} ${markOf(run.subject)}`;

/** Empty, or as far as it was followed before. */
function recalled(subject: Subject, speeds: readonly number[]): Run {
  const mark = markOf(subject);
  const was = known.get(mark);
  const run = was && String(was.speeds) === String(speeds) ? { ...was, subject } : emptyRun(subject, speeds);
  // Asked for last, let go of last.
  known.delete(mark);
  known.set(mark, run);
  for (const old of [...known.keys()].slice(0, -MOST_KNOWN)) known.delete(old);
  return run;
}

/** Runs and refusals of a design as it is now; answers of what did not change stay. */
export function lookAt(design: Design): void {
  const now = useShown.getState();
  if (!ground) return;
  const runs = new Map<RunKind, Run>();
  const barred = new Map<RunKind, readonly Refusal[]>();
  for (const kind of now.chosen) {
    try {
      const subject = ground.subjectOf(kind, design);
      runs.set(kind, recalled(subject, ground.speedsOf(subject)));
    } catch (error) {
      if (!(error instanceof DesignError)) throw error;
      barred.set(kind, error.problems);
    }
  }
  const asked = new Set([...runs.values()].map(({ subject }) => markOf(subject)));
  // Changed, barred or left out while it is under way: nobody waits for it any more.
  if ([...handedOut.values()].some((mark) => !asked.has(mark))) drop();
  useShown.setState({ runs, barred, of: design, waiting: handedOut.size });
  const { picked } = useShown.getState();
  if (picked && !runs.get(picked.kind)?.speeds.includes(picked.rpm)) useShown.setState({ picked: null });
}

/** Ends what is under way; answers stay. */
function drop(): void {
  turn += 1;
  handedOut.clear();
}

/** m. Coarse cells tell a curve's shape in a sixth of the time: torque within 0.2 % of fine ones, as measured on the examples. */
const COARSE_CELL = 0.03;

type Missing = { readonly mark: string; readonly run: Run; readonly index: number; readonly fine: boolean };

const nameOfJob = ({ mark, run, index, fine }: Missing): string => `${run.speeds[index]} ${fine} ${mark}`;

/** What is not followed yet: all of it coarse, then all of it fine, and first what tells most of every curve. What two runs share is followed once. */
function missingNow({ runs, chosen }: Shown): readonly Missing[] {
  const ranked = chosen.flatMap((kind) => {
    const run = runs.get(kind);
    return run ? spread(run.speeds.length).map((index, rank) => ({ mark: markOf(run.subject), run, index, rank })) : [];
  });
  const order = ranked.toSorted((a, b) => a.rank - b.rank);
  const all = [
    ...order.filter(({ run, index }) => run.told[index] === null).map((job) => ({ ...job, fine: false })),
    ...order.filter(({ run, index }) => !run.final[index]).map((job) => ({ ...job, fine: true })),
  ];
  return [...new Map(all.map((job) => [nameOfJob(job), job])).values()].filter((job) => !handedOut.has(nameOfJob(job)));
}

/** Follows whatever of the chosen runs was not followed yet. */
export function followMissing(): void {
  const own = turn;
  useShown.setState({ halted: false });
  const missing = missingNow(useShown.getState());
  if (missing.length === 0) return;
  for (const job of missing) handedOut.set(nameOfJob(job), job.mark);
  useShown.setState({ waiting: handedOut.size });
  const jobs = missing.map(
    ({ run: { subject, speeds }, index, fine }): SpeedJob => ({
      engine: subject.engine,
      path: subject.path,
      rpm: speeds[index]!,
      ...(!fine && { cell: COARSE_CELL }),
    }),
  );
  const tell: Parameters<Crew['follow']>[1] = (k, answer) => {
    if (own !== turn) return;
    const job = missing[k]!;
    handedOut.delete(nameOfJob(job));
    const of = (run: Run): Run => withTold(run, job.index, answer, job.fine);
    const was = known.get(job.mark);
    if (was) known.set(job.mark, of(was));
    useShown.setState(({ runs }) => ({
      waiting: handedOut.size,
      runs: new Map([...runs].map(([kind, run]) => [kind, markOf(run.subject) === job.mark ? of(run) : run])),
    }));
  };
  void ownCrew().follow(jobs, tell, () => own !== turn);
}

/** Ends what is under way. */
export function halt(): void {
  drop();
  useShown.setState({ waiting: 0, halted: true });
}

export function choose(kind: RunKind, wanted: boolean, design: Design): void {
  const kept = useShown.getState().chosen.filter((k) => k !== kind);
  useShown.setState({ chosen: wanted ? [...kept, kind] : kept });
  lookAt(design);
  followMissing();
}

export const turnTo = (face: Face): void => useShown.setState({ face });
export const showQuantity = (quantity: Quantity): void => useShown.setState({ quantity });
export const comparePair = (one: RunKind, over: RunKind): void => useShown.setState({ pair: [one, over] });

/** How many speeds are kept with their waves: some 10 MB each. */
const MOST_DETAILS = 8;

const putDetail = (key: string, detail: Detail): void =>
  useShown.setState(({ details }) => {
    const others = [...details].filter(([k]) => k !== key);
    return { details: new Map([...others.slice(-(MOST_DETAILS - 1)), [key, detail]]) };
  });

export function detailOf(shown: Pick<Shown, 'runs' | 'details'>, { kind, rpm }: Picked): Detail | null {
  const run = shown.runs.get(kind);
  return (run && shown.details.get(detailKey(run, rpm))) ?? null;
}

/** The runs that are looked at closely: the one that was picked, then what is laid beside it, if anything. */
export const kindsSeen = ({ kind }: Picked, beside: Shown['beside']): RunKind[] =>
  beside && beside !== 'alone' && beside !== kind ? [kind, beside] : [kind];

/** Looks at one speed closely: followed anew with its waves, before all that waits; so is the run beside it. */
export function pick(picked: Picked): void {
  useShown.setState({ picked });
  const { rpm } = picked;
  for (const kind of kindsSeen(picked, useShown.getState().beside)) follow({ kind, rpm });
}

/** What is looked at, where nothing is known of it as it is now: after an edit, or where it was left before it was there. What failed is not tried again by itself. */
export function followPicked(): void {
  const { picked, beside } = useShown.getState();
  if (!picked) return;
  for (const kind of kindsSeen(picked, beside)) {
    const one = { kind, rpm: picked.rpm };
    if (!detailOf(useShown.getState(), one)) follow(one);
  }
}

export function layBeside(beside: RunKind | 'alone'): void {
  useShown.setState({ beside });
  const { picked } = useShown.getState();
  if (picked) pick(picked);
}

function follow({ kind, rpm }: Picked): void {
  const run = useShown.getState().runs.get(kind);
  if (!run) return;
  const key = detailKey(run, rpm);
  const known = useShown.getState().details.get(key);
  if (known && known.is !== 'failed') return;
  putDetail(key, { is: 'following', done: 0 });
  const job: SpeedJob = { engine: run.subject.engine, path: run.subject.path, rpm, keep: 'waves' };
  const wanted = () => useShown.getState().details.has(key);
  void ownCrew().ahead(
    [job],
    (_, answer) => putDetail(key, 'failed' in answer ? { is: 'failed', why: answer.failed } : { is: 'there', answer }),
    () => !wanted(),
    (_, done) => wanted() && putDetail(key, { is: 'following', done }),
  );
}

/** The page is left: what is under way ends, and no idle worker stays. Answers stay. */
export function leave(): void {
  if (useShown.getState().waiting > 0) halt();
  crew?.end();
  crew = null;
  // What was not there yet would never be told.
  useShown.setState(({ details }) => ({
    halted: false,
    details: new Map([...details].filter(([, { is }]) => is !== 'following')),
  }));
}

/** Where another design comes up, and for tests: as when nothing was ever asked. */
export function forget(): void {
  drop();
  known.clear();
  crew?.end();
  crew = null;
  useShown.setState(NOTHING);
}

whenOpened(forget);
