/** Pipes of one, two and three cells: a joint between long ones. What passes them is what passes one pipe. */
import { expect, test } from 'vitest';
import { pipe, ran, rig } from '../rigs';

const high = { pressure: 1.2e5, temperature: 320 };

/** A burst in a pipe of 1 m with a piece of `cells` cells of 10 mm set in at its middle. */
function through(cells: number) {
  const middle = 0.01 * cells;
  return ran(
    rig({
      pipes: [
        pipe('a', {
          cells: 50,
          length: 0.5,
          initial: [
            { from: 0, to: 0.25, velocity: 0, ...high },
            { from: 0.25, to: 0.5, pressure: 1e5, temperature: 300, velocity: 0 },
          ],
        }),
        pipe('m', { cells, length: middle, state: { pressure: 1e5, temperature: 300 } }),
        pipe('b', { cells: 50, length: 0.5, state: { pressure: 1e5, temperature: 300 } }),
      ],
      ends: [
        { kind: 'closed', at: ['a', 'start'] },
        {
          kind: 'junction',
          model: 'equal-pressure',
          at: [
            ['a', 'finish'],
            ['m', 'start'],
          ],
        },
        {
          kind: 'junction',
          model: 'equal-pressure',
          at: [
            ['m', 'finish'],
            ['b', 'start'],
          ],
        },
        { kind: 'closed', at: ['b', 'finish'] },
      ],
      duration: 0.003,
      probes: [
        { pipe: 'm', x: 0 },
        { pipe: 'm', x: middle },
        { pipe: 'b', x: 0.2 },
      ],
      sample: 1e-5,
    }),
  );
}

/** The same without joints. */
function whole(cells: number) {
  const length = 1 + 0.01 * cells;
  return ran(
    rig({
      pipes: [
        pipe('p', {
          cells: 100 + cells,
          length,
          initial: [
            { from: 0, to: 0.25, velocity: 0, ...high },
            { from: 0.25, to: length, pressure: 1e5, temperature: 300, velocity: 0 },
          ],
        }),
      ],
      ends: [
        { kind: 'closed', at: ['p', 'start'] },
        { kind: 'closed', at: ['p', 'finish'] },
      ],
      duration: 0.003,
      probes: [{ pipe: 'p', x: 0.5 + 0.01 * cells + 0.2 }],
      sample: 1e-5,
    }),
  );
}

test.each([1, 2, 3, 4])('a piece of %i cells lets a burst through as the plain pipe does', (cells) => {
  const joined = through(cells);
  expect(Math.abs(joined.mass.drift)).toBeLessThan(1e-13);
  for (const { pressure } of joined.probes) expect(pressure.every((p) => p > 5e4 && p < 2e5)).toBe(true);
  const [after] = whole(cells).probes;
  const off = joined.probes[2]!.pressure.map((p, i) => p - after!.pressure[i]!);
  const rms = Math.sqrt(off.reduce((sum, d) => sum + d * d, 0) / off.length);
  // Of the burst's 20 kPa; the joints' cells are limited towards their planes.
  expect(rms / 2e4).toBeLessThan(0.015);
});
