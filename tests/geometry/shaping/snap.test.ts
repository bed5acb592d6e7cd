/** Snapping: planes alone and crossed, lines, round angles, a track; nothing beyond reach. */
import { describe, expect, it } from 'vitest';
import {
  add,
  angleBetween,
  bendTargets,
  distance,
  dot,
  pathOf,
  placeTargets,
  resolveHeader,
  type SnapTarget,
  snap,
  snapTurn,
  sub,
} from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { four, pull } from './designs';

const level: SnapTarget = { kind: 'plane', from: [5, 5, 100], normal: [0, 0, 1], words: 'level' };
const abreast: SnapTarget = { kind: 'plane', from: [40, 0, 0], normal: [1, 0, 0], words: 'abreast' };

describe('snap', () => {
  it('goes to a plane within reach and says so', () => {
    expect(snap([0, 0, 103], [level], 4)).toEqual({
      at: [0, 0, 100],
      words: ['level'],
      guides: [
        [
          [5, 5, 100],
          [0, 0, 100],
        ],
      ],
    });
  });

  it('stays where nothing is near', () => {
    expect(snap([0, 0, 105], [level, abreast], 4)).toBeNull();
  });

  it('meets two planes at once', () => {
    const met = snap([42, 7, 99], [level, abreast], 4)!;
    expect(met.at).toEqual([40, 7, 100]);
    expect([...met.words].sort()).toEqual(['abreast', 'level']);
  });

  it('never goes farther than its reach, over seeded places (351)', () => {
    const rnd = random(351);
    const header = resolveHeader(four);
    for (const { id } of four.runners)
      pathOf(four, id).bends.forEach((range, bend) => {
        const targets = bendTargets(header, id, bend);
        for (let k = 0; k < 30; k++) {
          const asked = add(four.runners.find((r) => r.id === id)!.points![range.first]!, pull(rnd));
          const met = snap(asked, targets, 5);
          if (met) expect(distance(met.at, asked)).toBeLessThanOrEqual(5 + 1e-9);
        }
      });
  });

  it('makes a bend round by five degrees', () => {
    const [from, to]: Vec3[] = [
      [0, 0, 0],
      [200, 0, 0],
    ];
    const targets: SnapTarget[] = [{ kind: 'angle', words: '', from: from!, to: to!, step: (5 * Math.PI) / 180 }];
    // 45.6° over 100 + 100: half of it at each side.
    const asked: Vec3 = [100, 100 * Math.tan((22.8 * Math.PI) / 180), 0];
    const met = snap(asked, targets, 4)!;
    expect((angleBetween(sub(met.at, from!), sub(to!, met.at)) * 180) / Math.PI).toBeCloseTo(45, 9);
    expect(met.words).toEqual(['bend of 45°']);
  });

  it('keeps to a track: meets planes along it only', () => {
    const track = { from: [0, 0, 0] as Vec3, way: [0, 0, 1] as Vec3 };
    expect(snap([3, 3, 98], [level, abreast], 4, track)!.at).toEqual([0, 0, 100]);
    expect(snap([39, 3, 50], [abreast], 4, track)).toBeNull();
  });

  it('rounds a turn only where it is near', () => {
    expect(snapTurn(0.99, 0.5, 0.05)).toBeCloseTo(1, 12);
    expect(snapTurn(0.8, 0.5, 0.05)).toBeNull();
  });
});

describe('targets', () => {
  const header = resolveHeader(four);

  it('offers the plane of the bends beside it, in which the rotation is 0 or 180°', () => {
    const { id } = four.runners.find((r) => pathOf(four, r.id).bends.length >= 3)!;
    const path = pathOf(four, id);
    const plane = bendTargets(header, id, 1).find((t) => t.words === 'in one plane with bend 1')!;
    if (plane.kind !== 'plane') throw new Error('not a plane');
    const [a, b, , d] = path.points;
    for (const p of [a!, b!, d!]) expect(dot(sub(p, plane.from), plane.normal)).toBeCloseTo(0, 6);
  });

  it('names neighbours and collectors, never itself', () => {
    const words = bendTargets(header, four.runners[1]!.id, 0).map((t) => t.words);
    expect(words.some((w) => w.startsWith('level with bend 1 of'))).toBe(true);
    expect(words).not.toContain('level with bend 1');
    const { id } = four.merges[0]!;
    const places = placeTargets(header, { kind: 'merge', id }).map((t) => t.words);
    expect(places).toContain(`level with port ${four.ports[0]!.id}`);
    expect(places.join()).not.toContain(`collector ${id}`);
  });
});
