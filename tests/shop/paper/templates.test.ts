/** Templates as their SVG holds them, read back number by number: curve, width, stations, heel and crotch, words. mm. */
import { describe, expect, test } from 'vitest';
import type { WrapCut } from '../../../geometry';
import { writeSvg } from '../../../src/formats/svg/write';
import { copes } from '../../../src/shop/copes';
import { framed } from '../../../src/shop/sheet/sheet';
import { templateFile, templateSheets } from '../../../src/shop/templates/templateSheets';
import { CUTS, MITRE, MM, STAMP } from './cuts';

type P = readonly [number, number];

const svgOf = (cut: WrapCut, options: Parameters<typeof templateFile>[1] = MM) =>
  writeSvg(framed(templateFile(cut, options), STAMP), cut.title);

/** Corners of every path of that name, in its own group's frame. */
const paths = (svg: string, name: string): P[][] =>
  [...svg.matchAll(new RegExp(`<path d="M([^"]+?)Z?" data-name="${name}"`, 'g'))].map((m) =>
    m[1]!.split('L').map((p) => p.split(' ').map(Number) as unknown as P),
  );

/** Every word, lines joined. */
const wordsOf = (svg: string): string => [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map((m) => m[1]).join(' ');

const heightAt = (curve: readonly P[], x: number): number => {
  const i = curve.findIndex(([u]) => u >= x - 1e-5);
  const [a, b] = [curve[Math.max(0, i - 1)]!, curve[i]!];
  return a[0] === b[0] ? b[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
};

describe.each(CUTS.map((cut) => [cut.id, cut] as const))('%s', (_, cut) => {
  const svg = svgOf(cut);
  const [curve] = paths(svg, 'cut');
  const [edge] = paths(svg, 'paper edge');
  const width = Math.PI * (cut.outsideDiameter + 0.1);

  test('the curve is the cut’s within 0.05 mm everywhere, and the paper as wide as once round it', () => {
    const xs = edge!.map(([x]) => x);
    expect(Math.abs(Math.max(...xs) - Math.min(...xs) - width)).toBeLessThan(1e-4);
    const low = cut.height(0) + curve![0]![1];
    for (let k = 0; k <= 2000; k++) {
      const share = Math.min(k / 2000, 1 - 1e-9);
      const wanted = cut.height(share * 2 * Math.PI);
      expect(Math.abs(low - heightAt(curve!, share * width) - wanted)).toBeLessThan(0.05 / 4);
    }
    // The paper's lower edge lies a whole number of centimetres from the square line, and below the whole curve.
    expect(Math.abs(low / 10 - Math.round(low / 10))).toBeLessThan(1e-6);
    expect(Math.max(...curve!.map(([, y]) => y))).toBeLessThan(-20);
  });

  test('8 or 16 stations stand on the curve and show their ordinates', () => {
    const ordinates = [...svg.matchAll(/rotate\(-90 [^>]+>([\d.]+)</g)].map((m) => Number(m[1]));
    const count = width > 80 ? 16 : 8;
    for (let i = 0; i < count; i++)
      expect(Math.abs(ordinates[i]! - cut.height((2 * Math.PI * i) / count))).toBeLessThanOrEqual(0.005 + 1e-9);
    for (let i = 1; i < count; i++) {
      const [found] = paths(svg, `station ${i}`);
      if (!found) continue;
      expect(found[0]![0]).toBeCloseTo((width * i) / count, 4);
      expect(Math.abs(found[1]![1] - heightAt(curve!, found[1]![0]))).toBeLessThan(0.02);
    }
  });

  test('heel is marked where the piece is longest, crotch where it is shortest', () => {
    const ys = curve!.map(([, y]) => y);
    for (const [name, extreme] of [
      ['heel', Math.min(...ys)],
      ['crotch', Math.max(...ys)],
    ] as const) {
      const marks = paths(svg, name);
      expect(marks.length).toBeGreaterThan(0);
      for (const [[x]] of marks as unknown as P[][])
        expect(Math.abs(heightAt(curve!, Math.min(x!, width - 1e-9)) - extreme)).toBeLessThan(0.01);
    }
  });

  test('says what has to be known', () => {
    const words = wordsOf(svg);
    for (const word of ['KEEP', 'SCRAP', 'HEEL', 'CROTCH', 'GLUE', 'to the cut', 'This bar measures 100.0 mm'])
      expect(words).toContain(word);
    expect(words).toContain(cut.measuredOn === 'bore' ? 'BORE (ID)' : 'OUTSIDE (OD)');
    expect(words).toContain(`${width.toFixed(2)} mm`);
    expect(words.replaceAll(' ', '')).toContain(cut.seam.replaceAll(' ', ''));
    expect(words).toContain('design 0123456789ab');
  });

  test('the check bar’s ends stand 100 mm apart', () => {
    const [a, b] = paths(svg, 'check bar end');
    expect(b![0]![0] - a![0]![0]).toBe(100);
  });
});

test('the file’s size is in mm, one unit a millimetre', () => {
  const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d. ]+)"/.exec(svgOf(MITRE))!;
  expect(box).toBe(`${width} ${height}`);
});

test('thicker paper is wider; a display in inches writes inches', () => {
  const svg = svgOf(MITRE, { paperThickness: 0.25, display: 'in' });
  const xs = paths(svg, 'paper edge')[0]!.map(([x]) => x);
  expect(Math.max(...xs)).toBeCloseTo(Math.PI * 51.05, 4);
  expect(svg).toContain(`>${(MITRE.height(0) / 25.4).toFixed(3)}<`);
});

test('a cut near the tube’s end: the paper hangs over the square line, which is drawn on it', () => {
  const near = CUTS.find((c) => c.id === 'near the end')!;
  const svg = svgOf(near);
  const [[[, y]]] = paths(svg, 'square line') as unknown as [[P]];
  const [curve] = paths(svg, 'cut');
  expect(y - curve![0]![1]).toBeCloseTo(near.height(0), 4);
  expect(wordsOf(svg)).toContain(`The square line is drawn ${(-y).toFixed(2)} mm above the lower edge.`);
});

test('a cut far from the tube’s end: the paper stops short, and says by how much', () => {
  const far = CUTS.find((c) => c.id === 'far from the end')!;
  const svg = svgOf(far);
  const low = far.height(0) + paths(svg, 'cut')[0]![0]![1];
  expect(low).toBeGreaterThan(200);
  expect(wordsOf(svg)).toContain(`The lower edge lies ${low.toFixed(2)} mm`);
});

test('a file for each cut, named by it', () => {
  const files = copes(CUTS, { ...MM, paper: 'a4' }, STAMP);
  expect(files.map((f) => f.name)).toEqual(CUTS.map((c) => `copes/${c.id}.svg`));
  expect(new TextDecoder().decode(files[0]!.bytes)).toBe(
    writeSvg(framed(templateFile(MITRE, MM), STAMP), `Four into one: ${MITRE.title}`),
  );
});

test('notes go on a sheet of their own where that takes fewer', () => {
  const large = CUTS.find((c) => c.id === 'large')!;
  expect(templateSheets(large, MM, 'letter').map((s) => s.title)).toEqual([
    'Saddle large, notes',
    'Saddle large, part 1 of 2',
    'Saddle large, part 2 of 2',
  ]);
});

test('same cut, same bytes', () => {
  expect(svgOf(MITRE)).toBe(svgOf(MITRE));
});

test('a wide one goes on two sheets, a small one on one, whichever way takes fewest', () => {
  const sheetsOf = (id: string) => templateSheets(CUTS.find((c) => c.id === id)!, MM, 'a4');
  expect(sheetsOf('boss').map((s) => [s.width, s.height])).toEqual([[210, 297]]);
  expect(sheetsOf('bore').map((s) => [s.width, s.height])).toEqual([[297, 210]]);
  expect(sheetsOf('large').filter((s) => s.title.includes('part'))).toHaveLength(2);
});
