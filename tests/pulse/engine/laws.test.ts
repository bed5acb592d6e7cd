/** Heat release, heat to the walls and friction against published formulas, at the values that reference data has of them. */
import { describe, expect, test } from 'vitest';
import { meanPistonSpeed } from '../../../src/pulse/engine/crank';
import { frictionPressure } from '../../../src/pulse/engine/friction';
import { engineSetup } from '../../../src/pulse/engine/setup';
import { burntShare, HALF_BURNT, wiebe, wiebeInverse } from '../../../src/pulse/engine/wiebe';
import { EXCHANGING, SHUT, speedByFire, woschni } from '../../../src/pulse/engine/woschni';
import { flowEntry, flowValue, sourceOf } from '../../reference/flow';
import { designOf, FOUR } from './designs';

describe(`heat release: ${sourceOf('si.wiebe')}`, () => {
  const { xb, x10, x50, x90 } = flowValue<{
    xb: Readonly<Record<string, number>>;
    x10: number;
    x50: number;
    x90: number;
  }>('si.wiebe');

  test.each(Object.entries(xb))('at %s of the duration', (x, burnt) => {
    expect(Math.abs(wiebe(Number(x)) - burnt)).toBeLessThan(1e-5);
  });

  test.each([
    [0.1, x10],
    [0.5, x50],
    [0.9, x90],
  ])('where %s is burnt', (burnt, x) => {
    expect(Math.abs(wiebeInverse(burnt) - x)).toBeLessThan(1e-5);
    expect(wiebe(wiebeInverse(burnt))).toBeCloseTo(burnt, 12);
  });

  test('all of it is burnt at the end, nothing before the start, and it never turns back', () => {
    expect(burntShare(-0.1)).toBe(0);
    expect(burntShare(0)).toBe(0);
    expect(burntShare(1)).toBe(1);
    expect(burntShare(2)).toBe(1);
    for (let x = 0.01; x <= 1; x += 0.01) expect(burntShare(x)).toBeGreaterThanOrEqual(burntShare(x - 0.01));
    // What the law leaves over is spread evenly over the whole: less than 1 %.
    expect(burntShare(0.5) / wiebe(0.5)).toBeCloseTo(1 / 0.993262, 5);
  });

  test('half of what is burnt is burnt at the middle', () => {
    expect(burntShare(HALF_BURNT)).toBeCloseTo(0.5, 12);
    expect(Math.abs(HALF_BURNT - x50)).toBeLessThan(0.003);
  });
});

describe(`heat to the walls: ${sourceOf('si.woschni')}`, () => {
  const [compression, combustion] =
    flowValue<readonly [{ Sp: number; w: number; h: number }, { w: number; h: number }]>('si.woschni');
  const speed = meanPistonSpeed(0.086, 6000);

  test('while compressed', () => {
    expect(speed).toBeCloseTo(compression.Sp, 10);
    expect(SHUT * speed).toBeCloseTo(compression.w, 10);
    expect(woschni(0.086, 1e6, 700, SHUT * speed) / compression.h).toBeCloseTo(1, 4);
  });

  test('while it burns', () => {
    const reference = { pressure: 1e5, volume: 550e-6, temperature: 330 };
    const w = SHUT * speed + speedByFire(500e-6, reference, 3.5e6);
    expect(w).toBeCloseTo(combustion.w, 3);
    expect(woschni(0.086, 6e6, 2400, w) / combustion.h).toBeCloseTo(1, 4);
  });

  test('gas runs faster while valves are open, and without fire nothing is added', () => {
    expect(flowEntry('si.woschni').quantity).toContain('C1=6.18 gas exchange, 2.28 compression');
    expect(EXCHANGING).toBe(6.18);
    expect(speedByFire(500e-6, { pressure: 1e5, volume: 550e-6, temperature: 330 }, 0)).toBe(0);
  });
});

describe(`friction: ${sourceOf('si.chen_flynn_typical')} [common practice]`, () => {
  const { friction } = engineSetup(designOf(FOUR)).setup;

  test.each(flowValue<readonly { Sp: number; fmep: number }[]>('si.chen_flynn_typical'))(
    'at $Sp m/s and 60 bar: $fmep bar',
    ({ Sp, fmep }) => {
      expect(frictionPressure(friction, 60e5, Sp) / 1e5).toBeCloseTo(fmep, 10);
    },
  );

  test('a fitted factor is a factor on all of it', () => {
    const fitted = engineSetup(designOf({ ...FOUR, fitted: { friction: 1.3 } })).setup.friction;
    for (const speed of [4, 12, 22])
      expect(frictionPressure(fitted, 71e5, speed) / frictionPressure(friction, 71e5, speed)).toBeCloseTo(1.3, 12);
  });
});
