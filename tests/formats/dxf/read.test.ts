import { describe, expect, test } from 'vitest';
import { edges, loopArea, loopBounds, loopLength } from '../../../geometry';
import { distanceToLoop } from '../../../geometry/plane/within';
import { DxfError, DxfUnitError } from '../../../src/formats/dxf/dxfError';
import { MAX_DXF_BYTES, readDxf } from '../../../src/formats/dxf/read';
import { DXF_VERSIONS, writeDxf } from '../../../src/formats/dxf/write';
import { LOOPS } from '../../geometry/flange/drawings';
import { arc, circle, dxf, type Groups, line, oldPolyline, polyline } from './drawn';

const SLOT = [
  [0, 0, 0],
  [30, 0, 1],
  [30, 10, 0],
  [0, 10, 1],
] as const;
const SLOT_AREA = 300 + 25 * Math.PI;
const only = (entities: readonly Groups[], unit?: number | null) => {
  const { loops } = readDxf(dxf(entities, unit));
  expect(loops).toHaveLength(1);
  return loops[0]!.loop;
};

describe('closed curves', () => {
  test('polylines of both kinds with bulges, also with identifiers at their corners', () => {
    for (const entity of [polyline(SLOT), polyline(SLOT, 1, [[91, 0]]), oldPolyline(SLOT)]) {
      expect(only([entity])).toEqual(SLOT);
      expect(loopArea(only([entity]))).toBeCloseTo(SLOT_AREA, 9);
    }
  });
  test('one whose last corner lies on its first, not flagged as closed', () => {
    expect(loopArea(only([polyline([...SLOT, [0, 0, 0]], 0)]))).toBeCloseTo(SLOT_AREA, 9);
  });
  test('circles, with their layers; seen from below, on the other side', () => {
    const { loops } = readDxf(dxf([circle(3, 4, 5, 'HOLES'), circle(20, 4, 2, 'PORTS', [[230, -1]])]));
    expect(loops.map(({ layer }) => layer)).toEqual(['HOLES', 'PORTS']);
    expect(loopBounds(loops[0]!.loop)).toEqual({ min: [-2, -1], max: [8, 9] });
    expect(loopBounds(loops[1]!.loop)).toEqual({ min: [-22, 2], max: [-18, 6] });
  });
  test('lines and arcs joined end to end, in any order and direction, 0.009 mm apart', () => {
    const loop = only([line(30, 0, 0, 0.009), arc(30, 5, 5, -90, 90), line(0, 10, 30, 10), arc(0, 5, 5, 90, 270)]);
    expect(Math.abs(loopArea(loop))).toBeCloseTo(SLOT_AREA, 0);
    expect(loopLength(loop)).toBeCloseTo(60 + 10 * Math.PI, 1);
  });
  test('the joined slot is exact where its ends are', () => {
    const loop = only([line(30, 0, 0, 0), arc(30, 5, 5, 270, 90), line(0, 10, 30, 10), arc(0, 5, 5, 90, 270)]);
    expect(Math.abs(loopArea(loop))).toBeCloseTo(SLOT_AREA, 9);
  });
  test('an ellipse as arcs within 0.01 mm', () => {
    const loop = only([
      [
        [0, 'ELLIPSE'],
        [8, '0'],
        [10, 5],
        [20, 5],
        [11, 20],
        [21, 0],
        [40, 0.6],
        [41, 0],
        [42, 2 * Math.PI],
      ],
    ]);
    const all = edges(loop);
    for (let t = 0; t < 6.28; t += 0.013)
      expect(distanceToLoop([5 + 20 * Math.cos(t), 5 + 12 * Math.sin(t)], all)).toBeLessThan(0.01);
    expect(loopArea(loop) / (Math.PI * 240)).toBeCloseTo(1, 3);
  });
  test('text, dimensions, paper space and our own marks are left out, and counted', () => {
    const { loops, notes } = readDxf(
      dxf([
        circle(0, 0, 5),
        [
          [0, 'TEXT'],
          [8, '0'],
          [1, 'port 1'],
        ],
        circle(0, 0, 9, '0', [[67, 1]]),
        line(0, 0, 5, 5, 'ETCH'),
      ]),
    );
    expect(loops).toHaveLength(1);
    expect(notes).toEqual(['Left out, as no cuts: 1 TEXT, 1 CIRCLE, 1 LINE.']);
  });
});

describe('units are said, never guessed', () => {
  const radius = (bytes: Uint8Array, unit?: 'mm' | 'in') => loopBounds(readDxf(bytes, unit).loops[0]!.loop).max[0];
  test('mm, cm and m by the file', () => {
    expect([4, 5, 6].map((unit) => radius(dxf([circle(0, 0, 1)], unit)))).toEqual([1, 10, 1000]);
  });
  test('none, or inches: asked', () => {
    for (const [unit, says] of [
      [null, null],
      [0, null],
      [1, 'in'],
    ] as const) {
      const bytes = dxf([circle(0, 0, 1)], unit);
      expect(() => readDxf(bytes)).toThrow(DxfUnitError);
      try {
        readDxf(bytes);
      } catch (error) {
        expect((error as DxfUnitError).says).toBe(says);
      }
      expect(radius(bytes, 'mm')).toBe(1);
      expect(radius(bytes, 'in')).toBeCloseTo(25.4, 12);
    }
  });
  test('what is asked for holds, and that the file says otherwise is told', () => {
    expect(readDxf(dxf([circle(0, 0, 1)], 4), 'in').notes).toEqual([
      'The file says another unit than inches, which was asked for.',
    ]);
  });
  test('feet are no unit of flanges', () => {
    expect(() => readDxf(dxf([circle(0, 0, 1)], 2))).toThrow(/\$INSUNITS 2.*save it in mm/);
  });
});

describe('refused, with place and remedy', () => {
  const spline: Groups = [
    [0, 'SPLINE'],
    [5, '4A'],
    [8, 'OUTLINE'],
    [10, 1.5],
    [20, 2],
  ];
  test.each<[string, readonly Groups[], RegExp]>([
    ['a spline', [spline], /SPLINE on layer "OUTLINE" at \(1.5, 2\), handle 4A, line \d+: convert splines to arcs/],
    [
      'an open path',
      [line(0, 0, 10, 0), line(10, 0, 10, 10), line(10, 10, 0.5, 0)],
      /open path ends at \(0, 0\).*nearest other end is 0.5 away, at \(0.5, 0\): close the gap/,
    ],
    [
      'three ends in one place',
      [line(0, 0, 9, 0), line(9, 0, 0, 0), line(0, 0, 5, 5)],
      /3 ends meet at \(0, 0\).*drawn twice/,
    ],
    [
      'a block',
      [
        [
          [0, 'INSERT'],
          [8, '0'],
          [2, 'b'],
          [10, 0],
          [20, 0],
        ],
      ],
      /INSERT .*explode blocks/,
    ],
    [
      'part of an ellipse',
      [
        [
          [0, 'ELLIPSE'],
          [8, '0'],
          [10, 0],
          [20, 0],
          [11, 5],
          [21, 0],
          [40, 0.5],
          [41, 0],
          [42, 3],
        ],
      ],
      /part of an ellipse: convert/,
    ],
    ['no number', [circle(0, 0, Number.NaN)], /CIRCLE .*group 40 is "NaN", not a number/],
    ['a circle of no size', [circle(0, 0, 0)], /its radius is 0/],
    [
      'a slanting plane',
      [
        circle(0, 0, 5, '0', [
          [210, 1],
          [230, 0.5],
        ]),
      ],
      /slanting plane: flatten/,
    ],
    ['a polyline without end', [oldPolyline(SLOT).slice(0, -1)], /SEQEND\) is missing/],
    ['a polyline in space', [oldPolyline(SLOT, 9)], /drawn in space/],
    [
      'nothing closed',
      [
        [
          [0, 'POINT'],
          [8, '0'],
          [10, 0],
          [20, 0],
        ],
      ],
      /no closed curve/,
    ],
  ])('%s', (_, entities, words) => {
    expect(() => readDxf(dxf(entities))).toThrow(DxfError);
    expect(() => readDxf(dxf(entities))).toThrow(words);
  });
  test.each<[string, string, RegExp]>([
    ['empty', '', /it is empty/],
    ['binary', 'AutoCAD Binary DXF\r\n\u001a\0', /binary DXF file: save it as an ASCII/],
    ['something else', '%PDF-1.7\n', /not a DXF file/],
    ['cut short', new TextDecoder().decode(dxf([circle(0, 0, 1)])).slice(0, -9), /cut short/],
    [
      'out of step',
      '0\nSECTION\n2\nENTITIES\nhello\n1\n0\nEOF\n',
      /line 5 should hold a group code, and holds "hello"/,
    ],
  ])('a file that is %s', (_, text, words) => {
    expect(() => readDxf(new TextEncoder().encode(text))).toThrow(words);
  });
  test('too much of it, in time', () => {
    expect(() => readDxf(new Uint8Array(MAX_DXF_BYTES + 1))).toThrow(/at most \d+ are read/);
    const many = dxf(Array.from({ length: 50_001 }, () => [[0, 'POINT']]));
    expect(() => readDxf(many)).toThrow(/more than 50000 entities/);
  });
});

test('ten thousand lines in one chain are joined in good time', () => {
  const n = 10_000;
  const at = (k: number) => [1000 * Math.cos((2 * Math.PI * k) / n), 1000 * Math.sin((2 * Math.PI * k) / n)] as const;
  const loop = only(Array.from({ length: n }, (_, k) => line(...at(k), ...at((k + 1) % n))));
  expect(loop).toHaveLength(n);
});

test('our own files come back, in both dialects: every curve on its layer, corners within 0.001 mm', () => {
  const curves = LOOPS.map((loop, k) => ({ layer: k === 3 ? 'OUTLINE' : k < 3 ? 'HOLES' : 'PORTS', loop }));
  const layers = ['OUTLINE', 'HOLES', 'PORTS'].map((name) => ({ name, colour: 7 }));
  for (const version of DXF_VERSIONS) {
    const bytes = new TextEncoder().encode(writeDxf({ layers, curves }, version));
    // R12 has no unit of its own.
    const { loops } = readDxf(bytes, version === 'R12' ? 'mm' : undefined);
    expect(loops.map(({ layer }) => layer).sort()).toEqual(curves.map(({ layer }) => layer).sort());
    for (const { layer, loop } of curves)
      expect(
        loops.some(
          (back) =>
            back.layer === layer &&
            back.loop.length === loop.length &&
            loop.every(([x, y, b]) =>
              back.loop.some(([u, v, c]) => Math.hypot(u - x, v - y) < 0.001 && Math.abs(b - c) < 1e-6),
            ),
        ),
      ).toBe(true);
  }
});
