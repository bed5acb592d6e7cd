/** How findings are worded: plain numbers and the names a fabricator uses for places on a tube. */
import type { Display } from '../../shared/design/types';
import { bends } from '../curve/bends';
import type { Centerline } from '../curve/centerline';

/** A length in a sentence, in the unit that the design is shown in; the numbers beside the sentence stay mm. */
export type Say = (mm: number) => string;

export const sayIn = (display: Display = 'mm'): Say =>
  display === 'in' ? (x) => `${rounded(x / MM_IN_INCH, 3, 5)} in` : (x) => `${rounded(x, 2, 4)} mm`;

export const deg = (x: number): string => `${rounded(x, 2, 4)}°`;

const MM_IN_INCH = 25.4;

/** Few decimals, more where those would show nothing. */
function rounded(x: number, digits: number, more: number): string {
  const shows = Math.abs(x) >= 10 ** -digits || x === 0;
  return String(Number(x.toFixed(shows ? digits : more)));
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
