import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MeshError } from '../../../src/formats/mesh/meshError';
import { readStl } from '../../../src/formats/stl/read';

const text = (s: string) => new TextEncoder().encode(s);
const facet = (a = '0 0 0') =>
  `facet normal 0 0 1\nouter loop\nvertex ${a}\nvertex 1.5e1 0 0\nvertex 0 -2 0\nendloop\nendfacet\n`;

/** `count` as promised in the header, over `real` triangles. */
function binary(count: number, real = count, header = ''): Uint8Array {
  const bytes = new Uint8Array(84 + 50 * real);
  bytes.set(text(header));
  new DataView(bytes.buffer).setUint32(80, count, true);
  return bytes;
}

describe('reading STL', () => {
  test('a surface from the layouts: 24 triangles', () => {
    const soup = readStl(readFileSync('tests/layouts/classic/bay.stl'));
    expect(soup.length).toBe(9 * 24);
    expect([...soup.subarray(0, 3)]).toEqual([-700, 218, -420]);
  });

  test('text, whatever its line ends and case', () => {
    const soup = readStl(text(`solid bay\n${facet()}${facet('7 8 9')}endsolid bay\n`.replaceAll('\n', '\r\n')));
    expect([...soup]).toEqual([0, 0, 0, 15, 0, 0, 0, -2, 0, 7, 8, 9, 15, 0, 0, 0, -2, 0]);
    expect(readStl(text(`SOLID\n${facet().toUpperCase()}ENDSOLID`)).length).toBe(9);
  });

  test('binary whose header begins with "solid" all the same', () => {
    expect(readStl(binary(2, 2, 'solid made by a scanner')).length).toBe(18);
  });

  test('a view into a larger buffer', () => {
    const larger = new Uint8Array(500);
    larger.set(binary(1), 13);
    expect(readStl(larger.subarray(13, 13 + 134)).length).toBe(9);
  });

  const nan = binary(2);
  new DataView(nan.buffer).setFloat32(84 + 50 + 12, Number.NaN, true);
  test.each([
    ['nothing', new Uint8Array(0), /not an STL file: 0 bytes/],
    ['something else', text('{"format":"evenrun-design"}'), /not an STL file: 27 bytes/],
    ['binary cut short', binary(5, 4), /cut short.*5 triangles makes 334 bytes, it has 284/],
    ['binary with more than it says', binary(3, 4), /longer than it says/],
    ['no triangles', binary(0), /no triangles/],
    ['not a number', nan, /triangle 2 of 2 has a corner that is NaN/],
    ['text without triangles', text('solid a\nendsolid a'), /no triangles/],
    ['text cut short', text(`solid a\n${facet()}`), /cut short/],
    ['text cut inside a facet', text(`solid a\n${facet().slice(0, 43)}`), /cut short/],
    ['text with a word for a number', text(`solid a\n${facet('0 nan 0')}endsolid`), /line 4.*"0 nan 0"/],
    ['text with two numbers', text(`solid a\n${facet('0 0')}endsolid`), /line 4.*three finite numbers/],
    ['four corners', text(`solid a\n${facet('0 0 0\nvertex 1 1 1')}endsolid`), /line 9.*4 corners/],
    ['another language', text('solid a\nmesh b\nendsolid'), /line 2.*"mesh"/],
  ])('refuses %s, saying why', (_, bytes, message) => {
    expect(() => readStl(bytes)).toThrow(MeshError);
    expect(() => readStl(bytes)).toThrow(message);
  });
});
