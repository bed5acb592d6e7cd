/** A sheet as a draughtsman looks at it first: which words lie over others, what lies off the page. mm */
import type { Drawing, Item, Point } from '../../../src/formats/drawing/drawing';
import { type PlacedText, placedTexts } from '../../../src/formats/drawing/textCorners';
import { MARGIN } from '../../../src/shop/sheet/paper';
import { framed, type Sheet } from '../../../src/shop/sheet/sheet';
import { STAMP } from './cuts';

export const textsOf = ({ items }: Pick<Drawing, 'items'>): PlacedText[] =>
  items.flatMap((i) => placedTexts(i)).filter((t) => t.text.text);

/** In inches the bar's words are longest. */
const onPaper = (sheet: Sheet): Drawing => framed(sheet, { ...STAMP, display: 'in' }, { page: 10, of: 12 });

export function clashesOn(sheet: Sheet): string[] {
  const texts = textsOf(onPaper(sheet));
  return texts.flatMap((a, i) =>
    texts.slice(i + 1).flatMap((b) => (overlap(a.corners, b.corners) ? [`${a.text.text} | ${b.text.text}`] : [])),
  );
}

export function lostOn(sheet: Sheet): (string | Point)[] {
  const drawing = onPaper(sheet);
  const beyond = (x: number, y: number, by: number) =>
    x < by - 1e-6 || y < by - 1e-6 || x > drawing.width - by + 1e-6 || y > drawing.height - by + 1e-6;
  const off = textsOf(drawing).filter(({ corners }) => corners.some(([x, y]) => beyond(x, y, MARGIN - 0.5)));
  const lost = drawing.items.flatMap((item) => cornersOf(item, [0, 0])).filter(([x, y]) => beyond(x, y, MARGIN - 1));
  return [...off.map((t) => t.text.text), ...lost];
}

/** Two convex quadrilaterals are apart where some edge of either has all of the other beyond it. */
function overlap(a: readonly Point[], b: readonly Point[]): boolean {
  return ![a, b].some((shape) =>
    shape.some((p, i) => {
      const q = shape[(i + 1) % shape.length]!;
      const [nx, ny] = [q[1] - p[1], p[0] - q[0]];
      const reach = (c: readonly Point[]) => c.map(([x, y]) => (x - p[0]) * nx + (y - p[1]) * ny);
      const [mine, other] = [reach(shape), reach(b === shape ? a : b)];
      const slack = 1e-6 * Math.hypot(nx, ny);
      return Math.min(...other) > Math.max(...mine) - slack || Math.max(...other) < Math.min(...mine) + slack;
    }),
  );
}

/** Of curves that nothing cuts off; a group that is cut off lies where its clip does. */
function cornersOf(item: Item, [dx, dy]: Point): Point[] {
  if (item.kind === 'text') return [];
  if (item.kind === 'curve') return item.vertices.map(([x, y]): Point => [x + dx, y + dy]);
  const { clip, move, items } = item;
  if (clip)
    return [
      [clip.left, clip.top],
      [clip.right, clip.bottom],
    ];
  return items.flatMap((i) => cornersOf(i, [dx + move[0], dy + move[1]]));
}
