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

/**
 * Across flats, across corners, heights of nut and bolt head, mm. Sources: ISO 4032 / ISO 4014 table 1, of which the heads'
 * heights are from memory. Beyond the table by the usual proportions, from memory.
 */
export type HexSize = {
  readonly acrossFlats: number;
  readonly acrossCorners: number;
  readonly nutHeight: number;
  readonly headHeight: number;
  /** Of the thread. */
  readonly diameter: number;
};

const ACROSS_FLATS: Readonly<Record<string, number>> = { M6: 10, M8: 13, M10: 16, M12: 18 };
/** The most that ISO 4032 allows. */
const NUT_HEIGHT: Readonly<Record<string, number>> = { M6: 5.2, M8: 6.8, M10: 8.4, M12: 10.8 };
/** From memory. */
const HEAD_HEIGHT: Readonly<Record<string, number>> = { M6: 4, M8: 5.3, M10: 6.4, M12: 7.5 };

export function hexSize(thread: string, hole: number): HexSize {
  const diameter = threadDiameter(thread) ?? hole / 1.1;
  const acrossCorners = nutRoom(thread, hole).nut;
  return {
    acrossFlats: known(ACROSS_FLATS, thread) ?? acrossCorners * Math.cos(Math.PI / 6),
    acrossCorners,
    nutHeight: known(NUT_HEIGHT, thread) ?? 0.85 * diameter,
    headHeight: known(HEAD_HEIGHT, thread) ?? 0.65 * diameter,
    diameter,
  };
}
