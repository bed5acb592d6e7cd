/** A cutting list as people write one: `length,count` or a length a line, in mm or with units, and bars on the command line. mm. */
import type { Display } from '../../shared/design/types';
import { parseLength } from '../../shared/units';
import type { BarStock, CutPiece } from '../shop/nest/bars';
import { UnusableInput } from './io';

export const MOST_PIECES = 10_000;
const HEADER = /^\s*"?(length|piece|mm|part)/i;

/** `12,5` is a length and a count; where a line has semicolons or tabs, those part its cells. Empty lines and `#` lines are not read. */
export function piecesOf(text: string, file: string, display: Display): CutPiece[] {
  const pieces: CutPiece[] = [];
  for (const [i, line] of text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (line.trim() === '' || line.trim().startsWith('#') || (pieces.length === 0 && HEADER.test(line))) continue;
    const where = `${file}, line ${i + 1}`;
    const [length, count = '1', ...more] = line.split(/[;\t]/.test(line) ? /[;\t]/ : ',').map(bare);
    if (more.some((cell) => cell !== ''))
      throw new UnusableInput(`${where}: found "${line.trim()}"; allowed: a length and a count, such as 612.5,4`);
    const times = wholeCount(where, count === '' ? '1' : count);
    if (pieces.length + times > MOST_PIECES)
      throw new UnusableInput(`${where}: more than ${MOST_PIECES} pieces; share them out among several lists`);
    const mm = lengthOf(where, length!, display);
    for (let n = 1; n <= times; n++) pieces.push({ id: `${i + 1}-${n}`, length: mm });
  }
  if (pieces.length === 0)
    throw new UnusableInput(`${file}: no piece in it; a line has a length and a count, such as 612.5,4`);
  return pieces;
}

const bare = (cell: string): string =>
  cell
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .replaceAll('""', '"')
    .trim();

function wholeCount(where: string, text: string): number {
  if (/^\d{1,6}$/.test(text) && Number(text) > 0) return Number(text);
  throw new UnusableInput(`${where}: found a count of "${text}"; allowed: a whole number from 1`);
}

function lengthOf(where: string, text: string, display: Display): number {
  const answer = parseLength(text, display);
  if (!answer.ok) throw new UnusableInput(`${where}: found "${text}": ${answer.problem}`);
  if (answer.mm > 0) return answer.mm;
  throw new UnusableInput(`${where}: found a length of "${text}"; allowed: more than 0`);
}

/** `6000`: on sale, as many as it takes; `6000x3`: three on the shelf and no more; `6000@24.50`: on sale at a price. */
export function barsOf(texts: readonly string[], display: Display): BarStock[] {
  const bars = texts.map((text): BarStock => {
    const [, length, count, price] = /^(.*?)(?:x(-?[\d.]+))?(?:@(.+))?$/.exec(text.trim()) ?? [];
    if (count !== undefined && price !== undefined)
      throw new UnusableInput(`--bar: found "${text}"; allowed: a count on the shelf or a price, not both`);
    const mm = lengthOf('--bar', length!, display);
    const id = text.trim();
    if (count !== undefined) return { id, length: mm, count: wholeCount('--bar', count), buy: false };
    if (price === undefined) return { id, length: mm, count: 0, buy: true };
    if (!/^\d+(\.\d+)?$/.test(price))
      throw new UnusableInput(`--bar: found a price of "${price}"; allowed: a number, such as 24.50`);
    return { id, length: mm, count: 0, buy: true, price: Number(price) };
  });
  const twice = bars.find(({ id }, i) => bars.findIndex((bar) => bar.id === id) !== i);
  if (twice) throw new UnusableInput(`--bar: "${twice.id}" is given twice; give each once`);
  return bars;
}
