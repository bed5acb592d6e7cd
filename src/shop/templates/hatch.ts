/** Light hatching between a curve and a straight line above it, at 45°: what is not kept. mm, y down. */
import type { Item, Point } from '../../formats/drawing/drawing';
import { line } from '../../formats/drawing/items';
import { HATCH } from '../sheet/style';

const SPACING = 6;
const STEP = 0.25;

/** @param edge y of the curve at x. @param top y of the straight line, above (less than) the curve */
export function hatchAbove(edge: (x: number) => number, top: number, width: number): Item[] {
  const lines: Item[] = [];
  const lowest = Math.max(...Array.from({ length: 400 }, (_, i) => edge((i * width) / 399)));
  const gap = SPACING * Math.SQRT2;
  // Each line rises to the right: y = x0 − x + top, through (x0, top).
  for (let x0 = gap / 2; x0 < width + (lowest - top); x0 += gap) {
    let start: Point | null = null;
    let end: Point | null = null;
    for (let x = Math.min(x0, width); x >= 0; x -= STEP) {
      const y = top + x0 - x;
      if (y < edge(x)) {
        start ??= [x, y];
        end = [x, y];
      } else if (start && end) {
        lines.push(line(start, end, HATCH));
        start = null;
        end = null;
      }
      if (y > lowest) break;
    }
    if (start && end && start !== end) lines.push(line(start, end, HATCH));
  }
  return lines;
}
