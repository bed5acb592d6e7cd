/** Where the words of a drawing lie: the four corners of each text, turned as it is, from descender to capital. mm. */
import type { Item, Point, Text } from './drawing';
import { textWidth } from './textWidth';

/** Below and above the baseline, in sizes: of Helvetica. */
const DESCENDER = 0.2;
const ASCENDER = 0.75;

export type PlacedText = { readonly text: Text; readonly corners: readonly Point[] };

/** Of groups too, in the frame that the item itself lies in. */
export function placedTexts(item: Item, [dx, dy]: Point = [0, 0]): PlacedText[] {
  if (item.kind === 'curve') return [];
  if (item.kind === 'group') return item.items.flatMap((i) => placedTexts(i, [dx + item.move[0], dy + item.move[1]]));
  const { at, size, anchor, turn, bold } = item;
  const width = textWidth(item.text, size, bold);
  const start = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const corner = (u: number, v: number): Point => [at[0] + dx + u * c - v * s, at[1] + dy - u * s - v * c];
  const [low, high] = [-DESCENDER * size, ASCENDER * size];
  const corners = [corner(start, low), corner(start + width, low), corner(start + width, high), corner(start, high)];
  return [{ text: item, corners }];
}
