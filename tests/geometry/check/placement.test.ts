/** Rule `placement`: a movable collector stays in its box and within its tilt, its inlets with it. */
import { expect, test } from 'vitest';
import { check, rotate } from '../../../geometry';
import type { Placement } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { header } from './header';

const found = (placement: Placement, axis?: Vec3) =>
  check(header({ merge: { placement, ...(axis ? { axis } : {}) } })).problems.filter((p) => p.rule === 'placement');
// Corners in any order; the collector stands at (50, 300, −200).
const box = (short: number): Placement => ({
  within: [
    [90, 300 - short, -150],
    [10, 100, -250],
  ],
  tilt: 15,
});

test('position: within 0.01 mm of the box', () => {
  expect(found(box(0.0099))).toEqual([]);
  const [problem] = found(box(0.0101));
  expect(problem).toMatchObject({ where: 'merges/m1/position', allowed: 0 });
  expect(problem!.found).toBeCloseTo(0.0101, 9);
  expect(problem!.message).toMatch(/stands 0\.01 mm outside the space given to it: .+/);
});

test('axis: within 0.01° of the tilt from the axis given', () => {
  const given: Vec3 = [0, 0, -1];
  const tilted = (degrees: number): Vec3 => rotate(given, [1, 0, 0], (degrees * Math.PI) / 180);
  const placement = { ...box(0), axis: given };
  expect(found(placement, tilted(15.0099))).toEqual([]);
  const [problem] = found(placement, tilted(15.0101));
  expect(problem).toMatchObject({ where: 'merges/m1/axis', allowed: 15 });
  expect(problem!.found).toBeCloseTo(15.0101, 6);
  expect(problem!.message).toMatch(/is tilted 15\.01°; 15° is allowed: .+/);
});
