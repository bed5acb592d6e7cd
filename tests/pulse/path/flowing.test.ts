/** Gas in the pipes of a path: what a silencer's plate costs, and that a burst runs through every joint with nothing lost. SI units. */
import { describe, expect, test } from 'vitest';
import { castPath } from '../../../src/pulse/path/cast';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { holeFor } from '../../../src/pulse/path/tailpipe';
import type { GasPath } from '../../../src/pulse/path/types';
import { pipe, ran, rig } from '../rigs';
import { example } from './designs';
import { rigged } from './rigged';

describe('a silencer loses as many dynamic pressures of the pipe as its coefficient, beside the one of a bare mouth', () => {
  const OUTSIDE = 101325;
  const bore = 0.05;
  const area = (Math.PI / 4) * bore ** 2;

  test.each([0, 1, 3, 8])('coefficient %d', (coefficient) => {
    const { profile } = ran(
      rig({
        pipes: [
          pipe('tail', {
            length: 0.3,
            cells: 15,
            diameter: [
              [0, bore],
              [0.3, bore],
            ],
          }),
        ],
        ends: [
          {
            kind: 'vessel',
            at: ['tail', 'start'],
            volume: 1e4,
            pressure: OUTSIDE + 60,
            temperature: 293.15,
            area,
            dischargeCoefficient: 1,
          },
          { kind: 'open', at: ['tail', 'finish'], area: holeFor(area, coefficient), dischargeCoefficient: 1 },
        ],
        duration: 0.4,
      }),
    );
    const { pressure, velocity, density } = profile[0]!;
    const k = 7;
    const dynamic = 0.5 * density[k]! * velocity[k]! ** 2;
    const lost = (pressure[k]! + dynamic - OUTSIDE) / dynamic;
    // Bernoulli's equation is off by about 60 Pa beside the outside's pressure, 0.06 %.
    expect(Math.abs(lost / (1 + coefficient) - 1)).toBeLessThan(1e-3);
  });
});

/** Its first pipe at 3 bar, the rest at rest. */
function burst(path: GasPath): ReturnType<typeof ran> {
  const at = rigged(path, 6e-3);
  const first = path.valves[0]!.pipe;
  const pipes = at.pipes.map((one) =>
    one.id === first ? { ...one, initial: one.initial.map((s) => ({ ...s, pressure: 3e5 })) } : one,
  );
  return ran({ ...at, pipes });
}

test.each([
  ['one four into one', () => laidOutPath(example('four-4-1')).path],
  ['pairs first', () => laidOutPath(example('four-4-2-1')).path],
  ['a casting', () => castPath(example('four-4-1')).path],
] as const)('a burst in %s reaches every pipe, and mass is kept', (_, make) => {
  const path = make();
  const { profile, mass } = burst(path);
  expect(Math.abs(mass.drift)).toBeLessThan(1e-12);
  for (const one of profile) expect(Math.max(...one.velocity.map(Math.abs)), one.pipe).toBeGreaterThan(0.5);
});
