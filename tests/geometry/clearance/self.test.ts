import { expect, test } from 'vitest';
import { centerline, fromBendTable } from '../../../geometry';
import { chain } from '../../../geometry/clearance/chain';
import { selfGap } from '../../../geometry/clearance/self';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { self } from './bruteForce';
import { LIMIT } from './lines';

test.each(Array.from({ length: 25 }, (_, i) => i + 1))('coiling tubes against brute force, seed %i', (seed) => {
  const next = random(seed);
  const radius = next.between(12, 32);
  const bend = () => ({
    length: next.between(0, 60),
    rotation: next.between(-40, 40),
    angle: next.between(60, 160),
    radius: radius * next.between(1.6, 3),
  });
  const rows = [bend(), bend(), bend(), { length: next.between(20, 150), rotation: 0, angle: 0, radius: 0 }];
  const start = { position: [0, 0, 0] as Vec3, direction: [1, 0, 0] as Vec3, up: [0, 0, 1] as Vec3 };
  const { points, radii } = fromBendTable(start, { clocking: 0, rows });
  const line = centerline(points, radii);
  const slow = self(line, radius, 3 * radius);
  const fast = selfGap(chain(line, radius)!, 3 * radius, Number.POSITIVE_INFINITY)!;
  expect(Math.abs(fast.gap - slow)).toBeLessThan(LIMIT);
  expect(selfGap(chain(line, radius)!, 3 * radius, fast.gap - LIMIT)).toBeNull();
});

const u = centerline(
  [
    [0, 0, 0],
    [300, 0, 0],
    [300, 100, 0],
    [0, 100, 0],
  ],
  [50, 50],
);

test('the legs of a U are a bend’s diameter apart', () => {
  // So far apart along the tube that only the legs count.
  expect(selfGap(chain(u, 40)!, 200, Number.POSITIVE_INFINITY)!.gap).toBeCloseTo(20, 2);
  expect(selfGap(chain(u, 50.2)!, 200, 0)!.gap).toBeCloseTo(-0.4, 2);
});

test('within the bend itself, parts just far enough apart are a chord apart', () => {
  expect(selfGap(chain(u, 40)!, 120, Number.POSITIVE_INFINITY)!.gap).toBeCloseTo(100 * Math.sin(1.2) - 80, 1);
});
