/** What unequal lengths cost, of an invented engine that loses 0.05 N m a millimetre. */
import { expect, test } from 'vitest';
import { imbalanceCost } from '../../../src/pulse/forecast/imbalance';
import { subjectOf } from '../../../src/pulse/forecast/subject';
import { withImbalance } from '../../../src/pulse/path/variants';
import { designIn, FOUR, fakeTeam, inventedTorque } from './fakes';

const { engine, path } = subjectOf(designIn(FOUR), 'header');
const pathWith = (mm: number) => withImbalance(path, mm / 1000, engine.firingOrder);
const cost = (of?: Parameters<typeof fakeTeam>[0], mm = [20, 50, 100]) =>
  imbalanceCost(fakeTeam(of), engine, pathWith, mm, [3000, 4000, 5000], [3000, 5000]);

test('the line through zero finds what was put in', async () => {
  const found = await cost();
  expect(found.perMillimetre).toBeCloseTo(0.05, 6);
  expect(found.steps.map(({ imbalance }) => imbalance)).toEqual([0, 20, 50, 100]);
  expect(found.steps[3]!.cost).toBeCloseTo(5, 6);
  expect(found.isWithinNoise).toBe(false);
});

test('what settling leaves open is no cost', async () => {
  expect((await cost(undefined, [2])).isWithinNoise).toBe(true);
});

test('a speed that fails is not passed over in silence', async () => {
  const found = await cost((job) => (job.rpm === 4000 ? 'no' : inventedTorque(job)));
  expect([found.perMillimetre, found.steps[1]!.mean]).toEqual([null, null]);
});
