/** Runs that are chosen, followed, edited under, stopped and looked at closely: no answer is lost or followed twice, none of an older engine comes back. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { documents } from '../../../src/app/document';
import { pickInPair } from '../../../src/app/forecast/curve/pair';
import { answerAt, type RunKind } from '../../../src/app/forecast/runs';
import {
  choose,
  detailOf,
  followMissing,
  followPicked,
  forget,
  halt,
  layBeside,
  leave,
  lookAt,
  pick,
  standOn,
  staysAs,
  useShown,
} from '../../../src/app/forecast/shown';
import type { Crew } from '../../../src/app/forecast/team/crew';
import type { SpeedJob } from '../../../src/pulse/forecast/job';
import { titled } from '../designs';
import { answerOf, subject } from './fixtures';

type Asked = {
  readonly jobs: readonly SpeedJob[];
  readonly tell: Parameters<Crew['follow']>[1];
  readonly stopped: () => boolean;
  readonly first: boolean;
};

const SPEEDS = [2000, 3000, 4000, 5000];
let asked: Asked[];
let ends = 0;
const crew = (): Crew => {
  const take =
    (first: boolean): Crew['follow'] =>
    (jobs, tell, stopped = () => false) => {
      asked.push({ jobs, tell, stopped, first });
      return Promise.resolve();
    };
  return { follow: take(false), ahead: take(true), end: () => void ends++ };
};
/** The design's bore is its length of pipe, so that an edit makes another run; without a bore there is no engine. */
const design = (bore = 80, title = 'A'): Design => ({ ...titled(title), engine: { bore } });
const tellAll = ({ jobs, tell }: Asked, torque?: number) =>
  jobs.forEach(({ rpm }, k) => {
    tell(k, answerOf(rpm, torque === undefined ? {} : { torque }));
  });
const now = () => useShown.getState();
const toldOf = (kind: RunKind) =>
  now()
    .runs.get(kind)!
    .told.map((t) => t?.rpm ?? null);

beforeEach(() => {
  forget();
  asked = [];
  ends = 0;
  standOn({
    crew,
    speedsOf: () => SPEEDS,
    subjectOf(kind, of) {
      const bore = of.engine?.bore;
      if (bore === undefined || kind === 'sketch')
        throw new DesignError([{ path: 'exhaust/sketch', found: 'nothing', allowed: 'lengths and bores' }]);
      return subject(kind, bore / 100 + ({ cast: 0.1, equal: 0.2 }[kind as string] ?? 0));
    },
  });
});
afterEach(forget);

describe('runs', () => {
  it('are followed together, what tells most of each first, and told as they come', () => {
    lookAt(design());
    followMissing();
    expect(asked).toHaveLength(1);
    const { jobs, tell } = asked[0]!;
    const order = [5000, 5000, 2000, 2000, 3000, 3000, 4000, 4000];
    // All of them coarse first, so that there is a curve; then fine.
    expect(jobs.map(({ rpm }) => rpm)).toEqual([...order, ...order]);
    expect(jobs.map(({ cell }) => cell)).toEqual([...order.map(() => 0.03), ...order.map(() => undefined)]);
    tell(0, answerOf(5000, { torque: 90 }));
    expect(toldOf('header')).toEqual([null, null, null, 5000]);
    expect(now().waiting).toBe(15);
    expect(now().runs.get('header')!.final).toEqual([false, false, false, false]);
    tell(8, answerOf(5000, { torque: 91 }));
    expect(now().runs.get('header')!.final).toEqual([false, false, false, true]);
    // One that comes late takes no better one's place.
    tell(0, answerOf(5000, { torque: 90 }));
    expect(answerAt(now().runs.get('header')!, 5000)!.torque).toBe(91);
    followMissing();
    expect(asked).toHaveLength(1);
  });

  it('stay through edits that do not touch them, and go with those that do', () => {
    lookAt(design());
    followMissing();
    tellAll(asked[0]!);
    lookAt(design(80, 'B'));
    followMissing();
    expect(asked).toHaveLength(1);
    expect(toldOf('cast')).toEqual(SPEEDS);
    lookAt(design(84));
    expect(toldOf('cast')).toEqual([null, null, null, null]);
    followMissing();
    expect(asked).toHaveLength(2);
  });

  it('of an engine before are told no more, and their workers know', () => {
    lookAt(design());
    followMissing();
    lookAt(design(84));
    expect(asked[0]!.stopped()).toBe(true);
    asked[0]!.tell(0, answerOf(2000));
    expect(toldOf('header')).toEqual([null, null, null, null]);
    expect(now().waiting).toBe(0);
  });

  it('stop by hand and go on with what is missing alone', () => {
    lookAt(design());
    followMissing();
    asked[0]!.tell(0, answerOf(5000));
    asked[0]!.tell(8, answerOf(5000));
    halt();
    expect(asked[0]!.stopped()).toBe(true);
    expect(now()).toMatchObject({ waiting: 0, halted: true });
    followMissing();
    expect(asked[1]!.jobs).toHaveLength(14);
    expect(now().halted).toBe(false);
  });

  it('are added and left out; what cannot be followed says why, and the rest goes on', () => {
    const d = design();
    lookAt(d);
    followMissing();
    tellAll(asked[0]!);
    choose('equal', true, d);
    expect(asked[1]!.jobs).toHaveLength(8);
    choose('sketch', true, d);
    expect(now().barred.get('sketch')).toMatchObject([{ path: 'exhaust/sketch' }]);
    expect(asked[1]!.stopped()).toBe(false);
    choose('equal', false, d);
    expect(asked[1]!.stopped()).toBe(true);
    expect([...now().runs.keys()]).toEqual(['header', 'cast']);
    expect(toldOf('header')).toEqual(SPEEDS);
  });

  it('of pipes that are barred in flight and mended otherwise are never told of the new ones', () => {
    lookAt(design());
    followMissing();
    const [before] = asked;
    lookAt({ ...design(), engine: {} });
    expect(before!.stopped()).toBe(true);
    expect(now().waiting).toBe(0);
    lookAt(design(90));
    followMissing();
    before!.tell(0, answerOf(5000, { torque: 1 }));
    expect(toldOf('header')).toEqual([null, null, null, null]);
    tellAll(asked[1]!, 70);
    expect(answerAt(now().runs.get('header')!, 5000)!.torque).toBe(70);
  });

  it('left out and chosen again, barred and mended, edited and undone, come back with all that was told', () => {
    const d = design();
    lookAt(d);
    followMissing();
    tellAll(asked[0]!);
    choose('cast', false, d);
    choose('cast', true, d);
    expect(toldOf('cast')).toEqual(SPEEDS);
    lookAt({ ...d, engine: {} });
    lookAt(d);
    expect(toldOf('header')).toEqual(SPEEDS);
    lookAt(design(84));
    lookAt(d);
    followMissing();
    expect(toldOf('header')).toEqual(SPEEDS);
    expect(asked).toHaveLength(1);
  });

  it('left out half followed and chosen again go on with what is missing', () => {
    const d = design();
    lookAt(d);
    followMissing();
    asked[0]!.tell(1, answerOf(5000));
    asked[0]!.tell(9, answerOf(5000));
    choose('cast', false, d);
    choose('cast', true, d);
    expect(toldOf('cast')).toEqual([null, null, null, 5000]);
    tellAll(asked.at(-1)!);
    expect(toldOf('cast')).toEqual(SPEEDS);
  });

  it('of the same pipes are followed once', () => {
    lookAt(design());
    choose('arrangement', true, design());
    expect(asked[0]!.jobs).toHaveLength(16);
    tellAll(asked[0]!);
    expect(toldOf('arrangement')).toEqual(SPEEDS);
    expect(now().waiting).toBe(0);
  });

  it('are forgotten where another design is opened, and the crew goes', () => {
    lookAt(design());
    followMissing();
    tellAll(asked[0]!);
    pick({ kind: 'header', rpm: 3000 });
    documents.open(design(), 'another.evenrun.json');
    expect(ends).toBe(1);
    expect(now()).toMatchObject({ of: null, picked: null, waiting: 0 });
    expect(now().details.size).toBe(0);
  });

  it('stay where the page is left, though no worker does; what was not there yet is asked for anew', () => {
    lookAt(design());
    followMissing();
    asked[0]!.tell(0, answerOf(5000));
    pick({ kind: 'header', rpm: 3000 });
    leave();
    expect(ends).toBe(1);
    expect(asked[0]!.stopped()).toBe(true);
    expect(toldOf('header')).toEqual([null, null, null, 5000]);
    pick({ kind: 'header', rpm: 3000 });
    expect(asked).toHaveLength(3);
  });
});

describe('a speed looked at closely', () => {
  it('is followed with its waves before all that waits, once', () => {
    lookAt(design());
    followMissing();
    pick({ kind: 'header', rpm: 3000 });
    expect(asked.at(-1)).toMatchObject({ first: true, jobs: [{ rpm: 3000, keep: 'waves' }] });
    expect(detailOf(now(), now().picked!)).toEqual({ is: 'following', done: 0 });
    tellAll(asked.at(-1)!);
    expect(detailOf(now(), now().picked!)).toMatchObject({ is: 'there' });
    pick({ kind: 'header', rpm: 3000 });
    expect(asked).toHaveLength(2);
  });

  it('has another run laid beside it at the same speed', () => {
    lookAt(design());
    pick({ kind: 'header', rpm: 3000 });
    layBeside('cast');
    expect(asked.map(({ jobs }) => jobs[0]!.path.pipes[0]!.length)).toEqual([0.8, 0.9]);
    pick({ kind: 'header', rpm: 4000 });
    expect(asked).toHaveLength(4);
  });

  it('has the other of the two that are held beside each other with it, until something else is said', () => {
    lookAt(design());
    pickInPair({ kind: 'header', rpm: 3000 });
    expect(now().beside).toBe('cast');
    expect(asked.map(({ jobs }) => jobs[0]!.path.pipes[0]!.length)).toEqual([0.8, 0.9]);
    layBeside('alone');
    pickInPair({ kind: 'header', rpm: 4000 });
    expect(now().beside).toBe('alone');
    expect(asked).toHaveLength(3);
  });

  it('of a header that is changed since, or left before it was there, is followed again where it is looked at', () => {
    lookAt(design());
    pick({ kind: 'header', rpm: 3000 });
    layBeside('cast');
    tellAll(asked[0]!);
    tellAll(asked[1]!);
    followPicked();
    expect(asked).toHaveLength(2);
    leave();
    lookAt(design(110));
    // Nothing is known of this header: a face drawn of it would be blank.
    expect(now().picked).toEqual({ kind: 'header', rpm: 3000 });
    expect(detailOf(now(), now().picked!)).toBe(null);
    followPicked();
    expect(asked.slice(2).map(({ jobs: [job], first }) => [job!.rpm, job!.path.pipes[0]!.length, first])).toEqual([
      [3000, expect.closeTo(1.1, 9), true],
      [3000, expect.closeTo(1.2, 9), true],
    ]);
    expect(detailOf(now(), now().picked!)).toEqual({ is: 'following', done: 0 });
    leave();
    expect(detailOf(now(), now().picked!)).toBe(null);
    followPicked();
    expect(asked).toHaveLength(6);
    // What failed is left alone until somebody asks.
    asked[4]!.tell(0, { rpm: 3000, failed: 'no' });
    followPicked();
    expect(asked).toHaveLength(6);
    // And back: what was known of the first header is there still.
    lookAt(design());
    followPicked();
    expect(asked).toHaveLength(6);
    expect(detailOf(now(), now().picked!)).toMatchObject({ is: 'there' });
  });

  it('that failed is tried again, and is let go of where its speed is no more', () => {
    lookAt(design());
    pick({ kind: 'header', rpm: 3000 });
    asked[0]!.tell(0, { rpm: 3000, failed: 'no' });
    expect(detailOf(now(), now().picked!)).toEqual({ is: 'failed', why: 'no' });
    pick({ kind: 'header', rpm: 3000 });
    expect(asked).toHaveLength(2);
    lookAt({ ...design(), engine: {} });
    expect(now().picked).toBe(null);
  });

  it('stays what it was through edits that are nothing to its pipes, and not through others', () => {
    const stays = staysAs('header', subject('header', 0.8));
    expect(stays(design(80, 'B'))).toBe(true);
    expect(stays(design(84))).toBe(false);
    expect(stays({ ...design(), engine: {} })).toBe(false);
  });

  it('keeps a few only', () => {
    lookAt(design());
    for (const rpm of SPEEDS) for (const kind of ['header', 'cast'] as const) pick({ kind, rpm });
    lookAt(design(84));
    pick({ kind: 'header', rpm: 2000 });
    expect(now().details.size).toBe(8);
    expect(asked[0]!.stopped()).toBe(true);
  });
});
