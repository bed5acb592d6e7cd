/**
 * Tables as RFC 4180 has them: comma, CRLF, a header row, quotes only where needed. Numbers always with a point, never
 * with an exponent and never as minus zero, whatever the machine's language.
 */

/** Whole numbers that count (rows, points) stand as they are; every measure is written by `decimal`. */
export type Cell = string | Decimal;
export type Decimal = { readonly text: string };

/**
 * Decimals of every measure. Eight, not the five a shop reads: a bend angle off by 1e-5° moves the end of a metre of tube
 * by more than the length tolerance, and these tables must give the centerline back.
 */
export const DECIMALS = 8;

/** Beyond this a double no longer holds all the decimals, and toFixed would turn to exponents. */
const LARGEST = 1e9;

export function decimal(value: number): Decimal {
  if (!(Math.abs(value) <= LARGEST)) throw new RangeError(`A table cannot hold the number ${value}`);
  const text = value.toFixed(DECIMALS);
  return { text: Number(text) === 0 ? (0).toFixed(DECIMALS) : text };
}

export function writeCsv(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const lines = [columns, ...rows].map((row) => {
    if (row.length !== columns.length)
      throw new RangeError(`A row has ${row.length} cells under ${columns.length} columns`);
    return row.map((cell) => (typeof cell === 'string' ? quoted(cell) : cell.text)).join(',');
  });
  return lines.map((line) => `${line}\r\n`).join('');
}

/** Spaces at either end are quoted too: some spreadsheets strip them otherwise, and ids may have them. */
function quoted(text: string): string {
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
