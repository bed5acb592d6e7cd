/** SVG: a small golden file, its size in mm, arcs that lie where their ends and radii say, and words that survive. */
import { expect, test } from 'vitest';
import { arc, area, circle, group, line, outline, text } from '../../../src/formats/drawing/items';
import { writeSvg } from '../../../src/formats/svg/write';

const PEN = { width: 0.35 };

const GOLDEN = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30.5mm" viewBox="0 0 40 30.5" font-family="Helvetica, Arial, 'Liberation Sans', sans-serif" fill="none" stroke-linejoin="round">
  <title>A &amp; B</title>
  <defs>
    <clipPath id="clip1"><rect x="1" y="2" width="30" height="20"/></clipPath>
  </defs>
  <rect width="40" height="30.5" fill="#fff"/>
  <path d="M0 0L10 5" data-name="edge" stroke="#000" stroke-width="0.35" stroke-dasharray="3 1.5"/>
  <path d="M8 5A3 3 0 0 1 2 5A3 3 0 0 1 8 5Z" stroke="#000" stroke-width="0.35"/>
  <path d="M0 0L2 0L1 1Z" fill="#000"/>
  <g clip-path="url(#clip1)">
  <g transform="translate(5 6.5)">
    <text x="1" y="2" font-size="3.5" fill="#000" text-anchor="middle" font-weight="bold" transform="rotate(-90 1 2)">22.5° &lt; Ø</text>
  </g>
  </g>
</svg>
`;

test('a small drawing comes out as it always has', () => {
  const drawing = {
    width: 40,
    height: 30.5,
    items: [
      line([0, 0], [10, 5], { ...PEN, dash: [3, 1.5] }, { name: 'edge' }),
      circle([5, 5], 3, PEN),
      area([
        [0, 0],
        [2, 0],
        [1, 1],
      ]),
      group([5, 6.5], [text('22.5° < Ø', [1, 2], 3.5, { anchor: 'middle', bold: true, turn: 90 })], {
        left: 1,
        top: 2,
        right: 31,
        bottom: 22,
      }),
    ],
  };
  expect(writeSvg(drawing, 'A & B')).toBe(GOLDEN);
});

/** The middle of an SVG arc, by the standard's own conversion from ends to centre (SVG 1.1, F.6.5), for circles. */
function arcMiddle([x1, y1]: number[], r: number, large: number, sweep: number, [x2, y2]: number[]): number[] {
  const [mx, my] = [(x1! - x2!) / 2, (y1! - y2!) / 2];
  const k = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, r * r - mx * mx - my * my) / (mx * mx + my * my));
  const [cx, cy] = [k * my + (x1! + x2!) / 2, -k * mx + (y1! + y2!) / 2];
  const start = Math.atan2(y1! - cy, x1! - cx);
  let turn = Math.atan2(y2! - cy, x2! - cx) - start;
  if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
  if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
  return [cx + r * Math.cos(start + turn / 2), cy + r * Math.sin(start + turn / 2)];
}

test.each([
  [0.3, 0.8],
  [-2, 3],
  [1, -0.5],
  [0.2, -5.5],
  [2.9, 6],
])('an arc from %d over %d passes through its own middle', (start, turn) => {
  const svg = writeSvg({ width: 9, height: 9, items: [arc([20, 30], 12, start, turn, PEN)] }, '');
  const numbers = /d="M([^"]+)"/.exec(svg)![1]!.split(/[A ]/).map(Number);
  const [x, y, r, , , large, sweep, u, v, , , , large2, sweep2, p, q] = numbers as [number, number, ...number[]];
  const halves = [arcMiddle([x, y], r!, large!, sweep!, [u!, v!]), arcMiddle([u!, v!], r!, large2!, sweep2!, [p!, q!])];
  for (const [i, share] of [0.25, 0.75].entries()) {
    expect(halves[i]![0]).toBeCloseTo(20 + 12 * Math.cos(start + share * turn), 4);
    expect(halves[i]![1]).toBeCloseTo(30 + 12 * Math.sin(start + share * turn), 4);
  }
});

test('a single arc beyond half a circle takes the long way', () => {
  const bulge = Math.tan((1.5 * Math.PI) / 4);
  const item = outline(
    [
      [10, 0, bulge],
      [0, -10, 0],
    ],
    PEN,
  );
  expect(writeSvg({ width: 9, height: 9, items: [item] }, '')).toContain('M10 0A10 10 0 1 1 0 -10Z');
});

test('what XML cannot hold is left out, and no number is NaN', () => {
  expect(writeSvg({ width: 9, height: 9, items: [text('a\u0007b', [0, 0], 3)] }, '\u0000')).toContain('>ab<');
  expect(() => writeSvg({ width: 9, height: 9, items: [line([0, Number.NaN], [1, 1], PEN)] }, '')).toThrow(/NaN/);
});
