/**
 * Words beside places of a picture: each where it covers no other words and as few lines as may be, near its place, a leader to
 * it. Those that find no room are left out and returned. mm on paper, y down.
 */
import type { Box, Item, Point } from '../../../formats/drawing/drawing';
import { circle, cover, line, text } from '../../../formats/drawing/items';
import { textWidth } from '../../../formats/drawing/textWidth';
import { CAPITAL, THIN } from '../../sheet/style';

export type Label = {
  readonly words: string;
  readonly at: Point;
  readonly size: number;
  readonly bold?: true;
  /** A dot at its place. */
  readonly dot?: true;
};

const AROUND = 24;
const REACHES = [4, 6, 8, 11, 14, 18, 23, 29] as const;
const ROOM = 0.8;
/** A line through the words' box is as bad as so much farther away, mm. */
const LINE_COST = 1.5;

export function labelled(
  labels: readonly Label[],
  drawn: readonly (readonly Point[])[],
  within: Box,
): { items: Item[]; left: string[] } {
  const inks = drawn.flatMap((run) => dense(run));
  const taken: Box[] = [];
  const leaders: (readonly [Point, Point])[] = [];
  const left: string[] = [];
  const words: Item[] = [];
  for (const label of labels) {
    const best = placeOf(label, inks, taken, leaders, labels, within);
    if (!best) {
      left.push(label.words);
      continue;
    }
    taken.push(best.box);
    leaders.push([label.at, best.foot]);
    const { left: l, right: r, bottom } = best.box;
    words.push(
      line(label.at, best.foot, THIN),
      cover(best.box),
      text(label.words, [(l + r) / 2, bottom - ROOM], label.size, {
        anchor: 'middle',
        ...(label.bold ? { bold: true } : {}),
      }),
    );
  }
  const dots = labels.filter((l) => l.dot && !left.includes(l.words)).map((l) => dotAt(l.at));
  return { items: [...words, ...dots], left };
}

const dotAt = (at: Point): Item => ({ ...circle(at, 0.7, THIN), fill: 'black' });

type Place = { readonly box: Box; readonly foot: Point; readonly cost: number };

function placeOf(
  { words, at: [x, y], size, bold }: Label,
  inks: readonly Point[],
  taken: readonly Box[],
  leaders: readonly (readonly [Point, Point])[],
  labels: readonly Label[],
  within: Box,
): Place | null {
  const [w, h] = [textWidth(words, size, bold) / 2 + ROOM, (CAPITAL * size) / 2 + ROOM];
  let best: Place | null = null;
  for (const reach of REACHES)
    for (let k = 0; k < AROUND; k++) {
      const a = (2 * Math.PI * k) / AROUND;
      const [cx, cy] = [x + (reach + w) * Math.cos(a), y + (reach + h) * Math.sin(a)];
      const box: Box = { left: cx - w, right: cx + w, top: cy - h, bottom: cy + h };
      if (box.left < within.left || box.right > within.right || box.top < within.top || box.bottom > within.bottom)
        continue;
      if (taken.some((b) => apart(b, box) < 0.6)) continue;
      if (labels.some((l) => l.dot && inBox(l.at, box, 1))) continue;
      const foot: Point = [Math.min(Math.max(x, box.left), box.right), Math.min(Math.max(y, box.top), box.bottom)];
      const crossed =
        leaders.some((one) => cross(one, [[x, y], foot]) || cuts(box, ...one)) ||
        taken.some((b) => cuts(b, [x, y], foot));
      const cost = reach + LINE_COST * inks.filter((p) => inBox(p, box, 0)).length + (crossed ? 60 : 0);
      if (!best || cost < best.cost) best = { box, foot, cost };
    }
  return best;
}

const dense = (run: readonly Point[]): Point[] =>
  run.slice(1).flatMap(([x, y], i) => {
    const [px, py] = run[i]!;
    const count = Math.max(1, Math.ceil(Math.hypot(x - px, y - py)));
    return Array.from({ length: count }, (_, k): Point => [px + ((x - px) * k) / count, py + ((y - py) * k) / count]);
  });

const inBox = ([x, y]: Point, b: Box, by: number): boolean =>
  x > b.left - by && x < b.right + by && y > b.top - by && y < b.bottom + by;

const apart = (a: Box, b: Box): number =>
  Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom);

const side = (a: Point, b: Point, p: Point): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

const cross = ([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

const SHARES = Array.from({ length: 13 }, (_, k) => k / 12);

/** A leader through other words. */
const cuts = (b: Box, from: Point, to: Point): boolean =>
  SHARES.some((t) => inBox([from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])], b, 0.3));
