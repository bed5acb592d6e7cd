/** PDF: read back by its library: sizes of pages, the unit, the words as they can be shown; same input, same bytes. */
import { PDFDocument, StandardFonts } from 'pdf-lib';
import { expect, test } from 'vitest';
import { circle, group, line, text } from '../../../src/formats/drawing/items';
import { textWidth, wrapText } from '../../../src/formats/drawing/textWidth';
import { winAnsi } from '../../../src/formats/pdf/winAnsi';
import { POINTS_PER_MM, writePdf } from '../../../src/formats/pdf/write';
import { contents } from './contents';

const PEN = { width: 0.35 };
const page = (width: number, height: number) => ({
  width,
  height,
  items: [
    line([10, 20], [110, 20], { width: 0.5, dash: [3, 1.5] }),
    circle([50, 60], 25, PEN),
    text('22.5° ± 0.1', [10, 30], 4),
    group([5, 5], [text('turned', [10, 30], 4, { anchor: 'end', turn: 90, bold: true })], {
      left: 0,
      top: 0,
      right: 50,
      bottom: 50,
    }),
  ],
});

test('pages are as large as they were drawn, in the order given', async () => {
  const bytes = await writePdf([page(210, 297), page(279.4, 215.9)], 'Two pages');
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  expect(document.getTitle()).toBe('Two pages');
  const sizes = document.getPages().map((p) => [p.getWidth() / POINTS_PER_MM, p.getHeight() / POINTS_PER_MM]);
  for (const [i, size] of [
    [210, 297],
    [279.4, 215.9],
  ].entries())
    for (const axis of [0, 1]) expect(sizes[i]![axis]).toBeCloseTo(size[axis]!, 6);
});

test('the page’s unit is the millimetre, y down, and numbers are the drawing’s own', async () => {
  const drawn = await contents(await writePdf([page(210, 297)], ''));
  const k = 72 / 25.4;
  expect(drawn.startsWith(`${k} 0 0 ${-k} 0 ${297 * k} cm`)).toBe(true);
  expect(drawn).toContain('10 20 m\n110 20 l\nS');
  expect(drawn).toContain('[3 1.5] 0 d');
});

test('circles by cubics stray less than a micrometre', async () => {
  const drawn = await contents(await writePdf([page(210, 297)], ''));
  const curves = [...drawn.matchAll(/^([-\d.]+(?: [-\d.]+){5}) c$/gm)].map((m) => m[1]!.split(' ').map(Number));
  expect(curves).toHaveLength(8);
  let [x, y] = [75, 60];
  for (const [ax, ay, bx, by, ex, ey] of curves as [number, number, number, number, number, number][]) {
    for (let t = 0; t <= 1; t += 0.05) {
      const s = 1 - t;
      const at = (p: number, a: number, b: number, e: number) =>
        s ** 3 * p + 3 * s * s * t * a + 3 * s * t * t * b + t ** 3 * e;
      expect(Math.abs(Math.hypot(at(x, ax, bx, ex) - 50, at(y, ay, by, ey) - 60) - 25)).toBeLessThan(1e-3);
    }
    [x, y] = [ex, ey];
  }
});

test('same drawings, same bytes', async () => {
  const [a, b] = [await writePdf([page(210, 297)], 'x'), await writePdf([page(210, 297)], 'x')];
  expect(a).toEqual(b);
});

test('the degree sign is one byte of the font’s own set, and what the set lacks has its nearest sign', async () => {
  // B0 is ° in code page 1252.
  expect((await contents(await writePdf([page(210, 297)], ''))).toUpperCase()).toContain('<32322E35B020B120302E31> TJ');
  expect(winAnsi('−3.5° × ½ “Ø”')).toBe('–3.5° × ½ “Ø”');
  expect(winAnsi('Żółw ő 鉄 ≤')).toBe('Zólw o ? <=');
  await expect(writePdf([{ ...page(210, 297), items: [text('鉄\n\t°', [0, 0], 4)] }], '鉄')).resolves.toBeDefined();
});

test('the table of widths is the fonts’ own', async () => {
  const document = await PDFDocument.create();
  for (const [bold, name] of [
    [false, StandardFonts.Helvetica],
    [true, StandardFonts.HelveticaBold],
  ] as const) {
    const font = document.embedStandardFont(name);
    // One at a time: the library would kern neighbours, which a page does not.
    for (const c of `${Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)).join('')}°±×–—Ø…’·²éÜ`)
      expect(textWidth(c, 1000, bold), c).toBe(font.widthOfTextAtSize(c, 1000));
  }
});

test('lines are broken between words, none wider than allowed', () => {
  const words = 'Wrap it printed side out and glue the left edge down on the dashed line';
  const lines = wrapText(words, 40, 3.5);
  expect(lines.join(' ')).toBe(words);
  for (const l of lines) expect(textWidth(l, 3.5)).toBeLessThanOrEqual(40);
  expect(wrapText('incomprehensibilities', 5, 3.5)).toEqual(['incomprehensibilities']);
});
