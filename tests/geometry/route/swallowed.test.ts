/** Ends that something stands in the way of: said with names and amounts, and never of an end that a known layout uses. */
import { describe, expect, test } from 'vitest';
import { check, swallowedEnds } from '../../../geometry';
import { resolveHeader } from '../../../geometry/header/resolve';
import type { Design, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { layoutNames, loadLayout } from '../../layouts/load';

const { design: three } = loadLayout('classic', 'c6-i3-3-1');
const none = new Map();
const around = (design: Design, ...more: Surrounding[]): Design => ({
  ...design,
  surroundings: [...(design.surroundings ?? []), ...more],
});
const ball = (id: string, [x, y, z]: Vec3, radius: number, clearance = 0): Surrounding => ({
  ...{ id, shape: 'capsule', a: [x, y, z], b: [x, y, z + 0.001], radius, clearance },
});
const port = three.ports[0]!;
const merge = three.merges[0]!;
const inlets = resolveHeader(three).merges.get(merge.id)!.inlets;

describe('nothing stands in the way of an end', () => {
  test.each((['public', 'classic'] as const).flatMap((f) => layoutNames(f).map((name) => [f, name] as const)))(
    'of %s %s, which a known layout solves',
    (folder, name) => {
      const { design, meshes } = loadLayout(folder, name);
      expect(swallowedEnds(design, meshes)).toEqual([]);
    },
  );
});

describe('a port', () => {
  test('with a ball around it: which, by what, how deep', () => {
    const [found, ...more] = swallowedEnds(around(three, ball('starter', port.position, 30, 5)), none);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ rule: 'surroundings', where: `ports/${port.id}`, allowed: 5 });
    // Its middle lies on the disc that the tube starts with.
    expect(found!.found).toBeCloseTo(-30, 2);
    expect(found!.message).toMatch(/^The starter reaches [\d.]+ mm into .* leaves port p1: move one of them/);
  });

  test('beside the tube, just past and just within what is asked', () => {
    const tube = three.tubes[three.runners[0]!.tube]!.outsideDiameter / 2;
    // Along the crankshaft, so square to the way out; middle of the first straight.
    const at = (gap: number): Vec3 => [port.position[0] - tube - 4 - gap, port.position[1] + 10, port.position[2]];
    expect(swallowedEnds(around(three, ball('rod', at(6.01), 4, 6)), none)).toEqual([]);
    const [found] = swallowedEnds(around(three, ball('rod', at(5.9), 4, 6)), none);
    expect(found!.found).toBeCloseTo(5.9, 2);
    expect(found!.message).toContain('0.1 mm too close');
  });

  test('that meets something only as the engine rocks, which is said', () => {
    const tube = three.tubes[three.runners[0]!.tube]!.outsideDiameter / 2;
    const [x, y, z] = port.position;
    const rod = ball('rod', [x, y + 10, z + tube + 4 + 8], 4, 5);
    // The roll lifts the first straight by some 8 mm: 300 mm before it, 1.5 degrees.
    const moving: Design = {
      ...around(three, rod),
      motion: { rock: { position: [0, y - 300, z], axis: [1, 0, 0], angles: [-1.5, 1.5] } },
    };
    const lifted = 310 * Math.sin((1.5 * Math.PI) / 180);
    expect(swallowedEnds(around(three, rod), none)).toEqual([]);
    const found = swallowedEnds(moving, none).find((p) => p.where === `ports/${port.id}`);
    expect(found!.allowed).toBe(5);
    expect(Math.abs(Number(found!.found) - (8 - lifted))).toBeLessThan(0.7);
    expect(found!.message).toMatch(/^The rod, as the header moves, /);
    const bolted = moving.surroundings!.map((s) => ({ ...s, fixedTo: 'engine' as const }));
    expect(swallowedEnds({ ...moving, surroundings: bolted }, none)).toEqual([]);
  });

  test('of a locked runner is not laid, so not asked for', () => {
    const locked = { ...three, runners: three.runners.map((r, i) => (i === 0 ? { ...r, locked: true } : r)) };
    expect(swallowedEnds(around(locked, ball('starter', port.position, 30)), none)).toEqual([]);
  });

  test('what is found here fails in check however the header is laid', () => {
    const { design, meshes } = loadLayout('known', 'c6-i3-3-1');
    const blocked = around(design, ball('starter', port.position, 30));
    expect(check(blocked, meshes).problems.some((p) => p.rule === 'surroundings')).toBe(true);
  });
});

describe('an inlet', () => {
  const block = (k: number) => ball(`stop ${k}`, inlets[k - 1]!.position, 3);

  test('pinned and in the way: named', () => {
    const pinned: Design = {
      ...three,
      runners: three.runners.map((r, i) => ({ ...r, to: { merge: r.to.merge, inlet: i + 1 } })),
    };
    const found = swallowedEnds(around(pinned, block(2)), none);
    expect(found.map((p) => p.where)).toEqual([`merges/${merge.id}/inlets/2`]);
    expect(found[0]!.message).toContain('runner r2 enters inlet 2');
  });

  test('to choose: said only where too few are left', () => {
    const open = { ...three, runners: three.runners.map((r) => ({ ...r, to: { merge: r.to.merge } })) };
    expect(swallowedEnds(around(open, block(1)), none).map((p) => p.where)).toEqual([`merges/${merge.id}/inlets/1`]);
    const two = { ...open, runners: open.runners.slice(0, 2) };
    expect(swallowedEnds(around(two, block(1)), none)).toEqual([]);
  });

  test('of a collector that may be moved is left to the search', () => {
    const within = [merge.position, merge.position] as const;
    const movable = { ...three, merges: [{ ...merge, placement: { within } }] };
    expect(swallowedEnds(around(movable, block(1), block(2)), none)).toEqual([]);
  });
});
