/** RFC 4180 back into records, for proving what was written: a record is a row keyed by the header. */

/** @throws SyntaxError where a quote is not closed or a row does not fit the header */
export function readCsv(text: string): Record<string, string>[] {
  const [header = [], ...rows] = splitRows(text);
  return rows.map((row, i) => {
    if (row.length !== header.length)
      throw new SyntaxError(`Row ${i + 1} has ${row.length} cells under ${header.length} columns`);
    return Object.fromEntries(header.map((name, k) => [name, row[k]!]));
  });
}

function splitRows(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  // One cell, quoted or bare, and what ends it.
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|\n|$)/y;
  while (cell.lastIndex < text.length) {
    const at = cell.lastIndex;
    const found = cell.exec(text);
    if (!found) throw new SyntaxError(`A quote that does not match, at character ${at + 1}`);
    row.push(found[1] === undefined ? found[2]! : found[1].replaceAll('""', '"'));
    if (found[3] === ',') continue;
    rows.push(row);
    row = [];
  }
  // The text ended on a comma: one more, empty, cell.
  if (row.length > 0) rows.push([...row, '']);
  return rows;
}
