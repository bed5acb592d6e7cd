/**
 * How much face a nut or bolt head takes, mm. Sources: width across corners, ISO 4032 / ISO 4014 table 1; plain washers'
 * diameter, ISO 7089, from memory. Beyond the table by the usual proportions, from memory: 1.8 and 2 times the thread.
 */
const ACROSS_CORNERS: Readonly<Record<string, number>> = { M6: 11.05, M8: 14.38, M10: 17.77, M12: 20.03 };
const WASHER: Readonly<Record<string, number>> = { M6: 12, M8: 16, M10: 20, M12: 24 };
const MM_IN_INCH = 25.4;

/** Nominal, of `M8`, `M8x1.25`, `5/16-18` or `3/8`; null where the text names no size. */
export function threadDiameter(thread: string): number | null {
  const metric = /^\s*m\s*(\d+(?:\.\d+)?)/i.exec(thread);
  if (metric) return Number(metric[1]);
  const inch = /^\s*(\d+)\s*\/\s*(\d+)(?!\d)/.exec(thread);
  return inch && Number(inch[2]) > 0 ? (Number(inch[1]) / Number(inch[2])) * MM_IN_INCH : null;
}

const known = (table: Readonly<Record<string, number>>, thread: string): number | undefined => {
  const size = /^\s*(m\d+)(?![\d.])/i.exec(thread)?.[1]?.toUpperCase();
  return size !== undefined && Object.hasOwn(table, size) ? table[size] : undefined;
};

/** Diameters of the circles that a nut's corners run on and that its washer covers. */
export function nutRoom(thread: string, hole: number): { readonly nut: number; readonly washer: number } {
  const diameter = threadDiameter(thread) ?? hole / 1.1;
  return { nut: known(ACROSS_CORNERS, thread) ?? 1.8 * diameter, washer: known(WASHER, thread) ?? 2 * diameter };
}
