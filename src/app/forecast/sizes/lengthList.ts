/** Several lengths in one field: "450, 600; 23 5/8 in". Bare numbers count in the display unit. Answers in mm, rising, each once. */
import type { Display } from '../../../../shared/design/types';
import { parseLength } from '../../../../shared/parseLength';
import { formatLength, lengthParts } from '../../../../shared/units';

export type ListAnswer =
  | { readonly ok: true; readonly list: readonly number[] }
  | { readonly ok: false; readonly problem: string };

/** More than these no map shows, and nobody waits for. */
const MOST = 12;

/** @param within least and most, mm */
export function parseLengthList(text: string, display: Display, within: readonly [number, number]): ListAnswer {
  const parts = text.split(/;|,\s+|\n/).flatMap((part) => commas(part, display, within));
  const found = parts.filter((part) => part.trim() !== '');
  const list: number[] = [];
  for (const part of found) {
    const answer = parseLength(part, display);
    if (!answer.ok) return { ok: false, problem: `“${part.trim()}”: ${answer.problem}` };
    if (!isWithin(answer.mm, within)) return { ok: false, problem: `“${part.trim()}”: ${rangeWords(display, within)}` };
    list.push(answer.mm);
  }
  const once = [...new Set(list)].sort((a, b) => a - b);
  if (once.length > MOST)
    return {
      ok: false,
      problem: `${once.length} are given: leave ${once.length - MOST} out, at most ${MOST} are tried.`,
    };
  return { ok: true, list: once };
}

/** "450,600" are two and "42,4" is one: a comma is a decimal mark where what it parts could not be meant. */
function commas(part: string, display: Display, within: readonly [number, number]): readonly string[] {
  const pieces = part.split(',');
  const canBe = pieces.every((piece) => {
    const answer = parseLength(piece, display);
    return answer.ok && isWithin(answer.mm, within);
  });
  return canBe ? pieces : [part];
}

const isWithin = (mm: number, [least, most]: readonly [number, number]): boolean => mm >= least && mm <= most;

function rangeWords(display: Display, [least, most]: readonly [number, number]): string {
  const digits = display === 'in' ? 1 : 0;
  return `give lengths from ${lengthParts(least, display, digits).number} to ${formatLength(most, display, digits)}, with commas between them.`;
}

/** As they are shown in the field again. @param list mm */
export const listText = (list: readonly number[], display: Display): string =>
  list.map((mm) => String(Number(lengthParts(mm, display).number))).join(', ');
