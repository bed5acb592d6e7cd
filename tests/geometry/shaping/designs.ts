/** Routed designs to shape: the examples that the app opens, and what must hold of any edit of them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { angleBetween, type BendRow, distance, fromBendTable, resolveHeader, sub } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { designWith } from '../../app/designs';
import type { Random } from '../../random';

const read = (path: string) => parseDesign(readFileSync(join(import.meta.dirname, '../../..', path), 'utf8'));

export const four = read('public/examples/four-4-1.evenrun.json');
export const pairs = read('public/examples/four-4-2-1.evenrun.json');
export const eight = read('public/examples/v8-both-banks.evenrun.json');
/** One runner with a bend of 176°, stored as two points, between two others; or as its first. */
export const withUBend = alongRows([
  { length: 80, rotation: 0, angle: 40, radius: 60 },
  { length: 90, rotation: 70, angle: 176, radius: 60 },
  { length: 120, rotation: -50, angle: 65, radius: 60 },
  { length: 70, rotation: 0, angle: 0, radius: 0 },
]);
export const withUBendFirst = alongRows([
  { length: 80, rotation: 0, angle: 176, radius: 60 },
  { length: 120, rotation: -50, angle: 65, radius: 60 },
  { length: 90, rotation: 100, angle: 50, radius: 60 },
  { length: 70, rotation: 0, angle: 0, radius: 0 },
]);

function alongRows(rows: readonly BendRow[]): Design {
  const start = { position: [0, 0, 0], direction: [0, 1, 0], up: [0, 0, 1] } as const;
  const { points } = fromBendTable(start, { clocking: 20, rows });
  const design = designWith(points);
  const axis = sub(points.at(-1)!, points.at(-2)!);
  const merge = { ...design.merges[0]!, position: points.at(-1)!, axis, up: [axis[1], axis[2], axis[0]] as Vec3 };
  return { ...design, merges: [merge] };
}

export const examples = { four, pairs, eight };

export const pull = (rnd: Random, most = 30): Vec3 => [
  rnd.between(-most, most),
  rnd.between(-most, most),
  rnd.between(-most, most),
];

/** Every other runner is the same object, and so writes the same bytes. */
export function expectOthersUntouched(before: Design, after: Design, runner: string): void {
  expect({ ...after, runners: [] }).toEqual({ ...before, runners: [] });
  before.runners.forEach((r, i) => {
    if (r.id !== runner) expect(after.runners[i]).toBe(r);
  });
}

/** Starts where and as its port (or outlet) says, ends where and as its inlet says. mm, radians. */
export function expectEndsTrue(design: Design, runner: string, mm = 1e-6, radians = 1e-6): void {
  const { start, end, centerline } = resolveHeader(design).runners.find((r) => r.runner.id === runner)!;
  const { points, directions } = centerline!;
  expect(distance(points[0]!, start.position)).toBeLessThan(mm);
  expect(angleBetween(directions[0]!, start.direction)).toBeLessThan(radians);
  expect(distance(points.at(-1)!, end!.position)).toBeLessThan(mm);
  expect(angleBetween(sub(points.at(-1)!, points.at(-2)!), end!.direction)).toBeLessThan(radians);
}

/** The farthest that any point of any runner lies from where it was, mm. */
export function farthest(a: Design, b: Design): number {
  return Math.max(
    0,
    ...a.runners.flatMap((r, i) => (r.points ?? []).map((p, k) => distance(p, b.runners[i]!.points![k]!))),
  );
}
