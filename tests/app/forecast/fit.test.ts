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
/** Torque goes with the flow alone. */
const team: Team = {
  async follow(jobs, tell, stopped = () => false) {
    for (const [k, { engine, rpm }] of jobs.entries()) {
      if (stopped()) return;
      tell(k, answerOf(rpm, { torque: 64 * engine.flowFactor, fmep: 0 }));
      await Promise.resolve();
    }
  },
};
const base = (kind: 'cast' | 'header') => subject(kind);
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

  it('without a curve says what is wanted', async () => {
    await runFit(design(null), base, team);
    expect(now().said).toMatchObject({ fails: true });
    expect(now().said!.text).toContain('engine/baseline');
  });

  it('of a design that was left meanwhile is not put into another', async () => {
    const fit = runFit(design(), base, team);
    documents.open(design(), 'another.evenrun.json');
    await fit;
    expect(fittedNow()).toBe(undefined);
  });
});
