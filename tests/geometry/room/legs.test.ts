/** A path told in few legs must lead where the path led: put together again by another way, and close to it in between. */
import { describe, expect, test } from 'vitest';
import { legsOf, type RemovalPose } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';

const at = (move: Vec3, turn: Vec3 = [0, 0, 0]): RemovalPose => ({ move, turn });
const close = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** By the exponential series of the cross product, not by a formula for turns. */
function spun(v: Vec3, w: Vec3): Vec3 {
  let [sum, term]: [Vec3, Vec3] = [v, v];
  for (let k = 1; k < 40; k++) {
    const [x, y, z] = term;
    term = [(w[1] * z - w[2] * y) / k, (w[2] * x - w[0] * z) / k, (w[0] * y - w[1] * x) / k];
    sum = [sum[0] + term[0], sum[1] + term[1], sum[2] + term[2]];
  }
  return sum;
}

describe('legs', () => {
  test('small steps one way are one leg; a corner is two', () => {
    const path = [0, 10, 20, 40].map((y) => at([0, y, 0]));
    expect(legsOf(path, [5, 5, 5])).toEqual([{ move: [0, 40, 0], turn: [0, 0, 0] }]);
    const corner = [...path, at([0, 40, -30]), at([0, 40, -100])];
    expect(legsOf(corner, [0, 0, 0]).map(({ move }) => move)).toEqual([
      [0, 40, 0],
      [0, 0, -100],
    ]);
  });

  test('turning on the spot moves the middle nowhere, wherever the origin lies', () => {
    const middle: Vec3 = [300, 200, -100];
    const turns = [0, 0.1, 0.2, 0.4].map((angle): RemovalPose => {
      const turn: Vec3 = [0, 0, angle];
      const [x, y, z] = spun(middle, turn);
      return at([middle[0] - x, middle[1] - y, middle[2] - z], turn);
    });
    const [leg, ...more] = legsOf(turns, middle);
    expect(more).toEqual([]);
    expect(close(leg!.move, [0, 0, 0])).toBeLessThan(1e-9);
    expect(close(leg!.turn, [0, 0, 0.4])).toBeLessThan(1e-9);
  });

  test('back and forth is not one leg', () => {
    expect(legsOf([at([0, 0, 0]), at([0, 60, 0]), at([0, 30, 0])], [0, 0, 0])).toHaveLength(2);
  });

  test('nothing to go, nothing to tell', () => {
    expect(legsOf([at([0, 0, 0])], [0, 0, 0])).toEqual([]);
    expect(legsOf([at([0, 0, 0]), at([0, 0, 0])], [0, 0, 0])).toEqual([]);
  });

  test('of 200 wandering paths (seed 7), all legs one after another end where the path ends', () => {
    const r = random(7);
    const any = (k: number): Vec3 => [r.between(-k, k), r.between(-k, k), r.between(-k, k)];
    for (let k = 0; k < 200; k++) {
      const path = Array.from({ length: 6 }, () => at(any(200), any(0.6)));
      const middle = any(300);
      const start = path[0]!;
      const [x, y, z] = spun(middle, start.turn);
      let place: Vec3 = [x + start.move[0], y + start.move[1], z + start.move[2]];
      let pointer = spun([1, 2, 3], start.turn);
      for (const { move, turn } of legsOf(path, middle)) {
        place = [place[0] + move[0], place[1] + move[1], place[2] + move[2]];
        pointer = spun(pointer, turn);
      }
      const end = path.at(-1)!;
      const [u, v, w] = spun(middle, end.turn);
      expect(close(place, [u + end.move[0], v + end.move[1], w + end.move[2]])).toBeLessThan(1e-9);
      expect(close(pointer, spun([1, 2, 3], end.turn))).toBeLessThan(1e-9);
    }
  });
});
