/** How far a valve lets gas pass: coefficient × curtain area, over the cycle, wherever its table begins. */
import { describe, expect, test } from 'vitest';
import { engineSetup } from '../../../src/pulse/engine/setup';
import type { ValveSetup } from '../../../src/pulse/engine/types';
import { valveLaw } from '../../../src/pulse/engine/valve';
import { designOf, FOUR } from './designs';

const MM = 1e-3;
const valve: ValveSetup = {
  count: 2,
  diameter: 32 * MM,
  lifts: [
    [-12, 0],
    [108, 9.6 * MM],
    [228, 0],
  ],
  flow: [
    [0.1, 0.64],
    [0.3, 0.4],
  ],
};

describe('the area that flows', () => {
  const law = valveLaw(valve, 1);

  test('is coefficient × π × diameter × lift of all valves together', () => {
    // Full lift is 0.3 of the diameter.
    expect(law.areaAt(108)).toBeCloseTo(0.4 * 2 * Math.PI * 0.032 * 0.0096, 12);
    // Half of it, 0.15: a quarter of the way from 0.64 to 0.4.
    expect(law.areaAt(48)).toBeCloseTo(0.58 * 2 * Math.PI * 0.032 * 0.0048, 12);
    // Below the table's first row its coefficient is held.
    expect(law.areaAt(0)).toBeCloseTo(0.64 * 2 * Math.PI * 0.032 * 0.00096, 12);
  });

  test('is 0 while it is shut, and there alone', () => {
    for (const angle of [-360, -200, -12, 228, 300, 360]) {
      expect(law.areaAt(angle)).toBe(0);
      expect(law.liftAt(angle)).toBe(0);
    }
    for (let angle = -11; angle < 228; angle++) expect(law.areaAt(angle)).toBeGreaterThan(0);
    expect([law.opens, law.closes]).toEqual([-12, 228]);
  });

  test('goes with the factor on flow, and the lift does not', () => {
    const less = valveLaw(valve, 0.9);
    for (const angle of [10, 60, 108, 200]) {
      expect(less.areaAt(angle)).toBeCloseTo(0.9 * law.areaAt(angle), 14);
      expect(less.liftAt(angle)).toBe(law.liftAt(angle));
    }
  });
});

describe('a table that reaches beyond the cycle', () => {
  test('an exhaust valve open from −380 is open at the cycle’s other end too', () => {
    const early = { ...valve, lifts: valve.lifts.map(([angle, lift]) => [angle - 368, lift] as const) };
    const law = valveLaw(early, 1);
    expect(law.opens).toBe(-380);
    // 350 is −370: ten degrees open.
    expect(law.liftAt(350)).toBeCloseTo(valveLaw(valve, 1).liftAt(-2), 14);
    expect(law.areaAt(350)).toBeCloseTo(valveLaw(valve, 1).areaAt(-2), 14);
    expect(law.areaAt(-360)).toBeCloseTo(law.areaAt(360), 14);
    expect(law.areaAt(330)).toBe(0);
  });
});

test('of the usual valves of an engine, neither side is open all the cycle, and both are at the overlap', () => {
  const { intakeValve, exhaustValve, flowFactor } = engineSetup(designOf(FOUR)).setup;
  const [intake, exhaust] = [valveLaw(intakeValve, flowFactor), valveLaw(exhaustValve, flowFactor)];
  expect(intake.areaAt(0)).toBeGreaterThan(0);
  expect(exhaust.areaAt(0)).toBeGreaterThan(0);
  for (const angle of [-360, -300, 300, 360]) {
    expect(intake.areaAt(angle)).toBe(0);
    expect(exhaust.areaAt(angle)).toBe(0);
  }
  // Lifted beyond a quarter of its diameter the port limits: 0.47 of the heads' area flows, however far it lifts.
  const heads = (Math.PI / 4) * intakeValve.count * intakeValve.diameter ** 2;
  expect(intake.areaAt(108) / heads).toBeCloseTo(0.47, 2);
});
