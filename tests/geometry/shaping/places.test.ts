/** Collectors, ports and surroundings under a hand: the runners' ends follow, and the opposite move brings them back. */
import { describe, expect, it } from 'vitest';
import {
  distance,
  moveBoxFace,
  moveCapsuleEnd,
  moveMerge,
  movePlane,
  movePort,
  moveSurrounding,
  scale,
  turnMerge,
} from '../../../geometry';
import type { Box, Capsule, Cylinder, Plane } from '../../../shared/design/types';
import { random } from '../../random';
import { examples, expectEndsTrue, farthest, four, pairs, pull } from './designs';

const WRITTEN = 2e-4;

describe('collectors and ports, seed 341', () => {
  it('carries the ends of every runner that enters or leaves, and nothing else', () => {
    const rnd = random(341);
    for (const design of Object.values(examples))
      for (const { id } of design.merges) {
        const by = pull(rnd);
        const next = moveMerge(design, id, by);
        for (const [i, r] of next.runners.entries()) {
          const joined = r.to.merge === id || ('merge' in r.from && r.from.merge === id);
          expect(r === design.runners[i]).toBe(!joined);
          expectEndsTrue(next, r.id, WRITTEN, WRITTEN);
        }
        expect(farthest(design, moveMerge(next, id, scale(by, -1)))).toBeLessThan(1e-9);
      }
  });

  it('turns with its runners’ ends, and back', () => {
    const rnd = random(342);
    for (const { id } of pairs.merges) {
      const [about, angle] = [pull(rnd), rnd.between(-0.4, 0.4)];
      const next = turnMerge(pairs, id, about, angle);
      for (const r of next.runners) expectEndsTrue(next, r.id, WRITTEN, WRITTEN);
      expect(farthest(pairs, next)).toBeGreaterThan(0.1);
      expect(farthest(pairs, turnMerge(next, id, about, -angle))).toBeLessThan(1e-9);
    }
  });

  it('twists about its own axis without tilting it', () => {
    const { id, axis } = four.merges[0]!;
    const next = turnMerge(four, id, axis, 0.3);
    expect(next.merges[0]!.axis).toBe(axis);
  });

  it('writes down the axis that a tilt is measured from, once', () => {
    const [merge, ...rest] = four.merges;
    const placement = { within: [merge!.position, merge!.position] as const, tilt: 15 };
    const design = { ...four, merges: [{ ...merge!, placement }, ...rest] };
    const tilted = turnMerge(design, merge!.id, [1, 0, 0], 0.1).merges[0]!;
    expect(tilted.placement?.axis).toEqual(merge!.axis);
    expect(turnMerge(design, merge!.id, merge!.axis, 0.1).merges[0]!.placement?.axis).toBeUndefined();
  });

  it('moves a port with its runner’s start, its flange’s fasteners staying', () => {
    const rnd = random(343);
    for (const { id } of four.ports) {
      const by = pull(rnd);
      const next = movePort(four, id, by);
      expect(next.flanges).toBe(four.flanges);
      for (const r of next.runners) expectEndsTrue(next, r.id, WRITTEN, WRITTEN);
      expect(farthest(four, movePort(next, id, scale(by, -1)))).toBeLessThan(1e-9);
    }
  });
});

describe('surroundings', () => {
  const box: Box = { id: 'wall', shape: 'box', min: [10, 0, 0], max: [0, 20, 30] };
  const capsule: Capsule = { id: 'shaft', shape: 'capsule', a: [0, 0, 0], b: [100, 0, 0], radius: 12 };
  const design = { ...four, surroundings: [box, capsule] };

  it('move whole', () => {
    expect(moveSurrounding(design, 'shaft', [1, 2, 3]).surroundings![1]).toEqual({
      ...capsule,
      a: [1, 2, 3],
      b: [101, 2, 3],
    });
    expect(moveSurrounding(design, 'wall', [1, 2, 3]).surroundings![0]).toMatchObject({
      min: [11, 2, 3],
      max: [1, 22, 33],
    });
  });

  it('by one end of a capsule', () => {
    expect(moveCapsuleEnd(design, 'shaft', 'b', [0, 5, 0]).surroundings![1]).toMatchObject({
      a: [0, 0, 0],
      b: [100, 5, 0],
    });
  });

  it('by one end of a cylinder, which keeps an axis to be square to', () => {
    const cylinder: Cylinder = { ...capsule, shape: 'cylinder' };
    const own = { ...four, surroundings: [cylinder] };
    expect(moveCapsuleEnd(own, 'shaft', 'a', [0, 0, 7]).surroundings![0]).toMatchObject({
      a: [0, 0, 7],
      b: [100, 0, 0],
    });
    const shut = moveCapsuleEnd(own, 'shaft', 'a', [100, 0, 0]).surroundings![0] as Cylinder;
    expect(distance(shut.a, shut.b)).toBeCloseTo(1, 9);
    expect(shut.a[0]).toBeLessThan(shut.b[0]);
  });

  it('a plane along its normal alone, however the hand pulls', () => {
    const plane: Plane = { id: 'wing', shape: 'plane', position: [5, 300, 0], normal: [0, -2, 0] };
    const own = { ...four, surroundings: [plane] };
    expect(movePlane(own, 'wing', [40, 25, -9]).surroundings![0]).toEqual({ ...plane, position: [5, 325, 0] });
    expect(movePlane(own, 'wing', [40, 0, -9]).surroundings![0]).toEqual(plane);
    const leaning: Plane = { ...plane, normal: [0, 3, 4] };
    const moved = movePlane({ ...four, surroundings: [leaning] }, 'wing', [0, 5, 0]).surroundings![0] as Plane;
    expect(distance(moved.position, [5, 301.8, 2.4])).toBeLessThan(1e-9);
  });

  it('by one face of a box, whose corners come in any order, never through the other face', () => {
    expect(moveBoxFace(design, 'wall', 0, 'max', 5).surroundings![0]).toMatchObject({
      min: [15, 0, 0],
      max: [0, 20, 30],
    });
    expect(moveBoxFace(design, 'wall', 2, 'max', -500).surroundings![0]).toMatchObject({ max: [0, 20, 1] });
  });
});
