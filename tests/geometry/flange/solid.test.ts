/** Plates as solids: closed, sound in single precision, and their metal within a thousandth of closed form. mm³. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  boundsOf,
  flangeParts,
  headerParts,
  loopBounds,
  measureMesh,
  meshProblems,
  placedMesh,
  plateSolid,
  plateVolume,
  resolveHeader,
  roundedToFloat32,
} from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { type Asked, flangeDesign, headerOf, PAIRED, plateOf, ROW } from './flanges';

const grid = Array.from({ length: 60 }, (_, k) => [(k % 15) * 16 - 60, 60 + 16 * Math.floor(k / 15)] as const);

const shapes: readonly (readonly [string, Asked])[] = [
  ['two ports', PAIRED],
  ['a row', ROW],
  ['stepped', { ...ROW, flange: { seat: 'stepped', stepDepth: 6 } }],
  ['rectangular, sharp', { ...ROW, opening: { shape: 'rounded-rectangle', width: 30, height: 34, corner: 0 } }],
  ['oval, stepped, with transitions', { ...PAIRED, opening: { shape: 'oval', width: 30, height: 38 }, port: () => ({ transition: { length: 40 } }), flange: { seat: 'stepped' } }],
  ['separate, sharing studs', { ...ROW, flange: { plates: 'separate' } }],
  ['sixty holes on a grid', { ports: 1, studs: grid }],
  ['a drawn square, its sides in pieces', { ports: 1, flange: { outline: [[-40, -40, 0], [0, -40, 0], [10, -40, 0], [40, -40, 0], [40, 40, 0], [-40, 40, 0], [-40, 7, 0]] } }],
]; // biome-ignore format: one line a case

describe.each(shapes)('%s', (_, asked) => {
  const plate = plateOf(asked);
  const { mesh, edges } = plateSolid(plate);

  test('closed, oriented, no triangle without area, also rounded, also where it lies', () => {
    for (const each of [mesh, roundedToFloat32(mesh), roundedToFloat32(placedMesh({ mesh, pose: plate.pose }))])
      expect(meshProblems(each)).toEqual([]);
  });

  test('volume within a thousandth of closed form', () => {
    expect(Math.abs(measureMesh(mesh).volume / plateVolume(plate) - 1)).toBeLessThan(1e-3);
  });

  test('lies below its outer face, as far as it is thick, and reaches as far as its outline', () => {
    const { min, max } = boundsOf(mesh);
    expect([min[2], max[2]]).toEqual([-plate.thickness, 0]);
    const outline = loopBounds(plate.outline);
    for (const k of [0, 1] as const) {
      expect(Math.abs(min[k] - outline.min[k])).toBeLessThan(0.05);
      expect(Math.abs(max[k] - outline.max[k])).toBeLessThan(0.05);
    }
    expect(edges.length % 6).toBe(0);
  });
});

test('a round plate with a stepped bore: every number by hand', () => {
  const plate = plateOf({
    ports: 1,
    opening: { shape: 'round', diameter: 40 },
    tube: { outsideDiameter: 50 },
    flange: { thickness: 12, seat: 'stepped', stepDepth: 5, stepGap: 0.5, border: 10 },
  });
  // Bore 40, step 51, border 10 round it: 71 across.
  const metal = (12 * Math.PI * (71 ** 2 - 40 ** 2)) / 4 - (5 * Math.PI * (51 ** 2 - 40 ** 2)) / 4;
  expect(plateVolume(plate)).toBeCloseTo(metal, 6);
});

describe('as parts', () => {
  const examples = readdirSync('public/examples').filter((name) => name.endsWith('.evenrun.json'));
  test.each(examples)('%s: a part for each flange, sound where it lies', (name) => {
    const header = resolveHeader(parseDesign(readFileSync(`public/examples/${name}`, 'utf8')));
    const { parts, notMade } = flangeParts(header);
    expect(notMade).toEqual([]);
    expect(parts.map((p) => p.id)).toEqual(header.design.flanges!.map((f) => `flange ${f.id}`));
    for (const part of parts) {
      expect(meshProblems(roundedToFloat32(placedMesh(part)))).toEqual([]);
      expect(Math.abs(measureMesh(part.mesh).volume / part.volume - 1)).toBeLessThan(1e-3);
    }
  });

  test('separate plates are a part each, and headerParts has them', async () => {
    const { parts } = await headerParts(headerOf({ ...PAIRED, flange: { plates: 'separate' } }));
    const plates = parts.filter((p) => p.kind === 'flange');
    expect(plates.map((p) => p.id)).toEqual(['flange f1 plate 1', 'flange f1 plate 2']);
    expect(plates[1]!.pose.position).toEqual([110, 0, 0]);
    expect(plates.map((p) => p.of)).toEqual(Array(2).fill({ kind: 'flange', id: 'f1' }));
  });

  test('a plate that cannot be made does not keep the others from being made', () => {
    const design = flangeDesign(PAIRED);
    const [f1] = design.flanges!;
    const flanges = [{ ...f1!, id: 'bad', outline: [[0, 0, 0], [9, 9, 0], [9, 0, 0], [0, 9, 0]] as const }, f1!]; // biome-ignore format: one line
    const { parts, notMade } = flangeParts(resolveHeader({ ...design, flanges }));
    expect(parts.map((p) => p.id)).toEqual(['flange f1']);
    expect(notMade.map((r) => [r.part, r.where])).toEqual([['flange bad', 'flanges/bad/outline']]);
  });
});
