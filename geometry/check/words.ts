/** How findings are worded: plain numbers and the names a fabricator uses for places on a tube. */
import { bends } from '../curve/bends';
import type { Centerline } from '../curve/centerline';

/** Millimetres as said in a sentence: two decimals, more where two would show nothing. */
export const mm = (x: number): string => `${rounded(x)} mm`;
export const deg = (x: number): string => `${rounded(x)}°`;

function rounded(x: number): string {
  const digits = Math.abs(x) >= 0.01 || x === 0 ? 2 : 4;
  return String(Number(x.toFixed(digits)));
}

/** "bend 2" or "straight 3" at a station, counted from 1 along the flow. */
export function placeOnRunner(line: Centerline, station: number): string {
  const list = bends(line);
  let straightsBefore = 0;
  for (const segment of line.segments) {
    if (segment.kind === 'straight') straightsBefore++;
    if (station > segment.station + segment.length) continue;
    if (segment.kind === 'straight') return `straight ${straightsBefore}`;
    const arc = line.segments.filter((s) => s.kind === 'arc').indexOf(segment);
    return `bend ${list.findIndex((b) => b.first <= arc && arc <= b.last) + 1}`;
  }
  return `straight ${straightsBefore}`;
}
