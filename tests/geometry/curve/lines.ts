/** Random runners as points: any angles and planes, bends that fit, now and then with no straight between. */
import { fromBendTable } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import type { Random } from '../../random';

export type Sketch = { readonly points: readonly Vec3[]; readonly radii: readonly number[]; readonly up: Vec3 };

export function randomSketch(next: Random): Sketch {
  const rows = Array.from({ length: next.whole(0, 6) }, () => ({
    length: next() < 0.2 ? 0 : next.between(1, 150),
    rotation: next.between(-180, 180),
    angle: next.between(0.5, 165),
    radius: next.between(30, 110),
  }));
  const component = () => next.between(-1, 1);
  const up: Vec3 = [component(), component(), component()];
  const start = {
    position: [next.between(-500, 500), next.between(-500, 500), next.between(-500, 500)] as Vec3,
    direction: [component(), component(), component()] as Vec3,
    up,
  };
  const last = { length: next.between(10, 100), rotation: 0, angle: 0, radius: 0 };
  return { ...fromBendTable(start, { clocking: 0, rows: [...rows, last] }), up };
}

export const seeds = (count: number, from = 1): number[] => Array.from({ length: count }, (_, i) => from + i);

/** A bend stored as several points in one plane, legs of `lead` before and after. */
export function bendInParts(radius: number, degrees: readonly number[], lead: number): Vec3[] {
  const points: Vec3[] = [[-lead, 0, 0]];
  let turned = 0;
  const on = (angle: number, r: number): Vec3 => [r * Math.sin(angle), radius - r * Math.cos(angle), 0];
  for (const part of degrees) {
    const t = (part * Math.PI) / 180;
    points.push(on(turned + t / 2, radius / Math.cos(t / 2)));
    turned += t;
  }
  const [x, y] = on(turned, radius);
  points.push([x + lead * Math.cos(turned), y + lead * Math.sin(turned), 0]);
  return points;
}
