/** Balancing and laying beside a bar that a rolling, hot header would touch: what comes holds over all of the motion. */
import { describe, expect, test } from 'vitest';
import { balance, check, pointAt, resolveHeader, router } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { loadLayout } from '../../layouts/load';
import { firstLayout } from '../route/firstLayout';

const { design: base, meshes } = loadLayout('known', 'c4-v8-bank-shaft');
const motion: NonNullable<Design['motion']> = {
  rock: { position: [0, -150, -150], axis: [1, 0, 0], angles: [-1.5, 2] },
  heat: { temperature: 600 },
};

/** A bar along the second runner's tube, clear of it by a hair while nothing moves. */
function beside(moves: boolean): Design {
  const r = resolveHeader(base).runners[1]!;
  const { position: p, tangent } = pointAt(r.centerline!, 0.5 * r.centerline!.length);
  const out: Vec3 = [0, 1, 0];
  const along = out[0] * tangent[0] + out[1] * tangent[1] + out[2] * tangent[2];
  const way = out.map((x, k) => x - along * tangent[k]!) as unknown as Vec3;
  const far = (r.tubeRadius + 6 + 5 + 0.5) / Math.hypot(...way);
  const at: Vec3 = [p[0] + far * way[0], p[1] + far * way[1], p[2] + far * way[2]];
  const bar = {
    id: 'bar',
    shape: 'capsule',
    a: [at[0] - 8, at[1], at[2]],
    b: [at[0] + 8, at[1], at[2]],
    radius: 6,
    clearance: 5,
  } as const;
  return { ...base, surroundings: [bar], ...(moves ? { motion } : {}) };
}

describe('a bar that the header comes near only as it moves', () => {
  test('holds while it stands still, and not as it moves: the message says when', () => {
    expect(check(beside(false), meshes).problems.filter((p) => p.rule === 'surroundings')).toEqual([]);
    const broken = check(beside(true), meshes).problems.filter((p) => p.rule === 'surroundings');
    expect(broken.length).toBeGreaterThan(0);
    expect(broken[0]!.message).toMatch(/with the engine rolled -?\d+(\.\d+)?°( and hot)?/);
  });
  test('balance comes to a header that holds all over the motion', () => {
    const { design, report } = balance(beside(true), meshes);
    expect(report.problems.map((p) => p.message)).toEqual([]);
    expect(check(design, meshes).clearance.surroundings!.margin).toBeGreaterThan(-1e-3);
  });
  test('balance that knows of no motion does not', () => {
    const { design } = balance(beside(false), meshes);
    expect(check({ ...design, motion }, meshes).problems.map((p) => p.rule)).toContain('surroundings');
  });
  test('a layout from nothing holds too', { timeout: 60_000 }, () => {
    const found = firstLayout(router(beside(true), meshes, { seed: 3 }), 12);
    expect(found).not.toBeNull();
    expect(check(found!.design, meshes).problems.map((p) => p.message)).toEqual([]);
  });
});
