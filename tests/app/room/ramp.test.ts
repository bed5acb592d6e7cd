/** The colours of the room round a tube, measured: one way in lightness for every eye, and what fails apart from all of it. */
import { describe, expect, it } from 'vitest';
import { linearRgb } from '../../../src/app/contrast';
import { RAMP, ROOMY, rampColour } from '../../../src/app/room/ramp';
import { marginAt, tintInto } from '../../../src/app/room/tint';
import { TOKENS } from '../../../src/app/theme';
import { apart, EYES, seen } from '../eyes';

describe.each(['light', 'dark'] as const)('the ramp in the %s theme', (theme) => {
  it.each(Object.entries(EYES))('goes one way in lightness, in steps that are seen: %s', (_, eye) => {
    const lightness = RAMP[theme].map((hex) => seen(hex, eye)[0]);
    const way = Math.sign(lightness.at(-1)! - lightness[0]!);
    for (let i = 1; i < lightness.length; i++)
      expect(way * (lightness[i]! - lightness[i - 1]!), `step ${i}`).toBeGreaterThan(0.06);
  });

  it.each(Object.entries(EYES))('keeps what fails apart from all of it: %s', (_, eye) => {
    const fails = seen(TOKENS[theme].fail, eye);
    for (const hex of RAMP[theme]) expect(apart(seen(hex, eye), fails), hex).toBeGreaterThan(0.06);
  });

  it('has its ends where nothing is left and where it is roomy, and fails below', () => {
    expect(rampColour(0, theme)).toEqual(linearRgb(RAMP[theme][0]!));
    for (const margin of [ROOMY, 10 * ROOMY, Number.POSITIVE_INFINITY])
      rampColour(margin, theme).forEach((c, i) => {
        expect(c).toBeCloseTo(linearRgb(RAMP[theme].at(-1)!)[i]!, 12);
      });
    expect(rampColour(-1e-9, theme)).toEqual(linearRgb(TOKENS[theme].fail));
  });
});

const profile = {
  runner: 'r1',
  stations: Float64Array.from([0, 10, 20]),
  margins: Float64Array.from([5, 15, -5]),
};

describe('a tube', () => {
  it('has the margins of its stations, evenly between them and its ends beyond', () => {
    expect([-3, 0, 5, 10, 12.5, 20, 99].map((s) => marginAt(profile, s))).toEqual([5, 5, 10, 15, 10, -5, -5]);
  });

  it('is coloured ring by ring along wall and bore, its greys kept', () => {
    const around = 2;
    const stations = Float32Array.from([0, 10, 20]);
    const shades = new Uint8Array((2 * 3 + 4) * around * 3).fill(255);
    shades.fill(51, 3 * around * 3, 6 * around * 3);
    const out = new Float32Array(shades.length);
    tintInto(out, { stations, shades }, profile, 0, 'light');
    const of = (ring: number) => [...out.subarray(ring * around * 3, ring * around * 3 + 3)];
    const want = (margin: number, k: number) => rampColour(margin, 'light').map((c) => Math.fround(c * k));
    [5, 15, -5].forEach((margin, i) => {
      expect(of(i)).toEqual(want(margin, 1));
      expect(of(3 + i)).toEqual(want(margin, 51 / 255));
    });
    expect([6, 7, 8, 9].map(of)).toEqual([want(5, 1), want(5, 1), want(-5, 1), want(-5, 1)]);
  });

  it('that begins off its centerline takes the colours of where it is', () => {
    const shades = new Uint8Array((2 * 2 + 4) * 3).fill(255);
    const out = new Float32Array(shades.length);
    tintInto(out, { stations: Float32Array.from([0, 5]), shades }, profile, 5, 'dark');
    expect([...out.subarray(0, 3)]).toEqual(rampColour(10, 'dark').map(Math.fround));
    expect([...out.subarray(3, 6)]).toEqual(rampColour(15, 'dark').map(Math.fround));
  });
});
