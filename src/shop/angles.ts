/** Turns by one name each, also as written: −179.999999999 rounds to −180, which is 180 by another name. Degrees. */
import { ANGLE_TOLERANCE, DEGREES } from '../../geometry';
import { type Cell, decimal } from '../formats/csv/csv';

/** A turn that rounds to another name of the same is that. */
const SAME_TURN = ANGLE_TOLERANCE * DEGREES;

/** [0, 360): what rounds up to a whole turn is none. */
export function wholeTurn(degrees: number): number {
  const within = degrees - 360 * Math.floor(degrees / 360);
  return within >= 360 - SAME_TURN ? 0 : within;
}

/** (−180, 180], and no minus zero. What lies there already stays to the last digit. */
export function halfTurn(degrees: number): number {
  if (degrees > -180 + SAME_TURN && degrees <= 180) return degrees + 0;
  const within = wholeTurn(degrees);
  return within > 180 + SAME_TURN ? within - 360 : Math.min(within, 180);
}

const LEAST = decimal(-180).text;

export function turnCell(degrees: number): Cell {
  const cell = decimal(degrees);
  return cell.text === LEAST ? decimal(180) : cell;
}
