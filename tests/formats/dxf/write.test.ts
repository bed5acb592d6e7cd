/** The bytes themselves: the header, the structure that strict readers ask for, and a small file written out in full. */
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { DXF_VERSIONS, writeDxf } from '../../../src/formats/dxf/write';
import { published } from '../../reference/published';
import { SIMPLE, SLOT } from './drawings';

type Pair = readonly [code: number, value: string];
const pairs = (text: string): Pair[] => {
  const lines = text.split('\r\n');
  expect(lines.pop()).toBe('');
  expect(lines.length % 2).toBe(0);
  return Array.from({ length: lines.length / 2 }, (_, k) => [Number(lines[2 * k]), lines[2 * k + 1]!]);
};

const variable = (all: readonly Pair[], name: string): Pair =>
  all[all.findIndex(([c, v]) => c === 9 && v === name) + 1]!;

test.each(DXF_VERSIONS)('%s: mm, metric, extents exact', (version) => {
  const all = pairs(writeDxf(SIMPLE, version));
  expect(variable(all, '$ACADVER')).toEqual([1, version === 'R12' ? 'AC1009' : 'AC1015']);
  expect(variable(all, '$INSUNITS')).toEqual([70, String(published<Record<string, number>>('dxf.units').mm)]);
  expect(variable(all, '$MEASUREMENT')).toEqual([70, '1']);
  expect(variable(all, '$EXTMIN')).toEqual([10, '-30.0']);
  expect(variable(all, '$EXTMAX')).toEqual([10, '30.0']);
  expect(all.at(-1)).toEqual([0, 'EOF']);
});

test('R2000: every handle once, every owner there, the seed beyond them all', () => {
  const all = pairs(writeDxf(SIMPLE, 'R2000'));
  const header = all.findIndex(([c, v]) => c === 0 && v === 'ENDSEC');
  const body = all.slice(header);
  // A dimension style has its handle under 105.
  const handles = body.filter(([c]) => c === 5 || c === 105).map(([, v]) => Number.parseInt(v, 16));
  expect(new Set(handles).size).toBe(handles.length);
  const named = body.filter(([c]) => c === 330 || c === 340 || c === 350).map(([, v]) => Number.parseInt(v, 16));
  for (const handle of named) if (handle !== 0) expect(handles).toContain(handle);
  expect(Number.parseInt(variable(all, '$HANDSEED')[1], 16)).toBeGreaterThan(Math.max(...handles));
  expect(body.filter(([c, v]) => c === 0 && v === 'LWPOLYLINE')).toHaveLength(3);
});

test('R12: heavy polylines, closed, and no marks of later versions', () => {
  const all = pairs(writeDxf(SIMPLE, 'R12'));
  expect(all.some(([c]) => c === 100 || c === 330 || c === 5)).toBe(false);
  expect(all.filter(([c, v]) => c === 0 && v === 'SEQEND')).toHaveLength(3);
});

test('the slot, entity by entity', () => {
  const drawing = { layers: SIMPLE.layers, curves: [{ layer: 'OUTLINE', loop: SLOT }] };
  const entities = (text: string) =>
    text.slice(text.indexOf('ENTITIES'), text.indexOf('ENDSEC', text.indexOf('ENTITIES')));
  expect(entities(writeDxf(drawing, 'R2000')).replaceAll('\r\n', ' ').replace(/ +/g, ' ')).toBe(
    'ENTITIES 0 LWPOLYLINE 5 21 330 4 100 AcDbEntity 8 OUTLINE 100 AcDbPolyline 90 4 70 1 43 0.0' +
      ' 10 -20.0 20 -10.0 42 0.0 10 20.0 20 -10.0 42 1.0 10 20.0 20 10.0 42 0.0 10 -20.0 20 10.0 42 1.0 0 ',
  );
  expect(entities(writeDxf(drawing, 'R12')).replaceAll('\r\n', ' ').replace(/ +/g, ' ')).toBe(
    'ENTITIES 0 POLYLINE 8 OUTLINE 66 1 10 0.0 20 0.0 30 0.0 70 1' +
      ' 0 VERTEX 8 OUTLINE 10 -20.0 20 -10.0 30 0.0 42 0.0 0 VERTEX 8 OUTLINE 10 20.0 20 -10.0 30 0.0 42 1.0' +
      ' 0 VERTEX 8 OUTLINE 10 20.0 20 10.0 30 0.0 42 0.0 0 VERTEX 8 OUTLINE 10 -20.0 20 10.0 30 0.0 42 1.0' +
      ' 0 SEQEND 8 OUTLINE 0 ',
  );
});

test('the same drawing gives the same bytes', () => {
  const hash = (text: string) => createHash('sha256').update(text).digest('hex');
  for (const version of DXF_VERSIONS)
    expect(hash(writeDxf(structuredClone(SIMPLE), version))).toBe(hash(writeDxf(SIMPLE, version)));
});

test('what it cannot hold is refused: no layer, no curve, no number', () => {
  const write = (curve: (typeof SIMPLE.curves)[number]) => () =>
    writeDxf({ layers: SIMPLE.layers, curves: [curve] }, 'R12');
  expect(write({ layer: 'NOTES', loop: SLOT })).toThrow(/no layer NOTES/);
  expect(write({ layer: 'HOLES', loop: [[0, 0, 0]] })).toThrow(/1 corners/);
  expect(write({ layer: 'HOLES', loop: [[0, 0, 0], [Number.NaN, 1, 0], [1, 0, 0]] })).toThrow(/NaN/); // biome-ignore format: one line
});

test('numbers never have an exponent or a minus zero', () => {
  const loop = [[-1e-12, 1e-7, 0], [123456.789, -0, 1e-9], [1, 1, 0]] as const; // biome-ignore format: one line
  const all = pairs(writeDxf({ layers: SIMPLE.layers, curves: [{ layer: 'OUTLINE', loop }] }, 'R12'));
  const start = all.findIndex(([, v]) => v === 'ENTITIES');
  const numbers = all.slice(start).filter(([c]) => c === 10 || c === 20 || c === 42);
  for (const [, value] of numbers) expect(value).toMatch(/^-?\d+\.\d+$/);
  expect(numbers.slice(2, 5).map(([, v]) => v)).toEqual(['0.0', '0.0000001', '0.0']);
});
