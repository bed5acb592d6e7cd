/** The engine fitted to a measured curve: one step of history, stopped without trace, refused in words. The answers are invented. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/types';
import { documents } from '../../../src/app/document';
import { calibrationWords } from '../../../src/app/forecast/calibration';
import { NO_FIT, runFit, stopFit, useFit } from '../../../src/app/forecast/engine/fit';
import { history } from '../../../src/app/history';
import type { Team } from '../../../src/pulse/forecast/job';
import { titled } from '../designs';
import { answerOf, subject } from './fixtures';

const POINTS = [2000, 3000, 4000, 5000].map((rpm) => [rpm, 60] as const);
const design = (points: readonly (readonly [number, number])[] | null = POINTS): Design => ({
  ...titled('Fit'),
  engine: { cylinders: 2, bore: 80, stroke: 80, ...(points && { baseline: { points } }) },
});
/** Torque goes with the flow alone, by a power of it: above 1 it takes more than one step. */
const teamOf = (power: number, usual = 64): Team => ({
  async follow(jobs, tell, stopped = () => false) {
    for (const [k, { engine, rpm }] of jobs.entries()) {
      if (stopped()) return;
      tell(k, answerOf(rpm, { torque: usual * engine.flowFactor ** power, fmep: 0 }));
      await Promise.resolve();
    }
  },
});
const team = teamOf(1);
const base = (kind: 'cast' | 'header') => subject(kind);
const byBore = (kind: 'cast' | 'header', { engine }: Design) => subject(kind, engine!.bore! / 100);
const now = () => useFit.getState();
const fittedNow = () => documents.store.getState().settled?.engine?.fitted;

beforeEach(() => {
  stopFit();
  useFit.setState(NO_FIT);
  documents.open(design(), 'fit.evenrun.json');
});

describe('a fit', () => {
  it('becomes one step, says what it came to, and is said to be in force', async () => {
    await runFit(design(), base, team);
    expect(fittedNow()!.flow).toBeGreaterThan(0.92);
    expect(fittedNow()!.flow).toBeLessThan(0.96);
    expect(now().said).toMatchObject({ fails: false });
    expect(now().said!.text).toMatch(/^Fitted to 4 points/);
    expect(history.store.getState().past.map(({ label }) => label)).toEqual(['Fit the engine to the measured curve']);
    const { engine } = documents.store.getState().settled!;
    expect(calibrationWords(engine, now().last)).toMatch(
      /^Calibrated on 4 points, off by 0\.\d\u00a0N\u00a0m on average$/,
    );
    // With other factors, typed or undone to, what was left off is not known.
    expect(calibrationWords({ ...engine, fitted: { flow: 1.1 } }, now().last)).toBe('Calibrated on 4 points');
    expect(calibrationWords({})).toBe('Not calibrated');
  });

  it('that is stopped changes nothing', async () => {
    const stopping: Team = {
      follow: (jobs, tell, stopped) =>
        team.follow(
          jobs,
          (k, answer) => {
            tell(k, answer);
            stopFit();
          },
          stopped,
        ),
    };
    await runFit(design(), base, stopping);
    expect(fittedNow()).toBe(undefined);
    expect(now()).toEqual(NO_FIT);
  });

  it('that failed says so, and changes nothing', async () => {
    // Nothing moves this torque, and it is 30 % off at both sides.
    const stiff: Team = {
      async follow(jobs, tell) {
        for (const [k, { rpm }] of jobs.entries())
          tell(k, answerOf(rpm, { torque: rpm === 2000 || rpm === 5000 ? 78 : 42, fmep: 0 }));
      },
    };
    await runFit(design(), base, stiff);
    expect(fittedNow()).toBe(undefined);
    expect(now().said).toMatchObject({ fails: true });
    expect(now().said!.text).toMatch(/^Not fitted to 4 points: no factors within their bounds are nearer/);
    expect(history.store.getState().past).toEqual([]);
  });

  it('without a curve says what is wanted', async () => {
    await runFit(design(null), base, team);
    expect(now().said).toMatchObject({ fails: true });
    expect(now().said!.text).toContain('engine/baseline');
  });

  it('of a design that was left meanwhile is not put into another', async () => {
    const fit = runFit(design(), base, team);
    documents.open(design(), 'another.evenrun.json');
    expect(now()).toEqual(NO_FIT);
    await fit;
    expect(fittedNow()).toBe(undefined);
    expect(now()).toEqual(NO_FIT);
  });

  it('is not put onto an engine, pipes or a curve that were edited while it went on, and says so', async () => {
    const edits: readonly ((d: Design) => Design)[] = [
      (d) => ({ ...d, engine: { ...d.engine, bore: 90 } }),
      (d) => ({
        ...d,
        engine: { ...d.engine, baseline: { points: POINTS.map(([rpm, torque]) => [rpm, torque / 2]) } },
      }),
      (d) => ({ ...d, engine: { cylinders: 2, bore: 80, stroke: 80 } }),
    ];
    for (const edit of edits) {
      documents.open(design(), 'fit.evenrun.json');
      const fit = runFit(design(), byBore, team);
      documents.apply(edit(design()), 'Edit');
      await fit;
      expect(fittedNow()).toBe(undefined);
      expect(now().said).toMatchObject({ fails: true });
      expect(now().said!.text).toMatch(/edited since/);
      expect(now().last).toBe(null);
    }
  });

  it('is taken where what was edited meanwhile is nothing to it', async () => {
    const fit = runFit(design(), byBore, team);
    documents.apply({ ...design(), title: 'Other', engine: { ...design().engine, fitted: { flow: 1.2 } } }, 'Edit');
    await fit;
    expect(fittedNow()!.flow).toBeLessThan(1);
  });

  it('stopped after its first curves offers the best so far, which is taken by hand alone', async () => {
    const until = (last: number): Team => {
      let told = 0;
      return {
        follow: (jobs, tell, stopped) =>
          teamOf(4, 100).follow(
            jobs,
            (k, answer) => {
              tell(k, answer);
              told += 1;
              if (told === last) stopFit();
            },
            stopped,
          ),
      };
    };
    // Three curves for the slopes, one that is better, and into the next.
    await runFit(design(), byBore, until(4 * POINTS.length + 1));
    expect(fittedNow()).toBe(undefined);
    expect(now().progress).toBe(null);
    expect(now().said!.text).toMatch(/^Stopped; the best so far/);
    now().unfinished!.take();
    expect(fittedNow()!.flow).toBeLessThan(1);
    expect(now().unfinished).toBe(null);
    // Of an engine that is edited in between it is not taken.
    documents.open(design(), 'fit.evenrun.json');
    await runFit(design(), byBore, until(4 * POINTS.length + 1));
    documents.apply({ ...design(), engine: { ...design().engine, bore: 90 } }, 'Edit');
    now().unfinished!.take();
    expect(fittedNow()).toBe(undefined);
    expect(now().said!.text).toMatch(/edited since/);
  });
});
