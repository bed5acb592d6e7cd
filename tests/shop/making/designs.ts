/** Whole designs and tubes drawn by seeded chance, for the tests of how tubes are made. */
import { readdirSync, readFileSync } from 'node:fs';
import { fromBendTable, type Header, resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design, Runner, Tooling, Tube, Workshop } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { bentTubes } from '../../../src/shop/making/bent/bentTubes';
import type { BentTube } from '../../../src/shop/making/report';
import { type Part, partsOf } from '../../../src/shop/part';
import { layoutNames, loadLayout } from '../../layouts/load';
import { type Random, random } from '../../random';
import { oneRunner } from '../designs';

const EXAMPLES = new URL('../../../public/examples/', import.meta.url);

/** Every example and every known layout. */
export const wholeDesigns = (): { name: string; design: Design }[] => [
  ...readdirSync(EXAMPLES)
    .filter((file) => file.endsWith('.evenrun.json'))
    .sort()
    .map((name) => ({ name, design: parseDesign(readFileSync(new URL(name, EXAMPLES), 'utf8')) })),
  ...layoutNames('known').map((name) => ({ name, design: loadLayout('known', name).design })),
];

export type Shape = {
  readonly length: number;
  readonly rotation: number;
  readonly angle: number;
  readonly radius: number;
};

/** From the origin along +Y, up +Z. */
export function pointsOf(shapes: readonly Shape[], last: number): { points: Vec3[]; radii: number[] } {
  const start = { position: [0, 0, 0], direction: [0, 1, 0], up: [0, 0, 1] } as const;
  const rows = [...shapes, { length: last, rotation: 0, angle: 0, radius: 0 }];
  return fromBendTable(start, { clocking: 0, rows });
}

export function randomShapes(chance: Random, { most = 6, least = 0 } = {}): { shapes: Shape[]; last: number } {
  const shapes = Array.from({ length: chance.whole(1, most) }, () => ({
    length: chance.between(least, 150),
    rotation: chance.between(-180, 180),
    angle: chance.between(3, 160),
    radius: [60, 75, 110][chance.whole(0, 2)]!,
  }));
  return { shapes, last: chance.between(least, 150) };
}

export type Extras = {
  runner?: Partial<Runner>;
  tooling?: Partial<Tooling>;
  tube?: Partial<Tube>;
  workshop?: Workshop;
};

/** One runner of these shapes. */
export function designOf(shapes: readonly Shape[], last: number, extras: Extras = {}): Design {
  const { runner, workshop, ...more } = extras;
  const design = oneRunner({ ...pointsOf(shapes, last), ...runner }, more);
  return workshop ? { ...design, workshop } : design;
}

export const randomDesign = (seed: number, extras: Extras = {}): Design => {
  const { shapes, last } = randomShapes(random(seed));
  return designOf(shapes, last, extras);
};

export function madeOf(design: Design): { header: Header; part: Part; tubes: BentTube[] }[] {
  const header = resolveHeader(design);
  return partsOf(header).parts.map((part) => ({ header, part, tubes: bentTubes(header, part) }));
}

/** Of a design with one runner. */
export function tubesOf(design: Design): BentTube[] {
  const [one] = madeOf(design);
  if (!one) throw new Error('The design has no runner that can be made.');
  return one.tubes;
}
