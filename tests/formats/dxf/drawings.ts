/** What the DXF tests write: every kind of curve, and flanges as the shop has them. */
import { readdirSync, readFileSync } from 'node:fs';
import { circleLoop, flangePlan, type Loop, polygonLoop, resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { DxfDrawing } from '../../../src/formats/dxf/write';
import { flangeCurves } from '../../../src/shop/flanges';
import { headerOf, ROW } from '../../geometry/flange/flanges';

/** A 60 × 20 slot: two straights, two half circles. */
export const SLOT: Loop = [[-20, -10, 0], [20, -10, 1], [20, 10, 0], [-20, 10, 1]]; // biome-ignore format: one line

const LAYERS = ['OUTLINE', 'PORTS', 'HOLES', 'ETCH'].map((name, k) => ({ name, colour: k + 1 }));

export const SIMPLE: DxfDrawing = {
  layers: LAYERS,
  curves: [
    { layer: 'OUTLINE', loop: SLOT },
    { layer: 'HOLES', loop: circleLoop([1.5, -2.25], 4.5) },
    { layer: 'PORTS', loop: polygonLoop([[-8, -3], [-4, -3], [-4, 3]]) }, // biome-ignore format: one line
    { layer: 'ETCH', loop: [[5, 5, Math.tan(Math.PI / 8)], [0, 5, -0.2], [2, 1, 0]] }, // biome-ignore format: one line
  ],
};

export function flangeDrawings(): [string, DxfDrawing][] {
  const examples = readdirSync('public/examples').filter((name) => name.endsWith('.evenrun.json'));
  const headers = [
    ...examples.map((name) => resolveHeader(parseDesign(readFileSync(`public/examples/${name}`, 'utf8')))),
    headerOf({ ...ROW, flange: { seat: 'stepped', plates: 'separate' } }),
  ];
  return headers.flatMap((header, k) =>
    header.design.flanges!.map((flange): [string, DxfDrawing] => [
      `${examples[k] ?? 'separate and stepped'}, ${flange.id}`,
      { layers: LAYERS, curves: flangeCurves(flangePlan(header, flange)) },
    ]),
  );
}
