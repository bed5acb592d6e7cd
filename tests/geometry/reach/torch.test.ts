/** Room for the torch against looking everywhere: a bar's axis in small steps, and every tube as a dense row of places. */
import { expect, test } from 'vitest';
import { add, centerline, chain, cross, distance, pointAt, reject, scale, torchReach, unit } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { randomSketch, seeds } from '../curve/lines';

const RADIUS = 15;
const TORCH = 8;

test.each(seeds(30))('as dense sampling finds it, seed %i', (seed) => {
  const next = random(seed);
  const sketch = randomSketch(next);
  const line = centerline(sketch.points, sketch.radii);
  const tube = chain(line, RADIUS)!;
  const room = next.between(20, 120);
  const at = pointAt(line, next.between(0.2, 0.8) * line.length);
  const aside: Vec3 = [next.between(-1, 1), next.between(-1, 1), next.between(-1, 1)];
  const first = unit(reject(aside, at.tangent));
  const second = cross(at.tangent, first);
  // Balls along it are a little more than the tube at its flat ends, and without those near the ends a little less.
  const row = Array.from({ length: Math.ceil(line.length) + 1 }, (_, i) => pointAt(line, i).position);
  const inner = row.slice(RADIUS, -RADIUS - 1);
  const least = (places: readonly Vec3[], out: Vec3): number => {
    let nearest = Number.POSITIVE_INFINITY;
    for (let t = RADIUS + TORCH; t <= RADIUS + room - TORCH; t += 1) {
      const p = add(at.position, scale(out, t));
      for (const q of places) nearest = Math.min(nearest, distance(p, q) - RADIUS);
    }
    return nearest - TORCH;
  };
  const found = torchReach(tube, new Map([['twin', tube]]), at, aside, room);
  let surely = 0;
  let perhaps = 0;
  for (let k = 0; k < 72; k++) {
    const angle = (k * Math.PI) / 36;
    const out = add(scale(first, Math.cos(angle)), scale(second, Math.sin(angle)));
    // Steps and places a millimetre apart err by less than this, and its own skin touches by intent.
    if (least(row, out) > -0.04) surely++;
    if (least(inner, out) > -1.2) perhaps++;
  }
  expect(found.free).toBeGreaterThanOrEqual(5 * surely - 1e-9);
  expect(found.free).toBeLessThanOrEqual(5 * perhaps + 1e-9);
  expect(found.bySelf).toBe(found.free < 360);
  // The same tube once more takes the same directions.
  expect(found.freeInPlace).toBe(found.free);
  expect(found.byOthers).toEqual(found.free < 360 ? ['twin'] : []);
});
