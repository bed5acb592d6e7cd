/**
 * The engine on its pipes beside published figures: shares of the fuel's heat, mean effective pressure, volumetric efficiency,
 * residuals, the tuning number, and what other primaries and a cast manifold do. Trends, not proof: checked against theory and
 * published trends. Coarse cells, which move torque by less than 1 %.
 */

import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { parseDesign } from '../../../shared/design/parse';
import { engineSetup } from '../../../src/pulse/engine/setup';
import type { SpeedJob } from '../../../src/pulse/forecast/job';
import type { SpeedAnswer } from '../../../src/pulse/forecast/types';
import { castPath } from '../../../src/pulse/path/cast';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { flowValue, sourceOf } from '../../reference/flow';
import { four, fourIntoOne, lifts, single, stack } from '../engines';
import { followAll } from '../followed';

const CELL = 0.04;
const BAR = 1e5;
const header = fourIntoOne(0.82, 0.0394);

/** ms: some tens of speeds are followed. */
const LONG = 240_000;
const OPEN = 254;
const STACK = 0.036;

const sized = readDesign();
const justEnough = { ...four, fuel: { ...four.fuel, lambda: 1 } };
// As large a cylinder as the published engine's, with two valves.
const large = {
  ...four,
  bore: 0.1016,
  stroke: 0.0884,
  rod: 0.145,
  compressionRatio: 9.5,
  intakeValve: { ...four.intakeValve, count: 1, diameter: 0.0493, lifts: lifts(-20, 232, 0.0115) },
  exhaustValve: { ...four.exhaustValve, count: 1, diameter: 0.0381, lifts: lifts(-240, 18, 0.0115) },
  intake: { ...four.intake, runnerLength: 0.3, plenumVolume: 0.0035, throttleArea: 0.0028 },
};
const LARGE_SPEEDS = [2400, 3400, 3600, 3800, 4000, 5000, 5200];
const GAIN_SPEEDS = [2000, 2500, 3500, 4500, 5500, 6500, 7500];
const STACK_SPEEDS = [3000, 4500, 6000];
/** Of the tuning number, long pipes first. */
const WANTED = [0.85, 0.92, 0.98, 1.04, 1.1, 1.16];

const jobs: Record<string, SpeedJob[]> = {
  full: [justEnough, four].map((engine) => ({ engine, path: header, rpm: 5500 })),
  stacks: STACK_SPEEDS.flatMap((rpm) =>
    WANTED.map((q) => ({
      engine: single,
      path: stack((555 * OPEN) / (12 * rpm * q), STACK),
      rpm,
      keep: 'waves' as const,
    })),
  ),
  // Tubes of 41.3 and 44.5 mm with walls of 1.5 mm.
  bores: [0.0383, 0.0415].flatMap((bore) =>
    LARGE_SPEEDS.map((rpm) => ({ engine: large, path: fourIntoOne(0.9, bore, 1.5, 0.0702), rpm, cell: 0.03 })),
  ),
  gains: [sized.laid, sized.cast].flatMap((path) => GAIN_SPEEDS.map((rpm) => ({ engine: sized.setup, path, rpm }))),
};
const answers: Record<string, SpeedAnswer[]> = {};
beforeAll(async () => {
  const names = Object.keys(jobs);
  const all = await followAll(names.flatMap((name) => jobs[name]!.map((job) => ({ cell: CELL, ...job }))));
  for (const name of names) answers[name] = all.splice(0, jobs[name]!.length);
}, LONG);

it('settles at every one of these speeds', () => {
  for (const name of Object.keys(jobs))
    for (const { rpm, settled } of answers[name]!) expect([rpm, settled]).toEqual([rpm, true]);
});

describe('a four-cylinder engine at full load', () => {
  let even: SpeedAnswer;
  let rich: SpeedAnswer;
  beforeAll(() => {
    [even, rich] = answers.full as [SpeedAnswer, SpeedAnswer];
  });

  it(`shares out the fuel's heat like the published table, 5 points each: ${sourceOf('si.energy_full_load')}`, () => {
    const table = flowValue<Record<string, number>>('si.energy_full_load');
    const { brake, friction, coolant, port, exhaust, unburnt, unaccounted } = even.shares;
    const near = (share: number, percent: number) => expect(Math.abs(100 * share - percent)).toBeLessThan(5);
    near(brake, table.brake!);
    near(exhaust, table.exhaust_thermal!);
    near(unburnt, table.exhaust_chemical!);
    // The table's coolant and oil carry off what rubs as well; its friction is what the oil does not.
    near(coolant + port + friction, table.coolant_oil!);
    expect(Math.abs(unaccounted)).toBeLessThan(0.01);
  });

  it(`lets the exhaust carry a third of it or a little more: ${sourceOf('si.energy_heywood')}`, () => {
    const [low, high] = flowValue<{ exhaust: [number, number] }>('si.energy_heywood').exhaust;
    expect(100 * even.shares.exhaust).toBeGreaterThan(low);
    expect(100 * even.shares.exhaust).toBeLessThan(high);
    expect(even.shares.coolant + even.shares.port).toBeGreaterThan(0.15);
  });

  it(`has the mean effective pressure of a modern engine: ${sourceOf('si.bmep')}`, () => {
    const [low, high] = flowValue<{ modern: [number, number] }>('si.bmep').modern;
    expect(rich.bmep / BAR).toBeGreaterThan(low);
    expect(rich.bmep / BAR).toBeLessThan(high);
  });

  it(`fills like a modern four-valve engine: ${sourceOf('si.ve')}`, () => {
    const [low, high] = flowValue<{ modern: [number, number] }>('si.ve').modern;
    expect(100 * rich.volumetricEfficiency).toBeGreaterThan(low);
    expect(100 * rich.volumetricEfficiency).toBeLessThan(high);
  });

  it(`leaves its gas as hot as at full power: ${sourceOf('si.egt')}`, () => {
    const [low, high] = flowValue<{ full: [number, number] }>('si.egt').full;
    // The gas at the valve; what a probe in the pipe reads is some 100 K lower, by common practice.
    expect(rich.exhaustTemperature - 273.15).toBeGreaterThan(low);
    expect(rich.exhaustTemperature - 273.15).toBeLessThan(high + 100);
  });

  it('brings more of its fuel to the crank with just enough air than rich, and more of it into the exhaust: common practice', () => {
    expect(even.shares.brake).toBeGreaterThan(rich.shares.brake);
    expect(even.shares.exhaust).toBeGreaterThan(rich.shares.exhaust);
    expect(even.shares.unburnt).toBeLessThan(rich.shares.unburnt);
  });
});

it(`a cast manifold leaves the residuals of a wide-open throttle, in the mean of its speeds: ${sourceOf('si.residual')}`, () => {
  const [low, high] = flowValue<{ wot: [number, number] }>('si.residual').wot;
  const residuals = answers.gains!.slice(GAIN_SPEEDS.length).map(({ residual }) => 100 * residual);
  const mean = residuals.reduce((a, b) => a + b, 0) / residuals.length;
  expect(mean).toBeGreaterThan(low);
  expect(mean).toBeLessThan(high);
});

describe(`a single cylinder with a straight pipe has its first maximum of filling where Q = cθ/(12 N l) is 1 within a tenth: ${sourceOf('ex.fukuda_izumi_1965')}`, () => {
  it.each(STACK_SPEEDS)('%i rpm', (rpm) => {
    const found = answers
      .stacks!.slice(WANTED.length * STACK_SPEEDS.indexOf(rpm))
      .slice(0, WANTED.length)
      .map((answer, k) => {
        const job = jobs.stacks![WANTED.length * STACK_SPEEDS.indexOf(rpm) + k]!;
        const { temperature } = answer.waves!.pipes.find(({ pipe }) => pipe === 'stack')!;
        // Mean speed of sound of hot burnt gas, from its temperatures: ratio of heats 1.33, gas constant 288 J/(kg K).
        const kelvins = Object.values(temperature);
        const sound = kelvins.reduce((sum, t) => sum + Math.sqrt(1.33 * 288 * t), 0) / kelvins.length;
        const whole = job.path.pipes[0]!.length + 0.6133 * 0.5 * STACK;
        return { q: (sound * OPEN) / (12 * rpm * whole), filled: answer.volumetricEfficiency };
      });
    const at = found.findIndex(
      ({ filled }, k) =>
        k > 0 && k < found.length - 1 && filled >= found[k - 1]!.filled && filled >= found[k + 1]!.filled,
    );
    expect(at).toBeGreaterThan(0);
    const best = vertex(found.slice(at - 1, at + 2).map(({ q, filled }) => [q, filled]));
    expect(Math.abs(best - 1)).toBeLessThan(0.1);
  });
});

// Two published tests, an engine each. That the second one's narrower tubes were long ones too is inferred.
describe(`wider primaries: ${sourceOf('ex.v8_primary_dia')}; ${sourceOf('ex.v8_57_cam_headers')}`, () => {
  type Published = { readonly dT_pct: number; readonly dP_pct: number };
  type Dynamometer = {
    readonly cam: readonly number[];
    readonly cam_1p875in: { readonly P: number; readonly T: number };
  };
  /** Read to a whole lb ft or hp: as much of 440. */
  const READ_TO = 0.002;
  let narrow: SpeedAnswer[];
  let wide: SpeedAnswer[];
  let torques: number[];
  let powers: number[];
  beforeAll(() => {
    narrow = answers.bores!.slice(0, LARGE_SPEEDS.length);
    wide = answers.bores!.slice(LARGE_SPEEDS.length);
    const { dT_pct, dP_pct } = flowValue<Published>('ex.v8_primary_dia');
    const { cam, cam_1p875in } = flowValue<Dynamometer>('ex.v8_57_cam_headers');
    torques = [dT_pct / 100, cam_1p875in.T / cam[1]! - 1];
    powers = [dP_pct / 100, cam_1p875in.P / cam[0]! - 1];
  });
  const peak = (curve: readonly SpeedAnswer[]) => curve.reduce((a, b) => (b.torque > a.torque ? b : a));
  const power = (curve: readonly SpeedAnswer[]) => Math.max(...curve.map((one) => one.power));

  it('lower the torque peak by an amount between the published ones, and shift it up by 400 rpm at most', () => {
    const change = peak(wide).torque / peak(narrow).torque - 1;
    expect(change).toBeGreaterThan(Math.min(...torques));
    expect(change).toBeLessThan(Math.max(...torques) + READ_TO);
    const moved = peak(wide).rpm - peak(narrow).rpm;
    expect(moved).toBeGreaterThanOrEqual(0);
    expect(moved).toBeLessThanOrEqual(400);
  });

  it('lower the torque below its peak by 1 to 3 %, the trend of the first', () => {
    const change = wide[0]!.torque / narrow[0]!.torque - 1;
    expect(change).toBeLessThan(-0.01);
    expect(change).toBeGreaterThan(-0.03);
  });

  it('change the most power by an amount between the published ones, and within a hundredth, the trend of the first', () => {
    const change = power(wide) / power(narrow) - 1;
    expect(Math.abs(change)).toBeLessThan(0.01);
    expect(change).toBeGreaterThan(Math.min(...powers) - READ_TO);
    expect(change).toBeLessThan(Math.max(...powers) + READ_TO);
  });
});

describe('a header on an engine that had a cast manifold', () => {
  let gains: number[];
  beforeAll(() => {
    const n = GAIN_SPEEDS.length;
    gains = GAIN_SPEEDS.map((_, k) => answers.gains![k]!.torque / answers.gains![n + k]!.torque - 1);
  });

  it(`gains no more than the published most, anywhere: ${sourceOf('ex.v8_57_cast_vs_tube')}`, () => {
    expect(Math.max(...gains)).toBeLessThan(flowValue<{ pct: number }>('ex.v8_57_cast_vs_tube').pct / 100);
  });

  it('does gain: 5 % or more at its best, and over the speeds together', () => {
    expect(Math.max(...gains)).toBeGreaterThan(0.05);
    expect(gains.reduce((a, b) => a + b, 0)).toBeGreaterThan(0);
  });
});

/** Where the parabola through three points is level. */
function vertex(points: readonly (readonly [number, number])[]): number {
  const [[a, fa], [b, fb], [c, fc]] = points as [[number, number], [number, number], [number, number]];
  const [left, right] = [(b - a) * (fb - fc), (b - c) * (fb - fa)];
  return b - (0.5 * ((b - a) * left - (b - c) * right)) / (left - right);
}

function readDesign() {
  const file = new URL('../../../public/examples/four-4-1.evenrun.json', import.meta.url);
  const design = parseDesign(readFileSync(file, 'utf8'));
  return { setup: engineSetup(design).setup, laid: laidOutPath(design).path, cast: castPath(design).path };
}
