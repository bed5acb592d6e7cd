/** The made problems are what their maker makes, well formed, and leave room at every port and inlet. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { check } from '../../geometry';
import { boxShape, capsuleShape } from '../../geometry/clearance/shapes';
import { resolveHeader } from '../../geometry/header/resolve';
import { addScaled } from '../../geometry/vector';
import { parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { ownProblems } from './make/own';

const FOLDER = new URL('own/', import.meta.url);
const made = ownProblems();
const names = readdirSync(FOLDER).sort();

test('the folder holds what is made, no more and no less', () => {
  expect(names).toEqual([...made.keys()].sort());
  expect(names.length).toBeGreaterThanOrEqual(24);
});

/** Room of a tube's middle at its end and one least straight further in, mm. */
function roomAtEnds(design: Design): number {
  const header = resolveHeader(design);
  const od = Math.max(...design.runners.map((r) => design.tubes[r.tube]!.outsideDiameter));
  const ports = [...header.ports.values()].map((p) => [p.pose, 1] as const);
  const inlets = [...header.merges.values()].flatMap((m) => m.inlets.map((pose) => [pose, -1] as const));
  const places = [...ports, ...inlets].map(([pose, way]) =>
    addScaled(pose.position, pose.direction, way * (od / 2 + 10)),
  );
  const fields = (design.surroundings ?? []).map((s) => {
    if (s.shape !== 'box' && s.shape !== 'capsule') throw new Error('Boxes and bars only.');
    const { signedDistance } = s.shape === 'box' ? boxShape(s) : capsuleShape(s);
    return (...p: [number, number, number]) => signedDistance(...p) - (s.clearance ?? 0) - od / 2;
  });
  return Math.min(...places.flatMap((p) => fields.map((f) => f(...p))));
}

describe.each(names)('%s', (name) => {
  const text = readFileSync(new URL(name, FOLDER), 'utf8');
  const design = parseDesign(text);

  test('is made again byte for byte', () => {
    expect(made.get(name)).toBe(text);
  });
  test('is a problem: no runner is routed, nothing else is wrong', () => {
    const { ok, problems } = check(design);
    expect(ok).toBe(false);
    expect(problems.map((p) => p.rule)).toEqual(design.runners.map(() => 'routed'));
  });
  test('no port or inlet is swallowed', () => {
    expect(design.surroundings!.length).toBeGreaterThan(4);
    expect(roomAtEnds(design)).toBeGreaterThan(0);
  });
});

test('a port inside a box would be found', () => {
  const design = parseDesign(made.get('bent-1.evenrun.json')!);
  const [x, y, z] = design.ports[0]!.position;
  const swallowing = {
    id: 'more',
    shape: 'box',
    min: [x - 30, y - 30, z - 30],
    max: [x + 30, y + 60, z + 30],
  } as const;
  expect(roomAtEnds({ ...design, surroundings: [swallowing] })).toBeLessThan(0);
});
