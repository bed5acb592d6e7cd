/** Rows in columns as wide as what they hold: text to the left, numbers to the right. */

export type Align = 'left' | 'right';

/** Two spaces between columns that hold anything; nothing behind the last, so that lines can be compared and pasted. */
export function columns(rows: readonly (readonly string[])[], align: readonly Align[], indent = '  '): string {
  const widths = align.map((_, k) => Math.max(0, ...rows.map((row) => width(row[k] ?? ''))));
  return rows
    .map((row) => {
      const cells = align.flatMap((side, k) => (widths[k] ? [pad(row[k] ?? '', widths[k], side)] : []));
      return `${indent}${cells.join('  ')}`.trimEnd();
    })
    .join('\n');
}

/** Characters as a terminal counts them, near enough for ids and numbers. */
const width = (text: string): number => [...text].length;

function pad(text: string, to: number, side: Align): string {
  const space = ' '.repeat(to - width(text));
  return side === 'left' ? text + space : space + text;
}
