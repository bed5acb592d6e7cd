/** Clearance holes for metric bolts and studs, mm. Source: ISO 273, three series. For offering; any hole may be designed. */

export const HOLE_CLASSES = ['fine', 'medium', 'coarse'] as const;

/** Fine, medium, coarse. */
const ISO_273_HOLES: Readonly<Record<string, readonly [number, number, number]>> = {
  M6: [6.4, 6.6, 7],
  M8: [8.4, 9, 10],
  M10: [10.5, 11, 12],
  M12: [13, 13.5, 14.5],
};

export type HoleClass = (typeof HOLE_CLASSES)[number];

/** The ISO 273 series whose hole for this thread it is, to a hundredth; null where it is none, or the thread is not in the table. */
export function holeClassOf(thread: string, hole: number): HoleClass | null {
  const k = holesFor(thread)?.findIndex((h) => Math.abs(h - hole) < 0.01) ?? -1;
  return HOLE_CLASSES[k] ?? null;
}

/** Those in the table, smallest first. */
export const METRIC_THREADS: readonly string[] = Object.keys(ISO_273_HOLES);

/** For `M8`, `m8` or `M8x1.25`; undefined where the table has no such thread. */
export function holesFor(thread: string): readonly [number, number, number] | undefined {
  const size = /^\s*(m\d+)(?![\d.])/i.exec(thread)?.[1]?.toUpperCase();
  return size !== undefined && Object.hasOwn(ISO_273_HOLES, size) ? ISO_273_HOLES[size] : undefined;
}
