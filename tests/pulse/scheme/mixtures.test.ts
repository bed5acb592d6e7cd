/** Several gases in the scheme: fractions stay shares, resting gas rests wherever a border lies, mass of each is kept. */
import { expect, test } from 'vitest';
import { bothEnds, pipe, ran, rig } from '../rigs';

const gas = { components: ['air', 'burnt'] };

test.each([0.5, 0.505, 0.5031])('hot burnt gas beside cold air at one pressure rests, the border at %s m', (border) => {
  const { profile } = ran(
    rig({
      gas,
      pipes: [
        pipe('p', {
          initial: [
            { from: 0, to: border, pressure: 1e5, temperature: 1200, velocity: 0, fractions: { burnt: 1 } },
            { from: border, to: 1, pressure: 1e5, temperature: 300, velocity: 0 },
          ],
        }),
      ],
      ends: bothEnds('p', 'closed'),
      duration: 0.002,
    }),
  );
  for (const p of profile[0]!.pressure) expect(Math.abs(p / 1e5 - 1)).toBeLessThan(1e-11);
  for (const u of profile[0]!.velocity) expect(Math.abs(u)).toBeLessThan(1e-8);
});

test.each(['straight', 'tapered'])('fractions stay between 0 and 1 where strong waves meet walls, %s', (kind) => {
  const end = kind === 'straight' ? 0.04 : 0.09;
  const { profile, mass, energy } = ran(
    rig({
      gas,
      pipes: [
        pipe('p', {
          diameter: [
            [0, 0.04],
            [1, end],
          ],
          initial: [
            { from: 0, to: 0.2, pressure: 6e5, temperature: 1500, velocity: 0, fractions: { burnt: 1 } },
            { from: 0.2, to: 0.6, pressure: 1e5, temperature: 300, velocity: 0 },
            { from: 0.6, to: 1, pressure: 2e5, temperature: 900, velocity: -100, fractions: { burnt: 0.5 } },
          ],
        }),
      ],
      ends: bothEnds('p', 'closed'),
      duration: 0.01,
    }),
  );
  for (const share of profile[0]!.fractions[0]!) {
    expect(share).toBeGreaterThan(-1e-12);
    expect(share).toBeLessThan(1 + 1e-12);
  }
  expect(Math.abs(mass.drift)).toBeLessThan(1e-12);
  expect(Math.abs(energy.drift)).toBeLessThan(1e-12);
});
