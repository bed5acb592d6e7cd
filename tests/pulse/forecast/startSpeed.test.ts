/** Real speeds of small engines, in processes of their own: settled, the same on finer cells, told where they swing. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { SpeedJob } from '../../../src/pulse/forecast/job';
import { startSpeed } from '../../../src/pulse/forecast/startSpeed';
import type { SpeedAnswer } from '../../../src/pulse/forecast/types';
import { four, fourIntoOne, single, stack } from '../engines';
import { followAll } from '../followed';

const LONG = 180_000;
const path = fourIntoOne(0.6, 0.04, 0.6);
const jobs = {
  coarse: { engine: four, path, rpm: 5000, cell: 0.03, keep: 'waves' },
  middle: { engine: four, path, rpm: 5000, cell: 0.02 },
  fine: { engine: four, path, rpm: 5000, cell: 0.01 },
  again: { engine: four, path, rpm: 5000, cell: 0.03 },
} satisfies Record<string, SpeedJob>;
let answers: Record<keyof typeof jobs, SpeedAnswer>;
beforeAll(async () => {
  const told = await followAll(Object.values(jobs));
  answers = Object.fromEntries(Object.keys(jobs).map((name, k) => [name, told[k]!])) as typeof answers;
}, LONG);

describe('a speed that is followed', () => {
  it('settles within 0.1 % of torque', () => {
    for (const { settled, drift } of Object.values(answers)) {
      expect(settled).toBe(true);
      expect(drift).toBeLessThan(1e-3);
    }
  });

  it('answers the same torque within a hundredth on cells three times as long, and less far on those twice as long', () => {
    const off = (name: 'coarse' | 'middle') => Math.abs(answers[name].torque / answers.fine.torque - 1);
    expect(off('coarse')).toBeLessThan(0.01);
    expect(off('middle')).toBeLessThan(0.007);
  });

  it('does not depend on what is written down beside it', () => {
    expect(answers.again.torque).toBe(answers.coarse.torque);
    expect(answers.again.traces).toBeNull();
    expect(answers.again.waves).toBeNull();
  });

  it('fills cylinders of equal pipes alike', () => {
    const filled = answers.fine.cylinders.map(({ volumetricEfficiency }) => volumetricEfficiency);
    expect(Math.max(...filled) - Math.min(...filled)).toBeLessThan(0.01);
  });

  it('has torque, power, pressures and shares that agree with each other', () => {
    const { torque, power, rpm, bmep, imep, fmep, shares } = answers.fine;
    expect(power).toBeCloseTo((torque * 2 * Math.PI * rpm) / 60, 6);
    expect(bmep).toBeCloseTo(imep - fmep, 6);
    const litres = 4 * 0.25 * Math.PI * four.bore ** 2 * four.stroke;
    expect(torque).toBeCloseTo((bmep * litres) / (4 * Math.PI), 6);
    expect(Object.values(shares).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
  });
});

describe('what is written down of its last cycle', () => {
  const column = (of: Float32Array) => Object.values(of);

  it('has each cylinder at every degree, work and peak as counted', () => {
    const { traces, cylinders } = answers.coarse;
    expect(traces!.map(({ cylinder }) => cylinder)).toEqual([1, 2, 3, 4]);
    for (const [k, trace] of traces!.entries()) {
      const pressure = column(trace.pressure);
      const volume = column(trace.volume);
      expect(pressure).toHaveLength(721);
      const work = pressure
        .slice(1)
        .reduce((sum, p, i) => sum + 0.5 * (p + pressure[i]!) * (volume[i + 1]! - volume[i]!), 0);
      const swept = 0.25 * Math.PI * four.bore ** 2 * four.stroke;
      expect(work / swept / cylinders[k]!.imep).toBeCloseTo(1, 2);
      expect(Math.max(...pressure) / cylinders[k]!.peakPressure).toBeCloseTo(1, 2);
      expect(pressure[720]).toBe(pressure[0]);
    }
  });

  it('has flow only while valves are open', () => {
    for (const { exhaustFlow, exhaustLift, intakeFlow, intakeLift } of answers.coarse.traces!) {
      const shut = (lift: Float32Array, k: number) =>
        column(lift)[k] === 0 && column(lift)[k - 1] === 0 && column(lift)[k + 1] === 0;
      for (let k = 1; k < 720; k++) {
        if (shut(exhaustLift, k)) expect(column(exhaustFlow)[k]).toBeCloseTo(0, 12);
        if (shut(intakeLift, k)) expect(column(intakeFlow)[k]).toBeCloseTo(0, 12);
      }
    }
  });

  it('has the gas in every pipe, from the cycle’s start to its end, which are one', () => {
    const { angles, pipes } = answers.coarse.waves!;
    const rows = column(angles);
    expect([rows[0], rows.at(-1)]).toEqual([-360, 360]);
    expect(pipes.map(({ pipe }) => pipe)).toEqual([
      ...four.cylinders.map((c) => `intake/${c}`),
      ...path.pipes.map(({ id }) => id),
    ]);
    for (const { x, pressure, temperature } of pipes) {
      const cells = Object.keys(x).length;
      const values = column(pressure);
      expect(values).toHaveLength(rows.length * cells);
      expect(values.slice(0, cells)).toEqual(values.slice(-cells));
      expect(Math.min(...values)).toBeGreaterThan(2e4);
      expect(Math.min(...column(temperature))).toBeGreaterThan(200);
    }
  });
});

it('can be followed in turns of any length', () => {
  const job: SpeedJob = { engine: single, path: stack(0.5, 0.036), rpm: 7000, cell: 0.05 };
  const run = (turn: number) => {
    const running = startSpeed(job);
    while (!running.advance(turn));
    return running.answer();
  };
  expect(run(7)).toEqual(run(5000));
});

it('says that it did not settle, rather than answer as if it had', () => {
  // A room of half a cubic metre behind a hole of 1 cm²: its pressure falls for longer than anybody follows it.
  const slow = { ...single, intake: { ...single.intake, plenumVolume: 0.5, throttleArea: 1e-4 } };
  const running = startSpeed({ engine: slow, path: stack(0.4, 0.036), rpm: 7000, cell: 0.05 });
  while (!running.advance(5000));
  const { settled, doubts, torque, fineCycles } = running.answer();
  expect(settled).toBe(false);
  expect(fineCycles).toBeGreaterThan(10);
  expect(Number.isFinite(torque)).toBe(true);
  expect(doubts.map(({ kind }) => kind)).toContain('unsettled');
});
