/** Running text in columns, as notes over a drawing: broken to the column, and as even as lines allow. mm. */
import type { Item, Point } from '../../formats/drawing/drawing';
import { text } from '../../formats/drawing/items';
import { wrapText } from '../../formats/drawing/textWidth';
import { LINE, TYPE } from './style';

const GUTTER = 6;
/** After a paragraph, beyond the line's own. */
const BETWEEN = 1.4;

export type Paragraphs = { readonly height: number; readonly at: (corner: Point) => Item[] };

/** @param columns how many, of equal width; a paragraph is never split over two */
export function paragraphs(words: readonly string[], width: number, columns: number): Paragraphs {
  const column = (width - (columns - 1) * GUTTER) / columns;
  const broken = words.map((w) => wrapText(w, column, TYPE.plain));
  const stacks = evenly(broken, columns);
  return {
    height: Math.max(0, ...stacks.map(heightOf)),
    at: ([x, y]) =>
      stacks.flatMap((stack, c) =>
        stack.flatMap((lines, p) => {
          const top = y + heightOf(stack.slice(0, p)) + (p > 0 ? BETWEEN : 0);
          return lines.map((l, i) => text(l, [x + c * (column + GUTTER), top + (i + 0.75) * LINE], TYPE.plain));
        }),
      ),
  };
}

const heightOf = (stack: readonly string[][]): number =>
  stack.flat().length * LINE + Math.max(0, stack.length - 1) * BETWEEN;

/** The least height at which they fit, each column filled before the next. */
function evenly(broken: readonly string[][], columns: number): string[][][] {
  for (let most = heightOf(broken) / columns; ; most += BETWEEN) {
    const stacks: string[][][] = [[]];
    for (const lines of broken) {
      if (stacks.at(-1)!.length > 0 && heightOf([...stacks.at(-1)!, lines]) > most) stacks.push([]);
      stacks.at(-1)!.push(lines);
    }
    if (stacks.length <= columns) return stacks;
  }
}
