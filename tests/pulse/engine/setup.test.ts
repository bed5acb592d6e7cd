/** An engine read from its design: what is given arrives in SI, what is not is taken as usual and told. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseDesign } from '../../../shared/design/parse';
import type { Engine } from '../../../shared/design/types';
import { engineSetup } from '../../../src/pulse/engine/setup';
import type { Assumed } from '../../../src/pulse/engine/types';
import { designOf, FOUR, WHOLE } from './designs';

const read = (engine: Engine, ports?: readonly number[]) => engineSetup(designOf(engine, ports));
const { setup: whole, assumed: ofWhole } = read(WHOLE);
const { setup: least, assumed: ofLeast } = read(FOUR);
const at = (assumed: readonly Assumed[], path: string): Assumed | undefined => assumed.find((one) => one.path === path);

describe('what is given', () => {
  test('arrives in SI', () => {
    expect(whole).toMatchObject({ cylinders: [1, 2, 3, 4], firingOrder: [1, 3, 4, 2], fires: [0, 540, 180, 360] });
    expect(whole.bore).toBeCloseTo(0.086, 12);
    expect(whole.stroke).toBeCloseTo(0.086, 12);
    expect(whole.rod).toBeCloseTo(0.143, 12);
    expect(whole.compressionRatio).toBe(10.8);
    expect(whole.speeds).toEqual([2000, 7600]);
    expect(whole.burn).toEqual({ middle: 9, duration: 52, efficiency: 0.93 });
    expect(whole.fuel.lambda).toBe(0.9);
    expect(whole.air.pressure).toBeCloseTo(99_000, 9);
    expect(whole.air.temperature).toBeCloseTo(298.15, 9);
  });

  test('of valves: from the last row shut to the first one shut again, in metres', () => {
    expect(whole.intakeValve.count).toBe(2);
    expect(whole.intakeValve.diameter).toBeCloseTo(0.033, 12);
    expect(whole.intakeValve.lifts.map(([angle]) => angle)).toEqual([-20, 109, 238]);
    expect(whole.intakeValve.lifts[1]![1]).toBeCloseTo(0.0098, 12);
    expect(whole.intakeValve.flow).toEqual([
      [0.05, 0.66],
      [0.25, 0.5],
    ]);
    expect(whole.exhaustValve.lifts.map(([angle]) => angle)).toEqual([-242, -112, 18]);
  });

  test('of the intake: the throttle’s effective area is 0.8 of its opening', () => {
    const { runnerLength, runnerDiameter, plenumVolume, throttleArea } = whole.intake;
    expect(runnerLength).toBeCloseTo(0.31, 12);
    expect(runnerDiameter).toBeCloseTo(0.043, 12);
    expect(plenumVolume).toBeCloseTo(3.2e-3, 12);
    expect(throttleArea).toBeCloseTo(0.8 * Math.PI * 0.031 ** 2, 12);
  });

  test('of a measured curve: each factor goes where it belongs, friction’s onto all four terms', () => {
    expect(whole.flowFactor).toBe(0.95);
    expect(whole.walls.factor).toBeCloseTo(1.4 * 1.5, 12);
    for (const term of ['constant', 'perPeak', 'perSpeed', 'perSquare'] as const)
      expect(whole.friction[term]).toBeCloseTo(1.2 * least.friction[term], 9);
  });

  test('leaves to be told only what a design has no field for', () => {
    expect(ofWhole.map(({ name }) => name)).toEqual([
      'Fuel',
      'Cylinder walls',
      'Heat law',
      'Friction law',
      'Intake walls',
      'Throttle flow',
    ]);
  });
});

/** Path, and what is taken, of an engine of which the least is known. */
const USUAL: readonly (readonly [path: string, taken: RegExp])[] = [
  ['engine/firingOrder', /^1-3-4-2$/],
  ['engine/firingAngles', /every 180°/],
  ['engine/rod', /^142 mm$/],
  ['engine/compressionRatio', /^10$/],
  ['engine/rpm', /^1500 to 7000 rpm$/],
  ['engine/intakeValve/count', /^2 a cylinder$/],
  ['engine/intakeValve/diameter', /^33\.1 mm$/],
  ['engine/intakeValve/lift', /^9\.6 mm$/],
  ['engine/intakeValve/opens', /^-12°, 12° before the top/],
  ['engine/intakeValve/closes', /^228°, 48° after the bottom/],
  ['engine/intakeValve/lifts', /smooth curve from -12° to 228°, 9\.6 mm/],
  ['engine/intakeValve/flow', /0\.68 .* 0\.47 at a quarter/],
  ['engine/exhaustValve/count', /^2 a cylinder$/],
  ['engine/exhaustValve/diameter', /^28\.4 mm$/],
  ['engine/exhaustValve/lift', /^8\.8 mm$/],
  ['engine/exhaustValve/opens', /^-232°, 52° before the bottom/],
  ['engine/exhaustValve/closes', /^10°, 10° after the top/],
  ['engine/exhaustValve/lifts', /smooth curve from -232° to 10°, 8\.8 mm/],
  ['engine/exhaustValve/flow', /0\.72 .* 0\.62 at a quarter/],
  ['engine/combustion/burnMiddle', /^8° after top/],
  ['engine/combustion/burnDuration', /^60°/],
  ['engine/combustion/efficiency', /^95 %/],
  ['engine/combustion/lambda', /^0\.88/],
  ['engine/combustion', /44 MJ\/kg, 14\.6 kg of air/],
  ['engine', /^177 °C/],
  ['engine/fitted/heat', /factor 1/],
  ['engine', /0\.4 bar \+ 0\.005 .* 0\.09 bar .* 0\.0009 bar/],
  ['engine/fitted/friction', /factor 1/],
  ['engine/fitted/flow', /factor 1/],
  ['engine/intake/runnerLength', /^350 mm/],
  ['engine/intake/runnerDiameter', /^43\.2 mm$/],
  ['engine/intake/plenumVolume', /^3000 cm³$/],
  ['engine/intake/throttleDiameter', /^54 mm/],
  ['engine/intake', /46\.9 °C, rough by 0\.03 mm/],
  ['engine/intake', /^0\.8 of its area$/],
  ['engine', /^1\.4 times Woschni/],
  ['engine/air/pressure', /^1013\.25 hPa$/],
  ['engine/air/temperature', /^15 °C$/],
];

describe('what nobody gave', () => {
  test.each(USUAL)('%s is taken as usual, and told', (path, taken) => {
    const lines = ofLeast.filter((one) => one.path === path);
    expect(lines.some((one) => taken.test(one.taken))).toBe(true);
    for (const { name, why } of lines) {
      expect(name).not.toBe('');
      expect(why).not.toBe('');
    }
  });

  test('nothing else is told', () => {
    expect(ofLeast.map(({ path }) => path).sort()).toEqual(USUAL.map(([path]) => path).sort());
  });

  test('arrives in SI', () => {
    expect(least).toMatchObject({
      fires: [0, 540, 180, 360],
      speeds: [1500, 7000],
      compressionRatio: 10,
      flowFactor: 1,
    });
    expect(least.rod).toBeCloseTo(0.142, 12);
    expect(least.friction.constant).toBeCloseTo(40_000, 9);
    expect(least.friction.perPeak).toBeCloseTo(0.005, 12);
    expect(least.friction.perSpeed).toBeCloseTo(9000, 9);
    expect(least.friction.perSquare).toBeCloseTo(90, 9);
    expect(least.walls).toEqual({ temperature: 450, factor: 1.4 });
    expect(least.fuel).toEqual({ heat: 44e6, airPerFuel: 14.6, lambda: 0.88 });
    expect(least.air).toEqual({ pressure: 101_325, temperature: 288.15 });
    expect(least.intake.wallTemperature).toBe(320);
    expect(least.intake.roughness).toBeCloseTo(3e-5, 15);
    // Air at 50 m/s at 7000 rpm through the whole of it, to the millimetre that its diameter is rounded to.
    const flow = (Math.PI / 4) * 0.086 ** 3 * 4 * (7000 / 120);
    expect(least.intake.throttleArea / 0.8).toBeGreaterThan((flow / 50) * 0.97);
    expect(least.intake.throttleArea / 0.8).toBeLessThan((flow / 50) * 1.03);
    const valves = 2 * (Math.PI / 4) * least.intakeValve.diameter ** 2;
    expect(((Math.PI / 4) * least.intake.runnerDiameter ** 2) / valves).toBeCloseTo(0.85, 2);
  });
});

describe('cylinders', () => {
  test('are as many as the ports name, where nothing else tells', () => {
    const { setup, assumed } = read({ bore: 80, stroke: 80 }, [1, 2, 3]);
    expect(setup.cylinders).toEqual([1, 2, 3]);
    expect(setup.firingOrder).toEqual([1, 3, 2]);
    expect(at(assumed, 'engine/cylinders')).toMatchObject({ taken: '3', why: 'those that the ports name' });
  });

  test('two ports of one cylinder are one cylinder', () => {
    expect(read({ bore: 80, stroke: 80 }, [1, 1, 2, 2]).setup.cylinders).toEqual([1, 2]);
  });

  test('are those of the banks before those of the ports, and those of the firing order before both', () => {
    const banks = [
      [1, 3],
      [2, 4],
    ];
    const { setup, assumed } = read({ bore: 80, stroke: 80, banks }, [1, 3]);
    expect(setup.cylinders).toEqual([1, 2, 3, 4]);
    expect(at(assumed, 'engine/cylinders')!.why).toMatch(/banks/);
    const ordered = read({ bore: 80, stroke: 80, firingOrder: [1, 2, 3] }, [1]);
    expect(ordered.setup.cylinders).toEqual([1, 2, 3]);
    expect(at(ordered.assumed, 'engine/cylinders')).toBeUndefined();
  });

  test('fire evenly in the usual order, of which the numbering is told', () => {
    const { setup, assumed } = read({ cylinders: 8, bore: 100, stroke: 88 });
    expect(setup.firingOrder).toEqual([1, 8, 4, 3, 6, 5, 7, 2]);
    expect(setup.fires).toEqual([0, 630, 270, 180, 450, 360, 540, 90]);
    expect(at(assumed, 'engine/firingOrder')!.why).toMatch(/1-3-5-7 \| 2-4-6-8/);
  });

  test('of a number for which no order is usual fire by their numbers', () => {
    const { setup, assumed } = read({ cylinders: 9, bore: 100, stroke: 88 });
    expect(setup.firingOrder).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(at(assumed, 'engine/firingOrder')!.why).toMatch(/none is usual/);
  });

  test('of a V twin may fire unevenly: that is told, and taken as given', () => {
    const banks = [[1], [2]];
    const even = read({ ...FOUR, cylinders: 2, banks });
    expect(even.setup.fires).toEqual([0, 360]);
    expect(at(even.assumed, 'engine/firingAngles')!.why).toMatch(/may not/);
    const uneven = read({ ...FOUR, cylinders: 2, banks, firingOrder: [2, 1], firingAngles: [0, 270] });
    expect(uneven.setup.fires).toEqual([270, 0]);
  });

  test('a single has no order to be told', () => {
    const { setup, assumed } = read({ ...FOUR, cylinders: 1 });
    expect(setup).toMatchObject({ cylinders: [1], firingOrder: [1], fires: [0] });
    expect(assumed.some(({ path }) => path.startsWith('engine/firing'))).toBe(false);
  });
});

describe('one side’s valves tell of the other’s', () => {
  test('a single exhaust valve goes with a single, larger intake valve', () => {
    const exhaustValve = { count: 1, diameter: 33, lift: 10, opens: -240, closes: 20 };
    const { setup, assumed } = read({ ...FOUR, exhaustValve });
    expect(setup.intakeValve.count).toBe(1);
    expect(setup.intakeValve.diameter).toBeCloseTo(0.0387, 9);
    expect(at(assumed, 'engine/exhaustValve/count')).toBeUndefined();
    expect(at(assumed, 'engine/exhaustValve/lifts')).toBeDefined();
  });
});

describe('an intake without a plenum', () => {
  test('has no throttle, and one that is given is told to have no place', () => {
    const { setup, assumed } = read({ ...FOUR, intake: { plenumVolume: 0, throttleDiameter: 60 } });
    expect(setup.intake).toMatchObject({ plenumVolume: null, throttleArea: 0 });
    expect(at(assumed, 'engine/intake/throttleDiameter')).toMatchObject({ taken: 'none' });
    expect(read({ ...FOUR, intake: { plenumVolume: 0 } }).assumed.some(({ name }) => /Throttle/.test(name))).toBe(
      false,
    );
  });
});

test('the same design gives the same setup, and is left as it was', () => {
  const design = designOf(WHOLE);
  const before = JSON.stringify(design);
  expect(JSON.stringify(engineSetup(design))).toBe(JSON.stringify(engineSetup(design)));
  expect(JSON.stringify(design)).toBe(before);
});

test.each(readdirSync('public/examples').filter((name) => name.endsWith('.evenrun.json')))(
  'the example %s is an engine that can be followed',
  (name) => {
    const { setup } = engineSetup(parseDesign(readFileSync(`public/examples/${name}`, 'utf8')));
    expect(setup.cylinders.length).toBeGreaterThanOrEqual(1);
  },
);
