import { describe, expect, test } from 'vitest';
import { MeshError } from '../../../src/formats/mesh/meshError';
import { readObj } from '../../../src/formats/obj/read';
import { text } from '../mesh/make';

const V = 'v 0 0 0\nv 1 0 0\nv 0 1.5e0 0 1\nv -.25 +2 1\n';

describe('reading OBJ', () => {
  test('corners with and without texture and normal, counted from either end, in groups', () => {
    const file = `# a bay\nmtllib bay.mtl\no one\n${V}vt 0 0\nvn 0 0 1\ng g\nusemtl m\ns off\nf 1 2 3\nf 1/1 2/1 3/1\nf 1//1 2//1 3//1\nf -4/1/1 -3/1/1 -2/1/1\n`;
    const soup = readObj(text(file.replaceAll('\n', '\r\n')));
    expect([...soup]).toEqual(Array.from({ length: 4 }, () => [0, 0, 0, 1, 0, 0, 0, 1.5, 0]).flat());
  });

  test('a face of four, and one that runs on over lines', () => {
    expect([...readObj(text(`${V}f 1 2 3 4`))]).toEqual([0, 0, 0, 1, 0, 0, 0, 1.5, 0, 0, 0, 0, 0, 1.5, 0, -0.25, 2, 1]);
    expect(readObj(text(`${V}f 1 2 \\\n3 4\n`)).length).toBe(18);
  });

  test('numbers to the last bit that single precision has, however they are written', () => {
    const written = [
      '0.1',
      '123456.789012345678',
      '1e-7',
      '-3.4028234e38',
      '1E+2',
      '.5',
      '5.',
      '00012.50',
      '0.30000001192092896',
    ];
    const soup = readObj(
      text(
        `v ${written.slice(0, 3).join(' ')}\nv ${written.slice(3, 6).join('\t')}\nv  ${written.slice(6).join('  ')}  \nf 1 2 3`,
      ),
    );
    expect([...soup]).toEqual(written.map((w) => Math.fround(Number(w))));
  });

  test.each([
    ['points only', text(V), /points and no faces/],
    ['nothing', text('# nothing\n'), /no vertices/],
    ['a corner before it comes', text(`v 0 0 0\nf 1 2 3\n${V}`), /line 2.*not among the 1 before it/],
    ['corner 0', text(`${V}f 0 1 2`), /line 5.*not among/],
    ['a corner that is a word', text(`${V}f one 2 3`), /line 5.*found "one 2 3"/],
    ['a corner that is a part', text(`${V}f 1.5 2 3`), /line 5/],
    ['too few corners', text(`${V}f 1 2`), /line 5: a face has 2 corners/],
    ['a coordinate that is none', text('v 0 nan 0'), /line 1.*"0 nan 0"/],
    ['two coordinates', text('v 0 0'), /line 1.*"0 0"/],
    ['a coordinate beyond all', text('v 0 1e39 0'), /line 1/],
    ['another language', text(`${V}<html>`), /line 5: "<html>"/],
  ])('refuses %s, saying where', (_, bytes, message) => {
    expect(() => readObj(bytes)).toThrow(MeshError);
    expect(() => readObj(bytes)).toThrow(message);
  });
});
