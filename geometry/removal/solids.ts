/**
 * Distances to the header's own parts where they rest: tubes as rows of chords with flat ends, collectors, plates. Positive
 * outside. mm.
 */
import { frustumShape } from '../clearance/shapes';
import { sampleCenterline } from '../curve/pointAt';
import type { Header, ResolvedMerge, ResolvedRunner } from '../header/resolve';
import { partFrame, toFrame } from '../parts/place';
import { endBars, platesOf } from './body';
import { toPlate } from './cells';

export type Solid = (x: number, y: number, z: number) => number;

/** Chords stray so little from a bend, mm. */
const CHORD = 0.05;

export function tubeSolids({ centerline: line, tubeRadius }: ResolvedRunner): Solid[] {
  if (!line || !(line.length > 0)) return [];
  const { near, bars } = endBars(line, tubeRadius);
  const inner = sampleCenterline(line, CHORD).filter((s) => s.station > near && s.station < line.length - near);
  const points = Float64Array.from(inner.flatMap((s) => s.position));
  const ends = bars.map((bar) => frustumShape(bar).signedDistance);
  if (inner.length === 0) return ends;
  // The two bars meet the chords at their inner ends.
  const tips = bars.map(({ position: p, axis: a, length }) => p.map((x, k) => x + length * a[k]!));
  const row = Float64Array.of(...tips[0]!, ...points, ...tips[1]!);
  return [(x, y, z) => toRow(row, x, y, z) - tubeRadius, ...ends];
}

/** To the nearest of the chords between neighbouring points. */
function toRow(row: Float64Array, x: number, y: number, z: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 5 < row.length; i += 3) {
    const [ux, uy, uz] = [row[i + 3]! - row[i]!, row[i + 4]! - row[i + 1]!, row[i + 5]! - row[i + 2]!];
    const [px, py, pz] = [x - row[i]!, y - row[i + 1]!, z - row[i + 2]!];
    const length = ux * ux + uy * uy + uz * uz;
    const t = length > 0 ? Math.min(1, Math.max(0, (px * ux + py * uy + pz * uz) / length)) : 0;
    least = Math.min(least, (px - t * ux) ** 2 + (py - t * uy) ** 2 + (pz - t * uz) ** 2);
  }
  return Math.sqrt(least);
}

export const mergeSolid = ({ body }: ResolvedMerge): Solid => frustumShape(body).signedDistance;

/** @param runners whose plates count, of a flange with one for each */
export const plateSolids = (header: Header, flange: string, runners: readonly string[]): Solid[] =>
  (header.design.flanges ?? [])
    .filter((f) => f.id === flange)
    .flatMap((f) => platesOf(header, f, runners))
    .map(({ pose, outline, thickness }): Solid => {
      const frame = partFrame(pose);
      const signed = toPlate(outline, thickness);
      return (x, y, z) => signed(...toFrame(frame, [x, y, z]));
    });
