/** The bill of materials: masses against wall area × length × density, counts and prices by hand, the middle by symmetry. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Header, headerParts, type Made, resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { tubeMass } from '../../../shared/stock/tubes';
import { fasteners } from '../../../src/shop/making/materials/fasteners';
import { materialLines } from '../../../src/shop/making/materials/materials';
import { massOfParts } from '../../../src/shop/making/materials/weights';

const example = (name: string): Design =>
  parseDesign(readFileSync(new URL(`../../../public/examples/${name}.evenrun.json`, import.meta.url), 'utf8'));

describe('the bill of the four into one', () => {
  let header: Header;
  let made: Made;
  beforeAll(async () => {
    header = resolveHeader(example('four-4-1'));
    made = await headerParts(header);
  });

  test('every part that is made is on it once, and all fasteners', () => {
    const lines = materialLines(header, made.parts);
    expect(new Set(lines.map(({ name }) => name)).size).toBe(lines.length);
    const counted = lines.reduce((sum, { quantity }) => sum + quantity, 0);
    expect(counted).toBe(made.parts.length + fasteners(header.design).length);
    expect(lines.find(({ name }) => name === 'collector collector stub')?.quantity).toBe(4);
  });

  test('a runner weighs wall area × length × density', () => {
    const { tube, centerline } = header.runners[0]!;
    const line = materialLines(header, made.parts).find(({ name }) => name === 'runner r1')!;
    expect(line.mass).toBeCloseTo(tubeMass(tube, centerline!.length, 7930), 9);
    expect(line.ofStock).toBe(true);
  });

  test('the whole weighs what its lines do, fasteners apart', () => {
    const ofParts = materialLines(header, made.parts).filter(({ name }) => !/^(stud|nut|bolt|gasket|bung)/.test(name));
    const { total, unknown } = massOfParts(made.parts);
    expect(unknown).toEqual([]);
    expect(ofParts.reduce((sum, { mass }) => sum + mass!, 0)).toBeCloseTo(total, 9);
  });

  test('a price is that of one, and one without a price has no cost', () => {
    const priced = { ...header, design: { ...header.design, workshop: { prices: { 'nut M8': 0.4 } } } };
    const lines = materialLines(priced, made.parts);
    const nuts = lines.find(({ name }) => name === 'nut M8')!;
    expect(nuts.each).toBe(0.4);
    expect(nuts.cost).toBeCloseTo(0.4 * nuts.quantity, 12);
    expect(lines.find(({ name }) => name.startsWith('stud'))?.cost).toBeNull();
  });

  test('a material that no table knows is named and weighs nothing', () => {
    const parts = made.parts.map((part) => (part.id === 'runner r2' ? { ...part, material: 'unobtainium' } : part));
    const { total, unknown } = massOfParts(parts);
    expect(unknown).toEqual(['runner r2']);
    expect(total).toBeLessThan(massOfParts(made.parts).total);
    expect(materialLines(header, parts).find(({ name }) => name === 'runner r2')?.mass).toBeNull();
  });
});

test('both banks, each the mirror of the other about x = 0 or y = 0, balance between them', async () => {
  const header = resolveHeader(example('v8-both-banks'));
  const { parts } = await headerParts(header);
  const { centre } = massOfParts(parts);
  const [left, right] = ['left collector', 'right collector'].map((id) => header.merges.get(id)!.merge.position);
  // The plane between the two banks' collectors.
  const between = left!.map((x, i) => (x + right![i]!) / 2);
  const apart = left!.map((x, i) => x - right![i]!);
  const off = apart.reduce((sum, d, i) => sum + d * (centre[i]! - between[i]!), 0) / Math.hypot(...apart);
  expect(Math.abs(off)).toBeLessThan(0.02);
});

// M8 stud 50 long and its nut, worked by hand: π/4·8²·50·7.85e-6 kg; nut across flats 13, height 6.8 (ISO 4032, the most).
test('a stud and its nut weigh what their sizes say', () => {
  const design = {
    flanges: [
      {
        id: 'f',
        ports: [],
        thickness: 10,
        fasteners: [{ position: [0, 0, 0], kind: 'stud', thread: 'M8', length: 50, hole: 9 }],
      },
    ],
  };
  const [stud, nut] = fasteners(design as unknown as Design);
  expect(stud).toMatchObject({ name: 'stud M8 x 50' });
  expect(stud!.mass).toBeCloseTo(0.01973, 4);
  expect(nut!.mass).toBeCloseTo(((Math.sqrt(3) / 2) * 169 - (Math.PI / 4) * 64) * 6.8 * 7.85e-6, 9);
});
