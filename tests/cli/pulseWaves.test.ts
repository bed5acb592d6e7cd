/** What `pulse DESIGN` tells of the waves where one speed alone is asked for, with gas that is made up. */
import { describe, expect, test } from 'vitest';
import { firesAfter } from '../../src/pulse/forecast/gasExchange';
import type { RunningSpeed, SpeedJob } from '../../src/pulse/forecast/job';
import { answerOf, pictureOf, traceOf } from '../pulse/forecast/invented';
import { designBench } from './pulseBench';

const { ask } = designBench();

const near = (angle: number) => angle > -25 && angle < 20;

/** Pressure of the casting's first pipe is high in the overlap, of no wave that came from anywhere; all else is at rest. */
function started(kept: (string | undefined)[]) {
  return (job: SpeedJob): RunningSpeed => {
    kept.push(job.keep);
    const { engine, path, rpm } = job;
    const high = path.title === 'cast manifold' ? 30_000 : 0;
    const first = path.valves.find(({ cylinder }) => cylinder === 1)!.pipe;
    const fires = firesAfter(engine, 1);
    const at = (pipe: string, _: number, angle: number) => ({
      pressure: 101_325 + (pipe === first && near(angle - fires) ? high : 0),
    });
    const traces = [
      traceOf(1, { exhaustPort: (angle) => 100_000 + (near(angle) ? high : 0), intakePort: () => 95_000 }),
    ];
    const answer = job.keep === 'waves' ? answerOf(rpm, pictureOf(path, at, 4, 0.03), traces) : answerOf(rpm, null);
    return { cycles: 1, likely: 1, advance: () => true, answer: () => answer };
  };
}

describe('one speed alone', () => {
  test('is told of with its overlap, and what that comes from', async () => {
    const kept: (string | undefined)[] = [];
    const { out, code } = await ask({ speeds: '5000' }, started(kept));
    expect(code).toBe(0);
    expect(kept).toEqual(['waves']);
    expect(out).toMatch(/\nWaves at cylinder 1: In the overlap “laid-out header” holds 100 kPa at the exhaust port/);
    expect(out).toMatch(
      /\n {2}laid-out header: In the overlap the waves that come .* are within 2 kPa of their mean\.\n/,
    );
  });

  test('beside the cast manifold, of both; and what nothing explains is said to be so', async () => {
    const { out } = await ask({ speeds: '5000', against: 'cast' }, started([]));
    expect(out).toMatch(/“laid-out header” holds 100 kPa .* “cast manifold” holds 130 kPa/);
    expect(out).toMatch(
      /\n {2}cast manifold: In the overlap the waves that come to the exhaust valve raise its pressure by 1\d kPa/,
    );
    expect(out).toMatch(/\n {2}cast manifold: .* \d+ % of all this could not be traced\.\n/);
  });

  test('of several speeds, or as JSON, nothing is kept of them', async () => {
    const kept: (string | undefined)[] = [];
    expect((await ask({ speeds: '4000,5000' }, started(kept))).out).not.toContain('Waves at');
    expect((await ask({ speeds: '5000', json: true }, started(kept))).out).not.toContain('Waves at');
    expect(kept).toEqual([undefined, undefined, undefined]);
  });
});
