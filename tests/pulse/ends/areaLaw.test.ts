/** An opening's area over time: at an instant, on the mean of a step, and until when it stays shut. */
import { expect, test } from 'vitest';
import { opening } from '../../../src/pulse/ends/areaLaw';
import { random } from '../../random';

const law = [
  [0.001, 0],
  [0.002, 4e-4],
  [0.002001, 4e-4],
  [0.004, 0],
  [0.006, 0],
  [0.007, 1e-4],
] as const;

test.each([1, 2])('the mean is that of many instants, seed %i', (seed) => {
  const draw = random(seed);
  const hole = opening(law, 0.8);
  for (let n = 0; n < 50; n++) {
    const from = draw.between(0, 0.008);
    const to = from + 10 ** draw.between(-6, -2.5);
    const many = 20_000;
    let sum = 0;
    for (let k = 0; k < many; k++) sum += hole.at(from + ((k + 0.5) * (to - from)) / many);
    expect(Math.abs(hole.mean(from, to) - sum / many)).toBeLessThan(1e-9);
  }
});

test('a spike shorter than a step is not missed', () => {
  const spike = opening(
    [
      [0, 0],
      [1e-3, 0],
      [1.001e-3, 1e-4],
      [1.002e-3, 0],
    ],
    1,
  );
  expect(spike.mean(0.9e-3, 1.1e-3) / (1e-10 / 2e-4)).toBeCloseTo(1, 9);
  expect(spike.mean(0, 0.9e-3)).toBe(0);
});

test('shut until it opens', () => {
  const hole = opening(law, 0.8);
  expect(hole.shutUntil(0)).toBe(0.001);
  expect(hole.shutUntil(0.003)).toBe(0.003);
  expect(hole.shutUntil(0.005)).toBe(0.006);
  expect(opening(0, 1).shutUntil(3)).toBe(Number.POSITIVE_INFINITY);
  expect(
    opening(
      [
        [0, 1e-4],
        [1, 0],
      ],
      1,
    ).shutUntil(2),
  ).toBe(Number.POSITIVE_INFINITY);
});
