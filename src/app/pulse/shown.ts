/**
 * What the page shows: the rig that was asked for last and how its run goes, and the last picture there was, which stays until
 * the next one has something to show. Never saved, never undone; kept while the tab lives, so that closing the page loses nothing.
 */
import { create } from 'zustand';
import { MAX_PROBLEMS } from '../../../shared/design/limits';
import { DesignError, type Refusal } from '../../../shared/design/refusal';
import type { RigRun } from '../../pulse/report';
import { readRig } from '../../pulse/rig/read';
import type { Rig } from '../../pulse/rig/types';
import { createFollower, type Follower } from './follower';
import type { Answer, Ending, Progress } from './messages';
import type { Quantity } from './quantities';
import { rowsOf } from './sample';

export type Asked = { readonly name: string; readonly text: string };

export type Standing =
  | { readonly is: 'nothing' }
  | { readonly is: 'starting' }
  | { readonly is: 'running'; readonly progress: Progress | null; readonly ending: boolean }
  | { readonly is: 'ended' }
  | { readonly is: 'failed'; readonly why: string };

/** A picture, complete or not, and the rig that it is of. `ending` is null while it still grows. */
export type Seen = {
  readonly name: string;
  readonly rig: Rig;
  readonly run: RigRun;
  readonly rows: number;
  readonly progress: Progress;
  readonly ending: Ending | null;
  /** To where time is drawn, s: the duration, or as far as a run came that is over. */
  readonly until: number;
};

/** Where the picture is read: which pipe, m from its start, s. */
export type Cursor = { readonly pipe: number; readonly x: number; readonly time: number };

/** Why the last choice is not shown; where it was read but refused, every place with its remedy. */
export type Trouble = { readonly title: string; readonly refusals: readonly Refusal[] };

export type Shown = {
  /** The last good one: only a rig takes the place of another. */
  readonly asked: Asked | null;
  readonly standing: Standing;
  /** Whatever runs goes on beside it. */
  readonly trouble: Trouble | null;
  /** Of the one asked for. */
  readonly rig: Rig | null;
  readonly seen: Seen | null;
  readonly quantity: Quantity;
  /** Shares of the whole range that the colours span: 1, or less to see weak waves beside strong ones. */
  readonly span: number;
  readonly cursor: Cursor | null;
};

export const NOTHING: Shown = {
  asked: null,
  standing: { is: 'nothing' },
  trouble: null,
  rig: null,
  seen: null,
  quantity: 'pressure',
  span: 1,
  cursor: null,
};

export const useShown = create<Shown>()(() => NOTHING);

/** Rows of the picture: about as many as it is high on screen. */
export const PICTURE_ROWS = 480;

/** What is shown once the worker has answered; null: it was ended by force and hands nothing over. */
export function afterAnswer(now: Shown, answer: Answer | null): Shown {
  if (answer === null) return afterForce(now);
  if ('begun' in answer) return { ...now, standing: { is: 'running', progress: null, ending: ending(now) } };
  if ('failed' in answer) return afterFailure(now, answer.failed);
  const standing: Standing =
    'run' in answer ? { is: 'ended' } : { is: 'running', progress: answer.progress, ending: ending(now) };
  const run = 'run' in answer ? answer.run : answer.soFar;
  if (!run || !now.rig) return { ...now, standing };
  const seen: Seen = {
    name: now.asked?.name ?? '',
    rig: now.rig,
    run,
    rows: rowsOf(run),
    progress: answer.progress,
    ending: 'run' in answer ? answer.ending : null,
    until: untilOf(now.rig, run, 'run' in answer ? answer.ending : null),
  };
  return { ...now, standing, seen, cursor: now.seen?.rig === now.rig ? now.cursor : null };
}

/** Of a run that was ended early the rest would be empty, and what there is a thin line. */
function untilOf({ duration }: Rig, { picture }: RigRun, over: Ending | null): number {
  if (!over || over.how === 'whole') return duration;
  return picture?.times.at(-1) || duration;
}

const over = (seen: Seen): Seen =>
  seen.ending ? seen : { ...seen, ending: { how: 'ended' }, until: untilOf(seen.rig, seen.run, { how: 'ended' }) };

const ending = ({ standing }: Shown): boolean => standing.is === 'running' && standing.ending;

/** What was there of this rig is all there will be. */
function afterForce(now: Shown): Shown {
  return { ...now, seen: now.seen && over(now.seen), standing: { is: 'ended' } };
}

/** A run that broke off leaves what it had: said to be no more than that. */
function afterFailure(now: Shown, why: string): Shown {
  return { ...afterForce(now), standing: { is: 'failed', why } };
}

let follower: Follower | null = null;

/** @param make @param read replaced in tests */
export function followRig(asked: Asked, make: typeof createFollower = createFollower, read = readRig): void {
  let rig: Rig;
  // Before anything is let go of: a file that is no rig ends no run.
  try {
    rig = read(asked.text);
  } catch (error) {
    if (!(error instanceof DesignError)) throw error;
    useShown.setState({ trouble: refusal(asked.name, error.problems) });
    return;
  }
  follower ??= make((answer) => useShown.setState(afterAnswer(useShown.getState(), answer)));
  const { seen } = useShown.getState();
  // Of a run that another takes the place of, nothing more comes.
  useShown.setState({ asked, rig, seen: seen && over(seen), standing: { is: 'starting' }, trouble: null });
  follower.follow(rig, PICTURE_ROWS);
}

function refusal(name: string, refusals: readonly Refusal[]): Trouble {
  const count = refusals.length;
  const places = count === 1 ? 'one place to mend' : `${count} places to mend`;
  // There may be more: only so many are listed.
  const said = count < MAX_PROBLEMS ? places : `these are the first ${count} places to mend`;
  return { title: `${name} cannot be run: ${said}. Mend it and open it again.`, refusals };
}

/** Ends the run; what there is stays. */
export function endRun(): void {
  const { standing } = useShown.getState();
  if (standing.is === 'running') useShown.setState({ standing: { ...standing, ending: true } });
  follower?.end();
}

export const refuse = (why: string): void => useShown.setState({ trouble: { title: why, refusals: [] } });
/** What was refused is known: the note on it goes, all else stays. */
export const dismiss = (): void => useShown.setState({ trouble: null });
export const chooseQuantity = (quantity: Quantity): void => useShown.setState({ quantity });
export const chooseSpan = (span: number): void => useShown.setState({ span });
export const pointAt = (cursor: Cursor | null): void => useShown.setState({ cursor });

/** For tests: as when nothing was ever asked. */
export function forget(): void {
  follower?.drop();
  follower = null;
  useShown.setState(NOTHING);
}
