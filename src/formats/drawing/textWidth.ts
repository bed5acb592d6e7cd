/**
 * How wide text comes out in Helvetica and in faces of the same metrics, so that a page can be laid out before any font is
 * at hand. Source: the metrics of the standard PDF fonts; a test holds the table against a PDF library.
 */

/** Advance of the characters from space to ~, thousandths of the size. */
// biome-ignore format: a table
const REGULAR = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];
// biome-ignore format: a table
const BOLD = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611,
  556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389,
  280, 389, 584,
];

const FIRST = 32;

/** Signs beyond ASCII that drawings use. Accented letters are as wide as their plain ones. */
const MORE: Readonly<Record<string, number>> = {
  '°': 400,
  '±': 584,
  '×': 584,
  '–': 556,
  '−': 584,
  '—': 1000,
  Ø: 778,
  '…': 1000,
  '·': 278,
  '²': 333,
};
const APOSTROPHE = { regular: 222, bold: 278 };

/** Anything else is taken for a wide letter. */
const WIDE = 778;

/** @param size of the type, mm. @returns mm */
export function textWidth(text: string, size: number, bold = false): number {
  const table = bold ? BOLD : REGULAR;
  const apostrophe = bold ? APOSTROPHE.bold : APOSTROPHE.regular;
  let sum = 0;
  for (const character of text.normalize('NFD').replace(/\p{M}/gu, ''))
    sum += character === '’' ? apostrophe : (MORE[character] ?? table[character.codePointAt(0)! - FIRST] ?? WIDE);
  return (sum * size) / 1000;
}

/** Not between a whole inch and its fraction, which would read as two numbers, nor between a number and its unit. */
const BREAK = / (?!(?<=\d )\d+\/\d)(?!(?<=[\d.] )(?:mm|in|kg|lb|°)(?![\w-]))/;

/** Lines no wider than `width`, broken between words; a word that is wider by itself keeps a line of its own. */
export function wrapText(text: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = [];
  for (const word of text.split(BREAK)) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && textWidth(longer, size, bold) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
