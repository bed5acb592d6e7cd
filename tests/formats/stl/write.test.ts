import { describe, expect, test } from 'vitest';
import type { Mesh } from '../../../geometry';
import { readStl } from '../../../src/formats/stl/read';
import { writeStl } from '../../../src/formats/stl/write';

const tetrahedron: Mesh = {
  positions: Float64Array.from([0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10]),
  triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
};

describe('binary STL', () => {
  // 80 + 4 + 50·n bytes, little-endian, header not beginning with "solid": binary layout as a university
  // rapid-prototyping centre gives it; key stl, read in source.
  test('is laid out as the form says', () => {
    const bytes = writeStl(tetrahedron, 'r1');
    const view = new DataView(bytes.buffer);
    expect(bytes.length).toBe(80 + 4 + 50 * 4);
    expect(view.getUint32(80, true)).toBe(4);
    expect(new TextDecoder().decode(bytes.subarray(0, 80)).trimEnd()).toBe('evenrun, millimetres: r1');
    expect(view.getUint16(84 + 48, true)).toBe(0);
  });

  test('golden: the first facet of a tetrahedron, byte for byte', () => {
    const facet = writeStl(tetrahedron, 'r1').subarray(84, 134);
    // Normal (0, 0, −1); corners 0, (0, 10, 0), (10, 0, 0); 10 is 0x41200000, −1 is 0xbf800000.
    const zero = '00000000';
    const golden = `${zero}${zero}000080bf${zero}${zero}${zero}${zero}00002041${zero}00002041${zero}${zero}0000`;
    expect(Buffer.from(facet).toString('hex')).toBe(golden);
  });

  test('normals are unit and face outward', () => {
    const view = new DataView(writeStl(tetrahedron, 'r1').buffer);
    const slanted = [0, 4, 8].map((k) => view.getFloat32(84 + 3 * 50 + k, true));
    for (const n of slanted) expect(n).toBeCloseTo(1 / Math.sqrt(3), 6);
  });

  test('reads back', () => {
    const soup = readStl(writeStl(tetrahedron, 'r1'));
    const expected = [...tetrahedron.triangles].flatMap((v) => [...tetrahedron.positions.subarray(3 * v, 3 * v + 3)]);
    expect([...soup]).toEqual(expected);
  });

  test('a name in any script or of any length leaves the header whole', () => {
    const bytes = writeStl(tetrahedron, `é${'x'.repeat(200)}`);
    expect(new TextDecoder().decode(bytes.subarray(0, 26))).toBe('evenrun, millimetres: ?xxx');
    expect(bytes.length).toBe(284);
  });

  test('a vertex beyond single precision is a caller’s mistake', () => {
    expect(() => writeStl({ ...tetrahedron, positions: tetrahedron.positions.map(() => 1e300) }, 'r1')).toThrow(/r1/);
  });
});
