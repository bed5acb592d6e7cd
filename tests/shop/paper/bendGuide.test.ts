/** Bend guides: arcs of the right radii about one centre, rays through it every 5°, as much of the bend as fits. mm. */
import { expect, test } from 'vitest';
import { resolveHeader } from '../../../geometry';
import type { Curve, Item, Point } from '../../../src/formats/drawing/drawing';
import { stockBends } from '../../../src/shop/packet/groups';
import { partsOf } from '../../../src/shop/part';
import { bendGuide } from '../../../src/shop/templates/bendGuide';
import { loadLayout } from '../../layouts/load';

const curvesIn = (items: readonly Item[], name: RegExp): Curve[] =>
  items.flatMap((item) =>
    item.kind === 'group'
      ? curvesIn(item.items, name)
      : item.kind === 'curve' && name.test(item.name ?? '')
        ? [item]
        : [],
  );
const textsIn = (items: readonly Item[]): string[] =>
  items.flatMap((i) => (i.kind === 'group' ? textsIn(i.items) : i.kind === 'text' ? [i.text] : []));

const angleOf = ([x, y]: Point): number => (Math.atan2(-y, x) * 180) / Math.PI;

test.each([
  [42.4, 63.6, 180, true],
  [63.5, 95.25, 90, true],
  [63.5, 152.4, 45, true],
  [76.2, 228.6, 45, false],
])('tube %d, radius %d: %d° of it, centre on the sheet: %s', (outsideDiameter, radius, sector, centred) => {
  const { items } = bendGuide({ outsideDiameter, radius }, 'a4', 'mm');
  for (const [name, r] of [
    [/^inside$/, radius - outsideDiameter / 2],
    [/^outside$/, radius + outsideDiameter / 2],
    [/^centerline$/, radius],
  ] as const) {
    const [curve] = curvesIn(items, name);
    for (const [x, y] of curve!.vertices) expect(Math.hypot(x, y)).toBeCloseTo(r, 9);
    const ends = [curve!.vertices[0]!, curve!.vertices.at(-1)!].map(([x, y]) => angleOf([x, y]));
    expect(ends[1]! - ends[0]!).toBeCloseTo(sector, 9);
    // tan(turn / 4), of half the sector an edge: less than 0 turns to the eye's left.
    expect(curve!.vertices[0]![2]).toBeCloseTo(-Math.tan((sector * Math.PI) / 180 / 8), 12);
  }
  const rays = curvesIn(items, /^ray \d+$/);
  expect(rays).toHaveLength(sector / 5 + 1);
  const first = angleOf(rays[0]!.vertices[0]!.slice(0, 2) as unknown as Point);
  for (const ray of rays) {
    const degrees = Number(ray.name!.slice(4));
    for (const [x, y] of ray.vertices) expect(angleOf([x, y]) - first).toBeCloseTo(degrees, 9);
    const [a, b] = ray.vertices.map(([x, y]) => Math.hypot(x, y));
    expect(a).toBeLessThan(radius - outsideDiameter / 2 - 5);
    expect(b).toBeGreaterThan(radius + outsideDiameter / 2 + 5);
    expect(ray.stroke!.width).toBe(degrees % 15 === 0 ? 0.35 : 0.18);
  }
  const words = textsIn(items);
  for (let d = 0; d <= sector; d += 5) expect(words).toContain(`${d}°`);
  expect(words.join(' ').includes('off this sheet')).toBe(!centred);
});

test('one for each radius and diameter in use', () => {
  const { parts } = partsOf(resolveHeader(loadLayout('known', 'c6-i3-3-1').design));
  const bends = stockBends(parts);
  const pairs = new Set(parts.flatMap((p) => p.line.radii.map((r) => `${p.resolved.tube.outsideDiameter} ${r}`)));
  expect(bends.map((b) => `${b.outsideDiameter} ${b.radius}`).sort()).toEqual([...pairs].sort());
});

test('a bend wider than any paper is refused', () => {
  expect(() => bendGuide({ outsideDiameter: 2000, radius: 4000 }, 'a4', 'mm')).toThrow(/does not fit/);
});
