/** How findings are worded: plain numbers and the names a fabricator uses for places on a tube. */
import type { Display } from '../../shared/design/types';
import { bends, isContinuous, straightIndices } from '../curve/bends';
import type { Centerline } from '../curve/centerline';
import type { MotionPose } from '../gaps/report';

/** A length in a sentence, in the unit that the design is shown in; the numbers beside the sentence stay mm. */
export type Say = (mm: number) => string;

export const sayIn = (display: Display = 'mm'): Say =>
  display === 'in' ? (x) => `${rounded(x / MM_IN_INCH, 3, 5)} in` : (x) => `${rounded(x, 2, 4)} mm`;

/** A thing in a sentence; many ids are the noun already, or begin with it. */
export const calledA = (noun: string, id: string): string =>
  id.toLowerCase().startsWith(noun.toLowerCase()) ? id : `${noun} ${id}`;

export const deg = (x: number): string => `${rounded(x, 2, 4)}°`;

const MM_IN_INCH = 25.4;

/** Few decimals, more where those would show nothing. */
function rounded(x: number, digits: number, more: number): string {
  const shows = Math.abs(x) >= 10 ** -digits || x === 0;
  return String(Number(x.toFixed(shows ? digits : more)));
}

/** "bend 2" or "straight 3" at a station, counted from 1 along the flow as in the bend table: a continuous bend is one. */
export function placeOnRunner(line: Centerline, station: number): string {
  let end = 0;
  for (const [i, straight] of line.straights.entries()) {
    end += straight;
    if (station <= end && straight > 0 && !(i > 0 && isContinuous(line, i - 1)))
      return `straight ${straightNumber(line, i)}`;
    if (i === line.turns.length) break;
    end += line.radii[i]! * line.turns[i]!;
    if (station <= end) return `bend ${bendNumber(line, i)}`;
  }
  return `straight ${straightNumber(line, line.straights.length - 1)}`;
}

/** Number of the bend that arc `i` (from 0) is part of. */
export const bendNumber = (line: Centerline, i: number): number =>
  bends(line).findIndex((b) => b.first <= i && i <= b.last) + 1;

/** Number of straight `i` (from 0), which is not inside a continuous bend. */
const straightNumber = (line: Centerline, i: number): number => straightIndices(line).filter((k) => k <= i).length;

/** " with the engine rolled 3° and hot": at which moment of its motion, empty where that is at rest and cold. */
export function whenMoved(pose?: MotionPose): string {
  if (!pose) return '';
  const rolled = Math.abs(pose.rock) >= LEAST_TOLD ? `with the engine rolled ${deg(pose.rock)}` : '';
  const part = Math.round(100 * pose.heat);
  const hot = part === 0 ? '' : part === 100 ? 'hot' : `${part} % of the way to hot`;
  const both = rolled && hot ? `${rolled} and ${hot}` : rolled || (hot && `when ${hot}`);
  return both && ` ${both}`;
}

/** Degrees. */
const LEAST_TOLD = 0.005;
