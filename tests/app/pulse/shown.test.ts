/** What the page shows while rigs are asked for, run, ended, refused and replaced: nothing seen is lost, nothing old comes back. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import { createFollower, type Follower, GRACE } from '../../../src/app/pulse/follower';
import type { Answer, FollowRequest } from '../../../src/app/pulse/messages';
import { staysWords } from '../../../src/app/pulse/StandingLine';
import { dismiss, endRun, followRig, forget, pointAt, useShown } from '../../../src/app/pulse/shown';
import { beyondWords, facts, leftWords, powerOf, reachWords } from '../../../src/app/pulse/words';
import type { Rig } from '../../../src/pulse/rig/types';
import { fakeWorkers } from '../fakeWorkers';
import { RIG, runUntil } from './rigs';

const progress = (time: number) => ({ time, duration: RIG.duration, spent: 0.5 });
const whole: Answer = { ending: { how: 'whole' }, progress: progress(0.01), run: runUntil(0.01) };

let workers: ReturnType<typeof fakeWorkers<FollowRequest>>;
const make = (say: (answer: Answer | null) => void): Follower => createFollower(say, workers.make);
/** Every text is a rig, one of its own, but two that have problems. */
const read = (text: string): Rig => {
  if (text === 'bad') throw new DesignError(PROBLEMS);
  if (text === 'worse') throw new DesignError(Array.from({ length: 130 }, () => PROBLEMS[0]!));
  return { ...RIG };
};
const PROBLEMS = [
  { path: 'courant', found: '1.4', allowed: 'above 0, at most 1' },
  { path: 'pipes/a/length', found: '-1', allowed: 'above 0' },
];
const follow = (name: string) => followRig({ name, text: name }, make, read);
/** As the newest worker would answer the newest request. */
const answer = (of: Answer, number = workers.asked.at(-1)!.number) => workers.reply({ number, answer: of });
const now = () => useShown.getState();

beforeEach(() => {
  workers = fakeWorkers();
  vi.useFakeTimers();
});
afterEach(() => {
  forget();
  vi.useRealTimers();
});

describe('a run', () => {
  it('is read, grows, and is whole', () => {
    follow('tube');
    expect(workers.asked).toEqual([{ number: 1, rig: RIG, pictureRows: 480 }]);
    expect(now().standing).toEqual({ is: 'starting' });
    answer({ begun: true });
    expect(now().standing).toMatchObject({ is: 'running', progress: null });
    answer({ progress: progress(0.002), soFar: null });
    expect(now().standing).toMatchObject({ is: 'running', progress: { time: 0.002 } });
    expect(now().seen).toBe(null);
    answer({ progress: progress(0.004), soFar: runUntil(0.004) });
    expect(now().seen).toMatchObject({ name: 'tube', rows: 5, ending: null, until: RIG.duration });
    answer(whole);
    expect(now().seen).toMatchObject({ rows: 11, ending: { how: 'whole' }, until: RIG.duration });
    expect(now().standing).toEqual({ is: 'ended' });
    expect(reachWords(now().seen!)).toBe(null);
  });

  it('ended by hand keeps what the worker hands over and says until when', () => {
    follow('tube');
    answer({ begun: true });
    endRun();
    expect(workers.asked.at(-1)).toEqual({ number: 1, end: true });
    expect(now().standing).toMatchObject({ is: 'running', ending: true });
    // Told on its way: it does not look as if it were not heard.
    answer({ progress: progress(0.003), soFar: null });
    expect(now().standing).toMatchObject({ ending: true });
    answer({ ending: { how: 'ended' }, progress: progress(0.004), run: runUntil(0.004) });
    expect(now().seen).toMatchObject({ rows: 5, ending: { how: 'ended' }, until: 0.004 });
    expect(reachWords(now().seen!)).toBe('Ended at 4.00 of 10.00 ms; what there is until then stays.');
    vi.advanceTimersByTime(2 * GRACE);
    expect(workers.workers).toMatchObject([{ ended: false }]);
  });

  it('that does not hear is ended by force, and its last picture stays', () => {
    follow('tube');
    answer({ begun: true });
    answer({ progress: progress(0.003), soFar: runUntil(0.003) });
    endRun();
    vi.advanceTimersByTime(GRACE - 1);
    expect(workers.workers[0]!.ended).toBe(false);
    vi.advanceTimersByTime(2);
    expect(workers.workers[0]!.ended).toBe(true);
    expect(now().standing).toEqual({ is: 'ended' });
    expect(now().seen).toMatchObject({ rows: 4, ending: { how: 'ended' } });
    answer(whole);
    expect(now().seen).toMatchObject({ rows: 4 });
  });

  it('that stops where the flow cannot be followed says why, and shows what came before', () => {
    follow('tube');
    answer({ begun: true });
    const why = 'The flow could not be followed beyond 0.004 s.';
    answer({ ending: { how: 'stopped', why }, progress: progress(0.004), run: runUntil(0.004) });
    expect(now().seen!.rows).toBe(5);
    expect(reachWords(now().seen!)).toBe(`${why} What there is until 4.00 of 10.00 ms stays.`);
  });

  it('whose worker breaks says so, keeps its last picture, and the next one gets another worker', () => {
    follow('tube');
    answer({ begun: true });
    answer({ progress: progress(0.003), soFar: runUntil(0.003) });
    workers.workers[0]!.onerror!.call(null as never, { message: 'out of memory' } as ErrorEvent);
    expect(now().standing).toEqual({ is: 'failed', why: 'out of memory' });
    expect(now().seen).toMatchObject({ rows: 4, ending: { how: 'ended' } });
    follow('again');
    expect(workers.workers).toHaveLength(2);
  });
});

describe('the next rig', () => {
  it('leaves the last picture up until it has one of its own', () => {
    follow('first');
    answer({ begun: true });
    answer(whole);
    pointAt({ pipe: 1, x: 0.2, time: 0.005 });
    follow('second');
    answer({ begun: true });
    expect(now().seen!.name).toBe('first');
    expect(now().cursor).not.toBe(null);
    answer({ progress: progress(0.001), soFar: runUntil(0.001) });
    expect(now().seen!.name).toBe('second');
    expect(now().cursor).toBe(null);
    pointAt({ pipe: 0, x: 0.1, time: 0.001 });
    answer({ progress: progress(0.002), soFar: runUntil(0.002) });
    expect(now().cursor).toMatchObject({ x: 0.1 });
  });

  it('ends the one before: nothing that is still on its way is taken', () => {
    follow('first');
    answer({ begun: true });
    const [first] = workers.workers;
    follow('second');
    expect(first!.ended).toBe(true);
    first!.onmessage!.call(null as never, { data: { number: 1, answer: whole } } as MessageEvent);
    expect(now()).toMatchObject({ seen: null, standing: { is: 'starting' } });
    // Nor under an older number from a worker that stays.
    answer(whole, 1);
    expect(now().seen).toBe(null);
  });

  it('refused, says every place and what was found there; the last picture stays, and so does what runs again', () => {
    follow('good');
    answer({ begun: true });
    answer(whole);
    follow('bad');
    const title = 'bad cannot be run: 2 places to mend. Mend it and open it again.';
    expect(now().trouble).toEqual({ title, refusals: PROBLEMS });
    expect(now()).toMatchObject({
      asked: { name: 'good' },
      seen: { name: 'good', rows: 11 },
      standing: { is: 'ended' },
    });
    expect(staysWords(now())).toBe('The picture below is still that of good.');
    dismiss();
    expect(now()).toMatchObject({ trouble: null, asked: { name: 'good' }, seen: { name: 'good' } });
    // The worker is free: the next rig needs no other.
    follow('mended');
    expect(workers.workers).toHaveLength(1);
    expect(now().trouble).toBe(null);
  });

  it('refused while another runs, ends nothing of it', () => {
    follow('good');
    answer({ begun: true });
    answer({ progress: progress(0.003), soFar: runUntil(0.003) });
    follow('bad');
    expect(workers.workers).toMatchObject([{ ended: false }]);
    expect(workers.asked).toHaveLength(1);
    expect(now().standing).toMatchObject({ is: 'running', progress: { time: 0.003 } });
    expect(now().seen).toMatchObject({ rows: 4, ending: null });
    expect(staysWords(now())).toBe('good goes on.');
    answer(whole);
    expect(now()).toMatchObject({ asked: { name: 'good' }, seen: { rows: 11, ending: { how: 'whole' } } });
    expect(now().trouble!.refusals).toEqual(PROBLEMS);
  });

  it('refused in more places than are listed, does not pretend that these are all', () => {
    follow('worse');
    expect(now().trouble!.refusals).toHaveLength(100);
    expect(now().trouble!.title).toMatch(/^worse cannot be run: these are the first 100 places to mend\./);
  });

  it('refused as the very first, leaves the choice of rigs as it was', () => {
    follow('bad');
    expect(now()).toMatchObject({ asked: null, standing: { is: 'nothing' }, seen: null });
    expect(workers.workers).toHaveLength(0);
  });
});

it('the account says what was kept and how fast, in numbers that can be read', () => {
  const said = facts({ run: runUntil(0.01), progress: progress(0.01) });
  const of = (name: string) => said.find((fact) => fact.name === name);
  expect(of('Mass drift')).toMatchObject({ value: '3.1 × 10', power: '−16' });
  expect(of('Energy drift')).toMatchObject({ value: '−2.0 × 10', power: '−15' });
  expect(of('Took')).toMatchObject({ value: '0.50', unit: 's' });
  expect(of('Steps')).toMatchObject({ value: '100' });
  expect(powerOf(0)).toEqual({ value: '0', power: null });
  // 1500 cell updates in half a second.
  expect(of('Pace')).toMatchObject({ value: '0.00' });
});

it('gas beyond its table of heats is said, where, when and what that means', () => {
  const beyond = { pipe: 'a', x: 0.25, time: 0.004, temperature: 4312, since: 0.003 };
  expect(beyondWords({ beyond })).toBe(
    'Beyond the table of heats, 100 to 4000 K: gas of 4312 K in pipe "a", 0.25 m from its start, at 0.004 s (first seen beyond at 0.003 s); what came of it is not to be trusted.',
  );
  expect(beyondWords(runUntil(0.01))).toBe(null);
});

it('how long is left is said once it can be told, and why where it is long', () => {
  expect(leftWords({ time: 0.005, duration: 0.01, spent: 0.5 }, RIG)).toBe(null);
  expect(leftWords({ time: 0.005, duration: 0.01, spent: 20 }, RIG)).toEqual({ left: 'about 20 s left', why: null });
  expect(leftWords({ time: 1e-5, duration: 0.01, spent: 20 }, RIG)).toEqual({
    left: 'about 6 h left',
    why: expect.stringContaining('At this pace about 6 h to go.'),
  });
});
