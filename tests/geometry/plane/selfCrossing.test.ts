import { expect, test } from 'vitest';
import { circleLoop, type Loop, sampleLoop } from '../../../geometry';
import { selfCrossing } from '../../../geometry/plane/inside';
import { moveLoop } from '../../../geometry/plane/rigid';
import { random } from '../../random';

test('a circle, a slot and a D cross nothing', () => {
  expect(selfCrossing(circleLoop([3, 4], 5))).toBeNull();
  expect(
    selfCrossing([
      [0, 0, 0],
      [10, 0, 1],
      [10, 4, 0],
      [0, 4, 1],
    ]),
  ).toBeNull();
  expect(
    selfCrossing([
      [0, 0, 0.9],
      [0, 4, 0],
    ]),
  ).toBeNull();
});

test('straights, straight and arc, arc and arc, each at its place however turned', () => {
  const cases: readonly (readonly [Loop, readonly [number, number]])[] = [
    [
      [
        [0, 0, 0],
        [10, 10, 0],
        [10, 0, 0],
        [0, 10, 0],
      ],
      [5, 5],
    ],
    // Half a circle to the right of its chord from (0, 4) down to (0, −4) is crossed at (4, 0) by what comes back along y = 0.
    [
      [
        [0, 4, -1],
        [0, -4, 0],
        [-8, -4, 0],
        [-8, 0, 0],
        [9, 0, 0],
        [9, 8, 0],
        [0, 8, 0],
      ],
      [4, 0],
    ],
  ];
  for (const [loop, at] of cases)
    for (const turn of [0, 0.7, 2.1]) {
      const rigid = { mirrored: turn > 2, turn, shift: [20, -7] as const };
      const found = selfCrossing(moveLoop(loop, rigid))!;
      const x = rigid.mirrored ? -at[0] : at[0];
      const wanted = [
        20 + x * Math.cos(turn) - at[1] * Math.sin(turn),
        -7 + x * Math.sin(turn) + at[1] * Math.cos(turn),
      ] as const;
      expect(Math.hypot(found[0] - wanted[0], found[1] - wanted[1])).toBeLessThan(1e-9);
    }
});

test('agrees with the crossings of fine polygons, seed 21', () => {
  const chance = random(21);
  let crossed = 0;
  for (let k = 0; k < 80; k++) {
    const n = 4 + Math.floor(4 * chance());
    const loop: Loop = Array.from({ length: n }, (_, i) => {
      const a = (2 * Math.PI * i) / n;
      const r = 10 + 6 * chance();
      return [r * Math.cos(a), r * Math.sin(a), chance() < 0.4 ? 0 : 2.4 * (chance() - 0.5)];
    });
    const slow = slowCrossing(sampleLoop(loop, 3e-4));
    if (slow) crossed++;
    expect(selfCrossing(loop) !== null).toBe(slow);
  }
  expect(crossed).toBeGreaterThan(10);
  expect(crossed).toBeLessThan(70);
});

function slowCrossing(points: readonly (readonly [number, number])[]): boolean {
  const n = points.length;
  const side = (a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]) =>
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [a, b, c, d] = [points[i]!, points[i + 1]!, points[j]!, points[(j + 1) % n]!];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true;
    }
  return false;
}
