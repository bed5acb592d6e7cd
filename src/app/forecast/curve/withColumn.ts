/** A column more, the same in every row of a table. */

const quoted = (text: string): string => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** @param csv rows end with a line break; one within quotes ends none */
export function withColumn(csv: string, name: string, value: string): string {
  let row = 0;
  return csv.replace(/("(?:[^"]|"")*")|\r?\n/g, (found, inQuotes) =>
    inQuotes === undefined ? `,${quoted(row++ === 0 ? name : value)}${found}` : found,
  );
}
