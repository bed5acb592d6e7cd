/** Runners to weld up: the examples, layouts that are known, and random ones with random shelves. */
import { readdirSync, readFileSync } from 'node:fs';
import { type Header, resolveHeader } from '../../../../geometry';
import { parseDesign } from '../../../../shared/design/parse';
import type { Design, StockBend, Workshop } from '../../../../shared/design/types';
import type { WeldedTube } from '../../../../src/shop/making/report';
import { weldedTube } from '../../../../src/shop/making/welded/weldedTube';
import { type Part, partsOf } from '../../../../src/shop/part';
import { randomSketch } from '../../../geometry/curve/lines';
import { layoutNames, loadLayout } from '../../../layouts/load';
import { random } from '../../../random';
import { oneRunner } from '../../designs';

const EXAMPLES = new URL('../../../../public/examples/', import.meta.url);
const SUFFIX = '.evenrun.json';

export const examples: readonly (readonly [string, Design])[] = readdirSync(EXAMPLES)
  .filter((file) => file.endsWith(SUFFIX))
  .sort()
  .map((file) => [file.slice(0, -SUFFIX.length), parseDesign(readFileSync(new URL(file, EXAMPLES), 'utf8'))]);

export const known = (): (readonly [string, Design])[] =>
  layoutNames('known').map((name) => [name, loadLayout('known', name).design]);

export type Made = { readonly header: Header; readonly parts: readonly Part[]; readonly tubes: readonly WeldedTube[] };

export function madeOf(design: Design, workshop?: Workshop): Made {
  const header = resolveHeader(workshop ? { ...design, workshop } : design);
  const { parts } = partsOf(header);
  return { header, parts, tubes: parts.map((part) => weldedTube(header, part)) };
}

export const TUBE = { outsideDiameter: 42.4, wall: 1.5, material: 'stainless-304' } as const;

export const bend = (angle: number, radius = 60, legs: readonly [number, number] = [100, 100]): StockBend => ({
  ...TUBE,
  id: `${angle}-${radius}-${legs.join('-')}`,
  radius,
  angle,
  legs,
});

/** Bends of any angle and plane, now and then continuous or with no straight between; a shelf that has every radius of it. */
export function randomWelded(seed: number): Design {
  const next = random(seed);
  const sketch = randomSketch(next);
  const design = oneRunner(
    { points: sketch.points, radii: sketch.radii },
    { tooling: next() < 0.5 ? {} : { trimStart: next.between(0, 20), trimEnd: next.between(0, 20) } },
  );
  const radii = [...new Set(sketch.radii)];
  const bends = radii.flatMap((radius, i) =>
    [180, 90, 45]
      .filter(() => next() < 0.7)
      .concat(next() < 0.3 ? [next.between(20, 170)] : [])
      .concat([next() < 0.5 ? 180 : 90])
      .map((angle, k) => ({
        ...bend(angle, radius, [next.between(0, 150), next.between(0, 250)]),
        id: `b${i}-${k}`,
      })),
  );
  const workshop = { bends, kerf: 1e-4, weldGap: next.between(0, 1), weldShrinkage: next.between(0, 1.5) };
  const [a, b] = sketch.points;
  const direction = [b![0] - a![0], b![1] - a![1], b![2] - a![2]] as const;
  const port = { ...design.ports[0]!, position: a!, direction, up: sketch.up };
  return { ...design, ports: [port], workshop };
}
