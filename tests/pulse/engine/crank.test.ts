/** Volume and wall of a cylinder over crank angle, against closed forms, and the ideal cycle that such a volume makes. */
import { describe, expect, test } from 'vitest';
import { crankOf, meanPistonSpeed } from '../../../src/pulse/engine/crank';
import { flowValue, sourceOf } from '../../reference/flow';

const four = { bore: 0.086, stroke: 0.086, rod: 0.143, compressionRatio: 10.5 };
const crank = crankOf(four);
const RADIANS = Math.PI / 180;

describe('volume', () => {
  test('at top and bottom is what the compression ratio says', () => {
    expect(crank.swept).toBeCloseTo((Math.PI / 4) * 0.086 ** 3, 15);
    expect(crank.volume(0)).toBeCloseTo(crank.clearance, 15);
    expect(crank.volume(360)).toBeCloseTo(crank.clearance, 15);
    expect(crank.volume(180)).toBeCloseTo(crank.clearance + crank.swept, 15);
    expect(crank.volume(180) / crank.volume(0)).toBeCloseTo(10.5, 12);
  });

  test('is the same on both ways, a turn on, and before the top', () => {
    for (const angle of [7, 44, 90, 133, 171]) {
      expect(crank.volume(-angle)).toBeCloseTo(crank.volume(angle), 15);
      expect(crank.volume(360 - angle)).toBeCloseTo(crank.volume(angle), 15);
      expect(crank.volume(angle - 720)).toBeCloseTo(crank.volume(angle), 15);
    }
  });

  test('at a quarter turn has the piston below the middle of its stroke, by the rod’s lean', () => {
    // r + l − √(l² − r²) below the top.
    const below = 0.043 + 0.143 - Math.sqrt(0.143 ** 2 - 0.043 ** 2);
    expect(crank.volume(90)).toBeCloseTo(crank.clearance + (Math.PI / 4) * 0.086 ** 2 * below, 15);
    expect(crank.volume(90)).toBeGreaterThan(crank.clearance + crank.swept / 2);
  });

  test('changes as the textbook’s piston speed has it: ½π sin θ (1 + cos θ / √(R² − sin² θ)) of the mean', () => {
    // Heywood, Internal Combustion Engine Fundamentals, eq. 2.11 (from memory; it is the derivative of the geometry).
    const ratio = four.rod / (four.stroke / 2);
    const step = 1e-3;
    for (const angle of [5, 30, 75, 90, 120, 179, 200, 301]) {
      const slope = (crank.volume(angle + step) - crank.volume(angle - step)) / (2 * step * RADIANS);
      const [sine, cosine] = [Math.sin(angle * RADIANS), Math.cos(angle * RADIANS)];
      const speed = (Math.PI / 2) * sine * (1 + cosine / Math.sqrt(ratio ** 2 - sine ** 2));
      // The mean is two strokes a turn.
      expect(slope / ((2 * crank.swept) / (2 * Math.PI))).toBeCloseTo(speed, 7);
    }
  });

  test('with a rod without end is a plain cosine', () => {
    const long = crankOf({ ...four, rod: 1e4 });
    for (const angle of [30, 90, 150]) {
      const share = (1 - Math.cos(angle * RADIANS)) / 2;
      expect((long.volume(angle) - long.clearance) / long.swept).toBeCloseTo(share, 5);
    }
  });
});

describe('wall', () => {
  test('at the bottom is that at the top and the whole liner more', () => {
    expect(crank.wall(180) - crank.wall(0)).toBeCloseTo(Math.PI * 0.086 * 0.086, 12);
  });

  test('holds the volume: head and piston, and the liner between two flat faces', () => {
    const face = (Math.PI / 4) * 0.086 ** 2;
    for (const angle of [0, 40, 180, 250])
      expect(crank.wall(angle)).toBeCloseTo(2 * face + (4 / 0.086) * crank.volume(angle), 12);
  });
});

test('the piston runs two strokes a turn', () => {
  expect(meanPistonSpeed(0.086, 6000)).toBeCloseTo(17.2, 12);
});

type Otto = { readonly rc: number; readonly g: number; readonly eta: number };
describe(`the ideal cycle on these volumes: ${sourceOf('si.otto')}`, () => {
  test.each(flowValue<readonly Otto[]>('si.otto'))('ratio $rc, γ $g', ({ rc, g, eta }) => {
    const { volume } = crankOf({ ...four, compressionRatio: rc });
    // Compressed and expanded without heat, with heat added all at once at the top: p V^γ is 1 below and 3.7 above.
    let work = 0;
    const pressure = (angle: number, level: number): number => level * volume(angle) ** -g;
    const step = 0.25;
    for (let angle = 0; angle < 180; angle += step) {
      const change = volume(angle + step) - volume(angle);
      const middle = pressure(angle, 2.7) + 4 * pressure(angle + step / 2, 2.7) + pressure(angle + step, 2.7);
      work += (middle / 6) * change;
    }
    const heat = (2.7 * volume(0) ** (1 - g)) / (g - 1);
    expect(work / heat).toBeCloseTo(eta, 4);
  });
});
