/** A collector pressed into a scan: every answer holds every rule, and it comes as near as the scan lets it. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { check, follower, resolveHeader } from '../../../geometry';
import { minimumOnTriangle } from '../../../geometry/clearance/convexMinimum';
import { frustumShape } from '../../../geometry/clearance/shapes';
import { unit } from '../../../geometry/vector';
import { parseDesign } from '../../../shared/design/parse';
import type { Design, MeshSurrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { scannedBay } from '../../bench/bay';

const STEP = 8;
const SCAN: MeshSurrounding = { id: 'scan', shape: 'mesh', file: 'scan.stl', clearance: 5 };

const given = parseDesign(readFileSync('public/examples/four-4-1.evenrun.json', 'utf8'));
const design: Design = { ...given, surroundings: [SCAN] };
const merge = design.merges[0]!;
const soup = scannedBay(given, 60_000, 3);
const meshes = new Map([['scan.stl', soup]]);

const moved = ([x, y, z]: Vec3, by: number): Design => ({
  ...design,
  merges: design.merges.map((m) =>
    m === merge ? { ...m, position: [m.position[0] + by * x, m.position[1] + by * y, m.position[2] + by * z] } : m,
  ),
});

/** By every triangle in turn. */
function gapOf(now: Design): number {
  const { body } = resolveHeader(now).merges.get(merge.id)!;
  const { signedDistance, centre, reach } = frustumShape(body);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < soup.length; i += 9) {
    const [a, b, c] = [0, 3, 6].map((k) => [...soup.subarray(i + k, i + k + 3)]) as unknown as [Vec3, Vec3, Vec3];
    if (Math.hypot(a[0] - centre[0], a[1] - centre[1], a[2] - centre[2]) > reach + 30) continue;
    least = Math.min(least, minimumOnTriangle(signedDistance, a, b, c).value);
  }
  return least;
}

const axis = unit(merge.axis);

it.each([
  ['along its axis', axis],
  ['down', [0, 0, -1]],
  ['aslant', unit([axis[0] + 0.4, axis[1] - 0.3, axis[2] - 0.5])],
] as [string, Vec3][])('%s', (_, way) => {
  const hand = follower(design, meshes, { kind: 'merge', id: merge.id });
  expect(hand.start.follows).toBe(true);
  let answer = hand.start;
  for (let step = 1; step <= 16; step++) {
    answer = hand.ask(structuredClone(moved(way, step * STEP)));
    expect(check(structuredClone(answer.design), meshes).problems).toEqual([]);
  }
  for (let more = 0; more < 40 && answer.more; more++) answer = hand.further();
  expect(check(structuredClone(answer.design), meshes).problems).toEqual([]);
  expect(answer.short).toBeGreaterThan(20);
  expect(answer.limits).toContainEqual({
    rule: 'merge-body',
    where: `merges/${merge.id}`,
    other: 'surroundings/scan',
  });
  const gap = gapOf(answer.design);
  expect(gap).toBeGreaterThan(0);
  expect(gap).toBeLessThan(0.2);
});
