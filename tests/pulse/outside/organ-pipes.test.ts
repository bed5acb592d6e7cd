/**
 * Tones of a pipe of 1 m and 40 mm after a small disturbance: closed at one end and open at both, with and without what the gas
 * outside adds to the length, and with a stream through it.
 */
import { describe, expect, it } from 'vitest';
import type { RigEnd } from '../../../src/pulse/rig/types';
import { flowValue, sourceOf } from '../../reference/flow';
import { AIR, areaOf, off, pipe, probesAt, runRig, type State } from './rigs';
import { risingCrossings, toneBetween } from './tones';

type Modes = { c: number; no_end_corr: number[]; unflanged?: number[]; flanged?: number[]; unflanged_both?: number[] };
const DIAMETER = 0.04;
const SAMPLE = 1e-4;

/** The first three tones; 20 Pa, 0.02 % of the pressure, stand in a third of the pipe at first. */
function tones(c: number, ends: readonly RigEnd[], near: readonly number[], finish = DIAMETER): number[] {
  const ambient = { pressure: 101325, temperature: (c * c) / (AIR.gamma * AIR.gasConstant) };
  const high = { pressure: 101345, temperature: ambient.temperature * (101345 / 101325) ** (0.4 / 1.4), velocity: 0 };
  const run = runRig(
    [
      pipe(
        'a',
        1,
        120,
        [
          [0, DIAMETER],
          [1, finish],
        ],
        (x) => (x > 0.15 && x < 0.48 ? high : { ...ambient, velocity: 0 }),
      ),
    ],
    ends,
    0.2,
    { ambient, probes: probesAt(['a', 0.11]), sample: SAMPLE },
  );
  return near.map((f) => toneBetween(run.probes[0]!.pressure, SAMPLE, f - 12, f + 12));
}

const open = (side: 'start' | 'finish', endCorrection?: 'unflanged' | 'flanged'): RigEnd => ({
  kind: 'open',
  at: ['a', side],
  ...(endCorrection ? { endCorrection } : {}),
});

describe(`closed and open; ${sourceOf('ac.closed_open')}`, () => {
  const modes = flowValue<Modes>('ac.closed_open');
  it.each([
    ['without end correction', undefined, modes.no_end_corr],
    [`of a plain pipe, ${sourceOf('ac.end_unflanged')}`, 'unflanged', modes.unflanged!],
    [`of a flanged pipe, ${sourceOf('ac.end_flanged')}`, 'flanged', modes.flanged!],
  ] as const)('%s: three tones within 0.5 %', (_, correction, wanted) => {
    const found = tones(modes.c, [{ kind: 'closed', at: ['a', 'start'] }, open('finish', correction)], wanted);
    found.forEach((f, i) => {
      expect(off(f, wanted[i]!)).toBeLessThan(0.005);
    });
  });

  it('a correction is told from none: 1.2 % lower', () => {
    const [plain] = tones(modes.c, [{ kind: 'closed', at: ['a', 'start'] }, open('finish')], modes.no_end_corr);
    const [longer] = tones(
      modes.c,
      [{ kind: 'closed', at: ['a', 'start'] }, open('finish', 'unflanged')],
      modes.unflanged!,
    );
    expect(off(longer! / plain!, modes.unflanged![0]! / modes.no_end_corr[0]!)).toBeLessThan(0.001);
  });
});

describe(`open at both ends; ${sourceOf('ac.open_open')}`, () => {
  const modes = flowValue<Modes>('ac.open_open');
  it.each([
    ['without end correction', undefined, modes.no_end_corr],
    ['with that of a plain pipe at both', 'unflanged', modes.unflanged_both!],
  ] as const)('%s: three tones within 0.5 %', (_, correction, wanted) => {
    const found = tones(modes.c, [open('start', correction), open('finish', correction)], wanted);
    found.forEach((f, i) => {
      expect(off(f, wanted[i]!)).toBeLessThan(0.005);
    });
  });
});

describe(`with a stream through it; ${sourceOf('ac.mean_flow')}`, () => {
  it.each([0.1, 0.2, 0.3])('Mach %s: the lowest tone falls by M², within 2 %', (mach) => {
    const total = 1 + 0.2 * mach * mach;
    const ambient = { pressure: 101325, temperature: 293.15 };
    const c = Math.sqrt(AIR.gamma * AIR.gasConstant * ambient.temperature);
    // The lowest tone of a moving gas, begun as a standing half wave that the stream carries: p' = sin(πx) cos(πMx).
    const state = (x: number): State => {
      const part = 1 + 2e-4 * Math.sin(Math.PI * x) * Math.cos(Math.PI * mach * x);
      return { pressure: 101325 * part, temperature: ambient.temperature * part ** (0.4 / 1.4), velocity: mach * c };
    };
    const vessel: RigEnd = {
      kind: 'vessel',
      at: ['a', 'start'],
      volume: 1e9,
      pressure: ambient.pressure * total ** 3.5,
      temperature: ambient.temperature * total,
      area: areaOf(DIAMETER),
      dischargeCoefficient: 1,
    };
    const run = runRig([pipe('a', 1, 200, DIAMETER, state)], [vessel, open('finish')], 0.04, {
      ambient,
      probes: probesAt(['a', 0.5]),
      sample: 2e-5,
    });
    // Some of the sound leaves with each turn, so a few turns are all there is.
    const times = risingCrossings(run.probes[0]!.pressure, 2e-5, ambient.pressure).slice(0, 4);
    expect(times.length).toBe(4);
    const frequency = 3 / (times[3]! - times[0]!);
    expect(off(frequency, 0.5 * c * (1 - mach * mach))).toBeLessThan(0.02);
    if (mach >= 0.2) expect(off(frequency, 0.5 * c)).toBeGreaterThan(0.02);
  });
});

describe('cones: spherical waves, N. H. Fletcher & T. D. Rossing, The Physics of Musical Instruments, 1998, ch. 8 (from memory)', () => {
  const c = 343.21;
  it('open at both ends, a cone sounds as a cylinder does: three tones within 0.5 %', () => {
    const wanted = [1, 2, 3].map((n) => (n * c) / 2);
    tones(c, [open('start'), open('finish')], wanted, 3 * DIAMETER).forEach((f, i) => {
      expect(off(f, wanted[i]!)).toBeLessThan(0.005);
    });
  });

  it.each([1.5, 3, 6])(
    'closed at its narrow end, %s times as wide at the other: tan kL = −k × apex to narrow end, three tones within 0.5 %',
    (widening) => {
      // p ~ sin(k(L − x)) / r, with no slope where it is closed.
      const apex = 1 / (widening - 1);
      const wanted = [1, 2, 3].map((n) => {
        let [low, high] = [(n - 0.5) * Math.PI + 1e-9, n * Math.PI];
        for (let i = 0; i < 60; i++) {
          const k = 0.5 * (low + high);
          if (Math.tan(k) < -k * apex) low = k;
          else high = k;
        }
        return (low * c) / (2 * Math.PI);
      });
      tones(c, [{ kind: 'closed', at: ['a', 'start'] }, open('finish')], wanted, widening * DIAMETER).forEach(
        (f, i) => {
          expect(off(f, wanted[i]!)).toBeLessThan(0.005);
        },
      );
    },
  );
});
