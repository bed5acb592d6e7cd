/** Fitting to a measured curve, on an engine whose answer is known in closed form. */
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/parse';
import { engineSetup } from '../../../src/pulse/engine/setup';
import { type Fit, type FitFailure, fitBaseline, fitOutlook } from '../../../src/pulse/forecast/fit';
import { boundedStep, leftUnknown } from '../../../src/pulse/forecast/fit/boundedStep';
import { BOUNDS, FACTORS, SPREAD } from '../../../src/pulse/forecast/fit/factors';
import { measuredOf, thinned } from '../../../src/pulse/forecast/fit/measured';
import { designOf, FOUR, WHOLE } from '../engine/designs';
import { BASE, ENGINE, knownTeam, measuredWith } from './knownEngine';

const SPEEDS = [1500, 2250, 3000, 3750, 4500, 5250, 6000, 7000];
const whole = (fit: Fit | FitFailure): Fit => {
  if ('failed' in fit) throw new Error(fit.failed);
  return fit;
};
const fitTo = async (factors: Fit['fitted'], speeds: readonly number[] = SPEEDS) =>
  whole(await fitBaseline(BASE, measuredWith(factors, speeds), knownTeam()));

describe('known factors', () => {
  test.each([
    { flow: 0.92, friction: 1.2, heat: 1.25 },
    { flow: 1.08, friction: 0.85, heat: 0.8 },
    { flow: 0.95, friction: 1, heat: 1.3 },
  ])('flow $flow, friction $friction, heat $heat are found again', async (factors) => {
    const fit = await fitTo(factors);
    // Held back toward 1, most where two factors do nearly the same: within a quarter of what is not known beforehand.
    for (const [k, factor] of FACTORS.entries())
      expect(Math.abs(fit.fitted[factor] - factors[factor]), factor).toBeLessThan(SPREAD[k]! / 4);
    expect(fit.after).toBeLessThan(0.5);
    expect(fit.after).toBeLessThan(fit.before / 10);
    expect(fit.atBound).toEqual([]);
    expect(fit.stopped).toBe(false);
  });

  test('friction far from usual, which flow and heat can nearly stand in for, is believed in part: the curve is right', async () => {
    const fit = await fitTo({ flow: 1, friction: 1.3, heat: 1 });
    expect(fit.after).toBeLessThan(0.005 * 180);
    expect(fit.fitted.friction).toBeGreaterThan(1.1);
    expect(fit.fitted.friction).toBeLessThan(1.3);
    expect(Math.abs(fit.fitted.flow - 1)).toBeLessThan(0.05);
    expect(Math.abs(fit.fitted.heat - 1)).toBeLessThan(0.15);
  });

  // Misses over a hundredth of the torque, and the way from 1. Slopes are taken over a nudge, so the least is met within a third of a
  // standard deviation: 0.1 of what is summed.
  test('what is found costs no more than any neighbour', async () => {
    const points = measuredWith({ flow: 1, friction: 1.3, heat: 1 }, SPEEDS);
    const { fitted } = whole(await fitBaseline(BASE, points, knownTeam()));
    const noise = 0.01 * Math.max(...points.map(({ torque }) => torque));
    const costOf = (x: readonly number[]): number => {
      const curve = measuredWith({ flow: x[0]!, friction: x[1]!, heat: x[2]! }, SPEEDS);
      const missed = curve.reduce((sum, { torque }, i) => sum + ((torque - points[i]!.torque) / noise) ** 2, 0);
      return x.reduce((sum, value, k) => sum + ((value - 1) / SPREAD[k]!) ** 2, missed);
    };
    const found = FACTORS.map((factor) => fitted[factor]);
    const least = costOf(found);
    const steps = [-0.1, -0.05, 0, 0.05, 0.1];
    for (const a of steps)
      for (const b of steps)
        for (const c of steps)
          expect(costOf(found.map((value, k) => value + [a, b, c][k]! * SPREAD[k]!))).toBeGreaterThan(least - 0.1);
  });

  test('an engine as usual stays as usual, without a further round', async () => {
    const team = knownTeam();
    const fit = whole(await fitBaseline(BASE, measuredWith({ flow: 1, friction: 1, heat: 1 }, SPEEDS), team));
    expect(fit.fitted).toEqual({ flow: 1, friction: 1, heat: 1 });
    expect(fit.before).toBe(0);
    expect(team.asked).toHaveLength(3 * SPEEDS.length);
  });

  test('whatever factors the engine came with are set aside', async () => {
    const { setup } = engineSetup(designOf({ ...FOUR, fitted: { flow: 0.85, friction: 1.6, heat: 1.9 } }));
    const points = measuredWith({ flow: 0.95, friction: 1.1, heat: 1.1 }, SPEEDS);
    const [fresh, again] = [
      await fitBaseline(BASE, points, knownTeam()),
      await fitBaseline({ ...BASE, engine: setup }, points, knownTeam()),
    ];
    expect(again).toEqual(fresh);
  });
});

test('noise of a hundredth of the torque moves the factors little (seed: the digits of 355/113)', async () => {
  const digits = '1415929203';
  const factors = { flow: 0.94, friction: 1.15, heat: 1.15 };
  const points = measuredWith(factors, SPEEDS).map(({ rpm, torque }, i) => ({
    rpm,
    torque: torque * (1 + (0.01 * (Number(digits[i]) - 4.5)) / 4.5),
  }));
  const { fitted, after } = whole(await fitBaseline(BASE, points, knownTeam()));
  expect(Math.abs(fitted.flow - factors.flow)).toBeLessThan(0.05);
  expect(Math.abs(fitted.friction - factors.friction)).toBeLessThan(0.2);
  expect(Math.abs(fitted.heat - factors.heat)).toBeLessThan(0.3);
  // No better than the noise, no worse.
  expect(after).toBeGreaterThan(0.2);
  expect(after).toBeLessThan(2.5);
});

describe('bounds', () => {
  test('a curve that no friction explains comes to the bound and says so', async () => {
    const points = measuredWith({ flow: 1, friction: 1, heat: 1 }, SPEEDS).map(({ rpm, torque }) => ({
      rpm,
      torque: 0.6 * torque,
    }));
    const fit = whole(await fitBaseline(BASE, points, knownTeam()));
    for (const [k, factor] of FACTORS.entries()) {
      expect(fit.fitted[factor]).toBeGreaterThanOrEqual(BOUNDS[k]!.least);
      expect(fit.fitted[factor]).toBeLessThanOrEqual(BOUNDS[k]!.most);
    }
    expect(fit.atBound).toContain('friction');
    expect(fit.message).toMatch(/Friction came to its most, 1\.8: something else .* unit of torque/);
  });

  test('every set that is followed lies within them', async () => {
    const team = knownTeam();
    const points = measuredWith({ flow: 1, friction: 1, heat: 1 }, SPEEDS).map(({ rpm, torque }) => ({
      rpm,
      torque: 1.4 * torque,
    }));
    const fit = whole(await fitBaseline(BASE, points, team));
    expect(fit.atBound.length).toBeGreaterThan(0);
    for (const { engine } of team.asked) {
      expect(engine.flowFactor).toBeGreaterThanOrEqual(0.8);
      expect(engine.flowFactor).toBeLessThanOrEqual(1.2);
      const heat = engine.walls.factor / ENGINE.walls.factor;
      expect(heat).toBeGreaterThan(0.5 - 1e-12);
      expect(heat).toBeLessThan(2 + 1e-12);
      const friction = engine.friction.constant / ENGINE.friction.constant;
      expect(friction).toBeGreaterThan(0.5 - 1e-12);
      expect(friction).toBeLessThan(1.8 + 1e-12);
    }
  });
});

describe('a fit that failed', () => {
  test('is one whose factors all came to their bounds', async () => {
    const points = measuredWith({ flow: 1, friction: 1, heat: 1 }, SPEEDS).map(({ rpm, torque }) => ({
      rpm,
      torque: 0.25 * torque,
    }));
    const fit = whole(await fitBaseline(BASE, points, knownTeam()));
    expect(fit.atBound).toEqual(FACTORS);
    expect(fit.failure).toMatch(/all three factors came to their bounds/);
    expect(fit.message).toMatch(/^Not fitted to 8 points: all three .*such as the unit of torque/);
  });

  test('is not one that comes to a bound with some of them, nor one that finds the usual factors right', async () => {
    const usual = measuredWith({ flow: 1, friction: 1, heat: 1 }, SPEEDS);
    expect(whole(await fitBaseline(BASE, usual, knownTeam())).failure).toBe(null);
    const weak = usual.map(({ rpm, torque }) => ({ rpm, torque: 0.6 * torque }));
    const fit = whole(await fitBaseline(BASE, weak, knownTeam()));
    expect(fit.atBound.length).toBeGreaterThan(0);
    expect(fit.atBound.length).toBeLessThan(3);
    expect(fit.failure).toBe(null);
  });
});

test('a curve in lb ft is fitted like that of a weak engine, and said to be far from usual', async () => {
  const curve = measuredWith({ flow: 1, friction: 1, heat: 1 }, SPEEDS);
  const fitted = async (times: number) =>
    whole(
      await fitBaseline(
        BASE,
        curve.map(({ rpm, torque }) => ({ rpm, torque: times * torque })),
        knownTeam(),
      ),
    ).message;
  expect(await fitted(1 / 1.3558)).toMatch(
    /far from usual: look whether the curve is in N m .* 1 lb ft is 1\.3558 N m/,
  );
  expect(await fitted(0.95)).not.toMatch(/far from usual/);
});

describe('what points cannot tell', () => {
  test('stays near 1, and is told: three neighbouring speeds', async () => {
    const fit = await fitTo({ flow: 1, friction: 1.15, heat: 1 }, [4000, 4050, 4100]);
    expect(fit.after).toBeLessThan(1);
    expect(fit.untold.length).toBeGreaterThan(0);
    expect(fit.message).toMatch(/The points tell little of .* stays as usual/);
    for (const factor of FACTORS) expect(Math.abs(fit.fitted[factor] - 1)).toBeLessThan(0.2);
  });
});

describe('jobs', () => {
  test('are counted, on coarse cells, and never more than said', async () => {
    const team = knownTeam();
    const told: { done: number; likely: number }[] = [];
    const points = measuredWith({ flow: 0.92, friction: 1.2, heat: 1.25 }, SPEEDS);
    await fitBaseline(BASE, points, team, (progress) => told.push(progress));
    expect(told.map(({ done }) => done)).toEqual(team.asked.map((_, i) => i + 1));
    for (const { done, likely } of told) expect(done).toBeLessThanOrEqual(likely);
    expect(team.asked.every(({ cell }) => cell === 0.02)).toBe(true);
    // Three sets at first, then few rounds of one.
    expect(team.asked.length).toBeLessThanOrEqual(SPEEDS.length * (3 + 6));
  });

  test('are foretold of the points that are followed, not of all that were measured', async () => {
    const points = measuredWith(
      { flow: 0.92, friction: 1.2, heat: 1.25 },
      Array.from({ length: 40 }, (_, i) => 1500 + 140 * i),
    );
    const told: number[] = [];
    await fitBaseline(BASE, points, knownTeam(), ({ likely }) => told.push(likely));
    expect(fitOutlook(points).likely).toBe(8 * 7);
    expect(told[0]).toBe(8 * 7);
  });

  test('give the same, twice', async () => {
    const factors = { flow: 0.97, friction: 1.25, heat: 0.9 };
    expect(await fitTo(factors)).toEqual(await fitTo(factors));
  });
});

describe('a cancel', () => {
  const points = measuredWith({ flow: 0.9, friction: 1.3, heat: 1.4 }, SPEEDS);
  const stoppedAfter = (jobs: number) => {
    const team = knownTeam();
    return fitBaseline(BASE, points, team, undefined, () => team.asked.length >= jobs);
  };

  test('before the first curves are whole leaves nothing', async () => {
    expect(await stoppedAfter(23)).toEqual({ failed: expect.stringMatching(/^Stopped before/) });
    expect(await stoppedAfter(0)).toEqual({ failed: expect.stringMatching(/^Stopped before/) });
  });

  test('keeps the best so far', async () => {
    const begun = whole(await stoppedAfter(3 * SPEEDS.length + 2));
    expect(begun.stopped).toBe(true);
    expect(begun.fitted).toEqual({ flow: 1, friction: 1, heat: 1 });
    expect(begun.after).toBe(begun.before);
    expect(begun.message).toMatch(/^Stopped; the best so far/);
    const later = whole(await stoppedAfter(4 * SPEEDS.length + 2));
    expect(later.stopped).toBe(true);
    expect(later.after).toBeLessThan(begun.after);
    expect(later.curve).toHaveLength(SPEEDS.length);
  });
});

describe('speeds that cannot be followed', () => {
  const factors = { flow: 0.94, friction: 1.2, heat: 1.2 };
  test('stay out of the fit and keep their place in the curve', async () => {
    const fit = whole(await fitBaseline(BASE, measuredWith(factors, SPEEDS), knownTeam([3000])));
    expect(fit.curve[2]).toEqual({ rpm: 3000, failed: 'a step could not be done' });
    expect(Math.abs(fit.fitted.flow - factors.flow)).toBeLessThan(0.025);
    expect(fit.message).toMatch(/7 of 8 points/);
  });

  test('are too few, and why is told', async () => {
    expect(await fitBaseline(BASE, measuredWith(factors, SPEEDS), knownTeam(SPEEDS.slice(2)))).toEqual({
      failed: 'Fewer than 3 of the measured speeds can be followed: a step could not be done',
    });
    expect(await fitBaseline(BASE, measuredWith(factors, [3000, 4000]), knownTeam())).toEqual({
      failed: '2 measured points: at least 3 are needed',
    });
  });
});

test('another shape than three factors can give is told', async () => {
  const points = SPEEDS.map((rpm, i) => ({ rpm, torque: i % 2 ? 120 : 200 }));
  expect(whole(await fitBaseline(BASE, points, knownTeam())).message).toMatch(/shape of the curve is another/);
});

describe('the measured curve', () => {
  const baseline = {
    points: [
      [2000, 140],
      [4000, 170],
      [6000, 160],
    ] as const,
    loss: 15,
  };

  test('is taken to the crank', () => {
    const points = measuredOf(designOf({ ...WHOLE, baseline }));
    expect(points.map(({ rpm }) => rpm)).toEqual([2000, 4000, 6000]);
    expect(points[1]!.torque).toBeCloseTo(200, 12);
  });

  test('of an engine of which a path covers one bank is that bank’s share', () => {
    const points = measuredOf(designOf({ ...WHOLE, baseline }), 0.5);
    expect(points[1]!.torque).toBeCloseTo(100, 12);
  });

  test('must be there, in N m', () => {
    expect(() => measuredOf(designOf(WHOLE))).toThrow(DesignError);
    expect(() => measuredOf(designOf(WHOLE))).toThrow(/^engine\/baseline: found nothing; allowed: a torque curve/);
    const kgf = { points: baseline.points.map(([rpm, torque]) => [rpm, torque / 9.80665] as const) };
    expect(() => measuredOf(designOf({ ...WHOLE, baseline: kgf }))).toThrow(/kgf m, × 9\.80665/);
  });

  test('of many points is thinned to eight, its ends among them', () => {
    const many = Array.from({ length: 301 }, (_, i) => ({ rpm: 1500 + 18 * i, torque: 150 }));
    const few = thinned(many);
    expect(few).toHaveLength(8);
    expect(few[0]).toBe(many[0]);
    expect(few.at(-1)).toBe(many.at(-1));
    few.slice(1).forEach(({ rpm }, i) => {
      expect(rpm - few[i]!.rpm).toBeGreaterThan(700);
    });
    expect(thinned(many.slice(0, 8))).toEqual(many.slice(0, 8));
    // Points in two heaps: each once, however near.
    const heaps = [1500, 1501, 1502, 1503, 1504, 7000, 7001, 7002, 7003].map((rpm) => ({ rpm, torque: 150 }));
    const thin = thinned(heaps);
    expect(new Set(thin).size).toBe(thin.length);
  });
});

describe('a bounded step', () => {
  const wide = [
    { least: -1e9, most: 1e9 },
    { least: -1e9, most: 1e9 },
    { least: -1e9, most: 1e9 },
  ];
  const exact = {
    // Three points that three unknowns explain exactly at 1.1, 0.9, 1.3.
    slopes: [
      [100, -20, 5],
      [40, -30, -20],
      [10, 15, 40],
    ],
    from: [1, 1, 1],
    noise: 1e-6,
  };
  const at = [1.1, 0.9, 1.3];
  const residuals = exact.slopes.map((row) => -row.reduce((sum, s, k) => sum + s * (at[k]! - 1), 0));

  test('without noise is the answer of the equations', () => {
    boundedStep({ ...exact, residuals }, SPREAD, wide).forEach((value, k) => {
      expect(value).toBeCloseTo(at[k]!, 9);
    });
  });

  test('does not depend on where the slopes were taken', () => {
    const from = [0.95, 1.2, 0.8];
    const there = residuals.map((r, i) => r + exact.slopes[i]!.reduce((sum, s, k) => sum + s * (from[k]! - 1), 0));
    boundedStep({ ...exact, from, residuals: there }, SPREAD, wide).forEach((value, k) => {
      expect(value).toBeCloseTo(at[k]!, 9);
    });
  });

  test('within bounds is no worse than any other place within them', () => {
    const bounds = [
      { least: 0.95, most: 1.05 },
      { least: 0.95, most: 1.05 },
      { least: 0.8, most: 1.2 },
    ];
    const linear = { ...exact, residuals, noise: 2 };
    const cost = (x: readonly number[]): number =>
      linear.slopes.reduce(
        (sum, row, i) => sum + (row.reduce((r, s, k) => r + s * (x[k]! - 1), residuals[i]!) / 2) ** 2,
        x.reduce((sum, value, k) => sum + ((value - 1) / SPREAD[k]!) ** 2, 0),
      );
    const x = boundedStep(linear, SPREAD, bounds);
    x.forEach((value, k) => {
      expect(value).toBeGreaterThanOrEqual(bounds[k]!.least);
      expect(value).toBeLessThanOrEqual(bounds[k]!.most);
    });
    expect(x.filter((value, k) => value === bounds[k]!.least || value === bounds[k]!.most).length).toBeGreaterThan(0);
    for (let i = 0; i <= 10; i++)
      for (let j = 0; j <= 10; j++)
        for (let k = 0; k <= 10; k++)
          expect(cost(x)).toBeLessThanOrEqual(cost([0.95 + i / 100, 0.95 + j / 100, 0.8 + k / 25]) + 1e-9);
  });

  test('with no point to go by stays at 1, and all is unknown', () => {
    const nothing = { residuals: [], slopes: [], from: [1.1, 1, 1], noise: 1 };
    expect(boundedStep(nothing, SPREAD, wide)).toEqual([1, 1, 1]);
    for (const left of leftUnknown(nothing, SPREAD)) expect(left).toBeCloseTo(1, 12);
    for (const left of leftUnknown({ ...exact, residuals }, SPREAD)) expect(left).toBeLessThan(1e-4);
  });
});
