/**
 * Read back by another library (dxf-parser): every curve closed, on its layer, its corners, extents and hole centres within
 * 0.001 mm, and every bulge the tangent of a quarter of its arc's angle (key dxf.lw, read in source).
 */
import DxfParser, { type ICircleEntity, type IDxf, type ILwpolylineEntity, type IPolylineEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { edges, type Loop, loopBounds, loopLength } from '../../../geometry';
import { DXF_VERSIONS, type DxfDrawing, writeDxf } from '../../../src/formats/dxf/write';
import { flangeDrawings, SIMPLE } from './drawings';

type Polyline = ILwpolylineEntity | IPolylineEntity;
const loopOf = (entity: Polyline): Loop =>
  entity.vertices.map(({ x, y, bulge }): [number, number, number] => [x, y, bulge ?? 0]);

const read = (text: string): IDxf => {
  const dxf = new DxfParser().parseSync(text);
  if (!dxf) throw new Error('nothing could be read');
  return dxf;
};

const drawings: [string, DxfDrawing][] = [['every kind of curve', SIMPLE], ...flangeDrawings()];

describe.each(DXF_VERSIONS)('%s', (version) => {
  test.each(drawings)('%s', (_, drawing) => {
    const dxf = read(writeDxf(drawing, version));
    expect(dxf.header.$INSUNITS).toBe(4);
    expect(Object.keys(dxf.tables.layer.layers)).toEqual(expect.arrayContaining(drawing.layers.map((l) => l.name)));
    expect(dxf.entities).toHaveLength(drawing.curves.length);
    let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const [k, { layer, loop }] of drawing.curves.entries()) {
      const entity = dxf.entities[k]!;
      expect(entity.layer).toBe(layer);
      const { min, max } = loopBounds(loop);
      [left, low, right, high] = [Math.min(left, min[0]), Math.min(low, min[1]), Math.max(right, max[0]), Math.max(high, max[1])]; // biome-ignore format: one line
      if (entity.type === 'CIRCLE') {
        const { center, radius } = entity as ICircleEntity;
        expect(Math.hypot(center.x - (min[0] + max[0]) / 2, center.y - (min[1] + max[1]) / 2)).toBeLessThan(1e-3);
        expect(2 * radius).toBeCloseTo(max[0] - min[0], 6);
        continue;
      }
      // Both dialects' readers tell a closed polyline by its `shape`.
      expect((entity as Polyline).shape).toBe(true);
      const back = loopOf(entity as Polyline);
      expect(back).toHaveLength(loop.length);
      for (const [i, [x, y, bulge]] of back.entries()) {
        expect(Math.hypot(x - loop[i]![0], y - loop[i]![1])).toBeLessThan(1e-3);
        const { arc } = edges(loop)[i]!;
        expect(bulge).toBeCloseTo(arc ? Math.tan(arc.turn / 4) : 0, 8);
      }
      expect(loopLength(back)).toBeCloseTo(loopLength(loop), 3);
    }
    const [min, max] = [dxf.header.$EXTMIN, dxf.header.$EXTMAX] as unknown as { x: number; y: number }[];
    for (const [a, b] of [[min!.x, left], [min!.y, low], [max!.x, right], [max!.y, high]]) expect(Math.abs(a! - b!)).toBeLessThan(1e-3); // biome-ignore format: one line
  });
});

test('holes lie where the design has them: fastener by fastener', () => {
  const [, drawing] = flangeDrawings().find(([name]) => name.startsWith('four-4-1.'))!;
  const circles = read(writeDxf(drawing, 'R2000')).entities.filter((e) => e.layer === 'HOLES') as ICircleEntity[];
  // Design x −184 … 184 from a first port at −138, seen from outside: x points the other way. Studs ±30 above the port and
  // ±5.4 out, on a face that leans by atan 0.18.
  const rise = Math.hypot(30, 5.4);
  const expected = [[-184, -1], [-92, 1], [0, -1], [92, 1], [184, -1], [-92, -1], [0, 1], [92, -1]]; // biome-ignore format: one line
  for (const [k, [x, side]] of expected.entries()) {
    expect(Math.abs(circles[k]!.center.x - (-138 - x!))).toBeLessThan(1e-3);
    expect(Math.abs(circles[k]!.center.y - side! * rise)).toBeLessThan(1e-3);
    expect(circles[k]!.radius).toBeCloseTo(4.5, 9);
  }
});
