/**
 * The proof of the tables: reads `bend-schedule.csv` and `start-clocking.csv` back and marches along their rows from each
 * runner's place in the design, as the bender and the fitter do, then measures how far that strays from the design. mm.
 */
import {
  type BendRow,
  type Centerline,
  centerline,
  distance,
  fromBendTable,
  pointAt,
  resolveHeader,
} from '../../geometry';
import type { Design } from '../../shared/design/types';
import { readCsv } from '../formats/csv/readCsv';

export type Rebuilt = {
  readonly id: string;
  readonly line: Centerline;
  /** The farthest that the rebuilt centerline lies from the design's at the same length along it. */
  readonly deviation: number;
};

/** @throws Error where a table names a runner the design has not routed, or misses its clocking */
export function rebuildFromTables(design: Design, bendScheduleText: string, startClockingText: string): Rebuilt[] {
  const clockings = new Map(readCsv(startClockingText).map((r) => [r.runner!, Number(r.clocking)]));
  const rowsOf = new Map<string, BendRow[]>();
  for (const record of readCsv(bendScheduleText)) {
    const rows = rowsOf.get(record.runner!) ?? [];
    const [length, rotation, angle, radius] = [record.length, record.rotation, record.angle, record.radius].map(Number);
    rows.push({ length: length!, rotation: rotation!, angle: angle!, radius: radius! });
    rowsOf.set(record.runner!, rows);
  }
  const { runners } = resolveHeader(design);
  return [...rowsOf].map(([id, rows]) => {
    const resolved = runners.find((r) => r.runner.id === id);
    const clocking = clockings.get(id);
    if (!resolved?.centerline) throw new Error(`The bend schedule has a runner ${id} that the design has not routed`);
    if (clocking === undefined) throw new Error(`Runner ${id} has no start clocking`);
    const { points, radii } = fromBendTable(resolved.start, { clocking, rows });
    const line = centerline(points, radii);
    return { id, line, deviation: farthestApart(line, resolved.centerline) };
  });
}

/** Segments are straights and arcs, so looking at their joints and a few places within each finds the farthest. */
const PLACES = 8;

function farthestApart(a: Centerline, b: Centerline): number {
  let worst = Math.abs(a.length - b.length);
  for (const { station, length } of b.segments)
    for (let k = 0; k <= PLACES; k++) {
      const s = station + (length * k) / PLACES;
      worst = Math.max(worst, distance(pointAt(a, s).position, pointAt(b, s).position));
    }
  return worst;
}
