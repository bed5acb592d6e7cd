/**
 * The search for the lowest rest, on bodies with dozens of faces to rest on: corners drawn by seeded chance, every face of their
 * hull found by trying all triples. Most bodies have rests that letting go from the eight octants does not come to.
 */
import { expect, test } from 'vitest';
import { cross, dot, scale, sub, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Lowest } from '../../../../src/shop/making/heights/lowest';
import { lowestRest } from '../../../../src/shop/making/heights/rest';
import { settle } from '../../../../src/shop/making/heights/settle';
import { random } from '../../../random';
import { anyDirection } from './tubes';

function bodyOf(corners: readonly Vec3[]): Lowest {
  const at = (up: Vec3): Vec3 => corners.reduce((low, p) => (dot(p, up) < dot(low, up) ? p : low));
  return { at, height: (up) => -dot(at(up), up), centre: [0, 0, 0] };
}

/** The face nearest to the origin: no way up is lower than lying on it. */
function nearestFace(corners: readonly Vec3[]): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const [i, a] of corners.entries())
    for (const [j, b] of corners.slice(0, i).entries())
      for (const c of corners.slice(0, j)) {
        const normal = unit(cross(sub(b, a), sub(c, a)));
        const out = dot(normal, a) < 0 ? scale(normal, -1) : normal;
        const far = dot(out, a);
        if (far < nearest && corners.every((p) => dot(p, out) <= far + 1e-9)) nearest = far;
      }
  return nearest;
}

test('it finds the nearest face (seeds 1 to 40), where the octants alone do not always', () => {
  let octantsMiss = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const chance = random(seed);
    const corners = Array.from({ length: 24 }, () => scale(anyDirection(chance), chance.between(90, 130)));
    const body = bodyOf(corners);
    const nearest = nearestFace(corners);
    expect(nearest).toBeGreaterThan(0);
    expect(body.height(lowestRest(body)), `seed ${seed}`).toBeCloseTo(nearest, 4);
    const signs = [-1, 1];
    const octants = signs.flatMap((x) => signs.flatMap((y) => signs.map((z) => unit([x, y, z]))));
    if (Math.min(...octants.map((up) => body.height(settle(body, up)))) > nearest + 0.01) octantsMiss++;
  }
  expect(octantsMiss).toBeGreaterThan(2);
});
