/** `template` by its files and words: curves held against published ordinates, lengths against the pie-cut table. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { CAUTION_ANGLE } from '../../src/shop/templates/wishes';
import { published } from '../reference/published';
import { type Bench, bench } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());

const SADDLE = ['template', 'saddle', '--tube', '42.4x1.5', '--onto', '60.3'];
const MITRE = ['template', 'mitre', '--tube', '50.8x1.5', '--angle', '90', '--joints', '4', '--radius', '76.2'];

const read = (name: string): string => readFileSync(join(b.folder, name), 'latin1');

/** The figures that stand upright along the stations, first to last; the glue line may have the first's again. */
const ordinates = (svg: string): number[] =>
  [...svg.matchAll(/<text [^>]*transform="rotate\(-90[^>]*>([\d.]+)</g)].map((m) => Number(m[1]));

/** Stations are numbered from 0. */
const stations = (svg: string): number =>
  1 + Math.max(...[...svg.matchAll(/<text [^>]*font-weight="bold">(\d+)</g)].map((m) => Number(m[1])));

describe('saddle', () => {
  test('ordinates fall as published, from the highest', async () => {
    const { code, out, err } = await b.evenrun(...SADDLE, '--angle', '60', '-o', 'a.svg');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/42\.40 mm onto 60\.30 mm at 60\.0°/);
    const table = published<{ Rh: number; rb: number; angle: number; t: number[] }[]>('cope.tables').find(
      ({ rb, angle }) => rb === 21.2 && angle === 60,
    )!;
    const found = ordinates(read('a.svg'));
    expect(table.t.length).toBe(16);
    for (const [i, t] of table.t.entries()) expect(found[i]! - found[0]!).toBeCloseTo(table.t[0]! - t, 1);
  });

  test('as a PDF on Letter, with 8 stations, in inches, off centre, by the bore', async () => {
    const given = ['template', 'saddle', '--tube', '1 3/4 in x 0.065 in', '--onto', '2 1/2', '--offset', '-1/8'];
    const { code, out, err } = await b.evenrun(
      ...[...given, '--measured-on', 'bore', '--display', 'in', '--paper', 'letter', '--stations', '8', '-o', 'a.PDF'],
    );
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/1\.750 in onto 2\.500 in at 90\.0°, 0\.125 in off centre/);
    expect(read('a.PDF')).toMatch(/^%PDF-/);
  });

  test('with 8 stations or 16; 8 where 16 have no room, and it says so', async () => {
    for (const count of [8, 16]) {
      await b.evenrun(...SADDLE, '--stations', String(count), '-o', 'a.svg');
      expect(stations(read('a.svg'))).toBe(count);
    }
    const { out } = await b.evenrun(
      'template',
      'saddle',
      '--tube',
      '16x1',
      '--onto',
      '40',
      '--stations',
      '16',
      '-o',
      'b.svg',
    );
    expect(out).toMatch(/no room/);
  });

  test('the same bytes twice, written over, and nothing beside it', async () => {
    await b.evenrun(...SADDLE, '-o', 'a.pdf');
    const [first, files] = [read('a.pdf'), b.listing()];
    await b.evenrun(...SADDLE, '-o', 'a.pdf');
    expect(read('a.pdf')).toBe(first);
    expect(b.listing()).toEqual(files);
  });
});

describe('mitre', () => {
  test('pieces as the pie-cut table has them, the square line in the middle of a piece', async () => {
    const { code, out } = await b.evenrun(...MITRE, '-o', 'a.svg');
    expect(code).toBe(0);
    const [row] =
      published<{ midCL: number; endCL: number; long: number; short: number; drop12: number[] }[]>('mit.pie');
    expect(out).toContain(
      `3 middle pieces: ${row!.long.toFixed(2)} mm outside, ${row!.midCL.toFixed(2)} mm along the centerline, ${row!.short.toFixed(2)} mm inside`,
    );
    expect(out).toContain(`${row!.endCL.toFixed(2)} mm along the centerline`);
    expect(out).not.toMatch(/Caution/);
    const found = ordinates(read('a.svg'));
    expect(found[0]).toBeCloseTo(row!.long / 2, 2);
    expect(found[8]).toBeCloseTo(row!.short / 2, 2);
  });

  test('a caution past the published limit of a joint', async () => {
    expect(CAUTION_ANGLE).toBe(published<number>('mit.limit'));
    const with_ = (joints: string) => ['template', 'mitre', '--tube', '50.8x1.5', '--angle', '90', '--joints', joints];
    const one = await b.evenrun(...with_('1'), '--radius', '76.2', '-o', 'a.svg');
    expect(one.out).toMatch(/Caution: Each cut stands 45\.0° from square.*2 joints keep it/);
    expect(read('a.svg')).toMatch(/Each cut stands/);
    expect((await b.evenrun(...with_('2'), '--radius', '76.2', '-o', 'a.svg')).out).not.toMatch(/Caution/);
  });
});

describe('refused in one line, and nothing written', () => {
  test.each<[string[], RegExp]>([
    [['template', 'lobster', '-o', 'a.svg'], /template: found "lobster"; allowed: saddle, mitre/],
    [[...SADDLE], /-o, --output <file>/],
    [[...SADDLE, '-o', 'a.dxf'], /--output: found "a\.dxf"; allowed: a name that ends in \.svg or \.pdf/],
    [[...SADDLE, '-o', 'no/a.svg'], /no\/a\.svg: the folder .* does not exist/],
    [[...SADDLE, '--paper', 'letter', '-o', 'a.svg'], /--paper: an SVG is one sheet/],
    [[...SADDLE, '--stations', '12', '-o', 'a.svg'], /--stations: found "12"; allowed: 8 or 16/],
    [[...SADDLE, '--display', 'cm', '-o', 'a.svg'], /--display: found "cm"; allowed: mm, in/],
    [[...SADDLE, '--measured-on', 'top', '-o', 'a.svg'], /--measured-on: found "top"; allowed: outside, bore/],
    [[...SADDLE, '--joints', '2', '-o', 'a.svg'], /--joints: not of a saddle/],
    [['template', 'saddle', '--tube', '42.4x1.5', '-o', 'a.svg'], /--onto needed/],
    [
      ['template', 'saddle', '--tube', '42.4', '--onto', '60', '-o', 'a.svg'],
      /--tube: found "42\.4"; allowed: outside diam/,
    ],
    [
      ['template', 'saddle', '--tube', '42.4x30', '--onto', '60', '-o', 'a.svg'],
      /--tube: found 30\.00 mm; allowed: a wall/,
    ],
    [
      ['template', 'saddle', '--tube', '70x1.5', '--onto', '60.3', '-o', 'a.svg'],
      /--tube: found 70\.00 mm; allowed: at most 60\.30/,
    ],
    [[...SADDLE, '--offset', '10', '-o', 'a.svg'], /--offset: found 10\.00 mm; allowed: at most 8\.95 mm/],
    [[...SADDLE, '--angle', '0', '-o', 'a.svg'], /--angle: found 0\.0°; allowed: 10° to 90°/],
    [[...SADDLE, '--angle', '180', '-o', 'a.svg'], /--angle: found 180\.0°; allowed/],
    [[...SADDLE, '--angle', '120', '-o', 'a.svg'], /the acute one here is 60\.0°/],
    [[...SADDLE, '--angle', '60 mm', '-o', 'a.svg'], /--angle: found "60 mm"/],
    [[...MITRE, '--joints', '0', '-o', 'a.svg'], /--joints: found 0; allowed: a whole number from 1/],
    [[...MITRE, '--joints', '1', '--angle', '120', '-o', 'a.svg'], /--joints: found 1; allowed: at least 2/],
    [[...MITRE, '--radius', '25', '-o', 'a.svg'], /--radius: found 25\.00 mm; allowed: above 25\.40 mm/],
    [[...MITRE, '--angle', '0', '-o', 'a.svg'], /--angle: found 0\.0°; allowed: above 0°/],
  ])('%j', async (args, message) => {
    const before = b.listing();
    const { code, out, err } = await b.evenrun(...args);
    expect(err).toMatch(/^evenrun: [^\n]+\n$/);
    expect(err).toMatch(message);
    expect(err).not.toMatch(/fault of the program/);
    expect([code, out]).toEqual([2, '']);
    expect(b.listing()).toEqual(before);
  });
});
