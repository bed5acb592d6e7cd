import { describe, expect, test } from 'vitest';
import { MeshError } from '../../../src/formats/mesh/meshError';
import { readPly } from '../../../src/formats/ply/read';
import { SOUP, tetrahedronPly, text } from '../mesh/make';

const head = (vertices: string, faces: string, format = 'ascii') =>
  `ply\nformat ${format} 1.0\nelement vertex ${vertices}\nproperty float x\nproperty float y\nproperty float z\nelement face ${faces}\nproperty list uchar int vertex_indices\nend_header\n`;

describe('reading PLY', () => {
  test.each(['ascii', 'little', 'big'] as const)('%s', (format) => {
    for (const scalar of ['float', 'double', 'short', 'int', 'char', 'uint'])
      for (const index of ['int', 'uint', 'ushort', 'uchar', 'short'])
        expect([...readPly(tetrahedronPly(format, scalar, index))]).toEqual(SOUP);
  });

  test('faces of more corners become fans; of fewer, nothing', () => {
    const soup = readPly(text(`${head('5', '2')}0 0 0\n1 0 0\n2 1 0\n1 2 0\n0 1 0\n5 0 1 2 3 4\n2 0 1\n`));
    expect([...soup]).toEqual([0, 0, 0, 1, 0, 0, 2, 1, 0, 0, 0, 0, 2, 1, 0, 1, 2, 0, 0, 0, 0, 1, 2, 0, 0, 1, 0]);
  });

  test('other elements, other lists, and numbers that do not keep to lines', () => {
    const file = `ply\r\nformat ascii 1.0\r\nelement thing 2\r\nproperty list uchar float junk\r\nelement nothing 4000000000\r\nelement vertex 3\r\nproperty list uchar int seen\r\nproperty float z\r\nproperty float y\r\nproperty float x\r\nelement face 1\r\nproperty list uchar float texcoord\r\nproperty list uchar int vertex_index\r\nend_header\r\n2 9 9 0 1 7\r\n3 2 1 0 6\r\n5 4 0 9 8 7 2 0.5 .5 3 0 1 2`;
    expect([...readPly(text(file))]).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  test('a head whose lines end in \\r alone, before a number that begins with the byte of \\n', () => {
    const bytes = text(`${head('3', '1', 'binary_little_endian').replaceAll('\n', '\r')}`);
    const out = new Uint8Array(bytes.length + 36 + 13);
    out.set(bytes);
    const view = new DataView(out.buffer, bytes.length);
    view.setUint32(0, 0x4000000a, true);
    view.setFloat32(12, 1, true);
    view.setFloat32(28, 1, true);
    view.setUint8(36, 3);
    view.setInt32(41, 1, true);
    view.setInt32(45, 2, true);
    expect(readPly(out).length).toBe(9);
    expect(readPly(out)[0]).toBeCloseTo(2.0000024, 6);
  });

  const nan = tetrahedronPly('little');
  new DataView(nan.buffer).setFloat32(nan.length - 4 * 15 - 13, Number.NaN, true);
  test.each([
    ['a head that does not end', text('ply\nformat ascii 1.0\nelement vertex 3\n'), /cut short.*end_header/],
    ['a format that is not known', text('ply\nformat ascii2 1.0\n'), /line 2.*"ascii2".*binary_big_endian/],
    ['a count that is no number', text('ply\nformat ascii 1.0\nelement vertex many\n'), /line 3.*whole number/],
    ['a kind of number that is none', text('ply\nformat ascii 1.0\nelement vertex 3\nproperty half x'), /"half"/],
    ['points only', text(head('3', '0')), /points and no faces/],
    ['nothing', text(head('0', '0')), /no vertices/],
    ['no z', text(head('1', '1').replace('property float z\n', '').concat('0 0 0\n0\n')), /no z/],
    ['too few numbers', text(`${head('3', '1')}0 0 0 1 0 0 0 1 0 3 0 1`), /cut short or mislabelled/],
    ['a word', text(`${head('3', '1')}0 0 0 1 zero 0 0 1 0 3 0 1 2`), /a number is wanted; found "0 0 0 1 zero/],
    [
      'a corner that is not there',
      text(`${head('3', '1')}0 0 0 1 0 0 0 1 0\n3 0 1 3`),
      /face 1 names vertex 3.*0 to 2/,
    ],
    ['a coordinate that is infinite', text(`${head('3', '1')}0 0 0 1 1e39 0 0 1 0\n3 0 1 2`), /vertex 2 of 3.*1e\+39/],
    ['a coordinate that is no number', nan, /not a finite number/],
    ['binary cut short', tetrahedronPly('little').slice(0, -3), /cut short or mislabelled/],
    [
      'four billion vertices in no bytes',
      text(head('4000000000', '1', 'binary_little_endian')),
      /48000000000 bytes at least/,
    ],
    ['four billion faces in no bytes', text(`${head('3', '4000000000')}0 0 0 1 0 0 0 1 0`), /4000000000 of "face"/],
    [
      'a list of a million',
      text(`${head('3', '1').replace('uchar', 'int')}0 0 0 1 0 0 0 1 0\n1000000 0 1 2`),
      /1000000 numbers/,
    ],
  ])('refuses %s, saying why', (_, bytes, message) => {
    expect(() => readPly(bytes)).toThrow(MeshError);
    expect(() => readPly(bytes)).toThrow(message);
  });
});
