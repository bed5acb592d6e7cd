import { expect, it } from 'vitest';
import { cycling } from '../../../src/pulse/engine/cycles';
import { type Joined, joinEngine } from '../../../src/pulse/engine/join';
import { transfer } from '../../../src/pulse/engine/transfer';
import { countsOf } from '../../../src/pulse/forecast/cycleSums';
import { contentOf } from '../../../src/pulse/scheme/firstState';
import { single, stack } from '../engines';

const RPM = 6000;
const path = stack(0.6, 0.036);

function follow(joined: Joined, cycles: number): number[] {
  const cycle = cycling(joined, RPM, () => {});
  return Array.from({ length: cycles }, () => {
    const before = countsOf(joined)[0]!.work;
    while (!cycle.advance(1000));
    return countsOf(joined)[0]!.work - before;
  });
}

it('goes on with finer cells where coarse ones stood: as much gas, and a first cycle like the last one', () => {
  const coarse = joinEngine(single, path, RPM, 0.04);
  const last = follow(coarse, 8).at(-1)!;
  const fine = joinEngine(single, path, RPM, 0.02);
  transfer(coarse, fine);
  for (const entry of [0, 2] as const) {
    const [a, b] = [coarse, fine].map(({ network, stand }) => contentOf(network.grid, stand.cells, entry));
    expect(b! / a!).toBeCloseTo(1, 9);
  }
  expect(fine.cylinders[0]!.charge.mass).toBe(coarse.cylinders[0]!.charge.mass);
  // Friction factors of gas at rest, kept for the first steps, once cost 6 % here.
  expect(Math.abs(follow(fine, 1)[0]! / last - 1)).toBeLessThan(0.01);
});

it('has pipes of the engine’s own beside any of the same name', () => {
  const named = {
    ...path,
    pipes: path.pipes.map((pipe) => ({ ...pipe, id: 'intake 1' })),
    ends: [{ kind: 'open', at: ['intake 1', 'finish'] }] as const,
    valves: [{ cylinder: 1, pipe: 'intake 1', share: 1 }],
  };
  expect(follow(joinEngine(single, named, RPM, 0.05), 2)).toEqual(
    follow(joinEngine(single, { ...path, ends: [{ kind: 'open', at: ['stack', 'finish'] }] }, RPM, 0.05), 2),
  );
});
