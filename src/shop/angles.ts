/** Turns in (−180, 180], also as written: −179.999999999 rounds to −180, which is 180 by another name. */
import { type Cell, decimal } from '../formats/csv/csv';

const LEAST = decimal(-180).text;

export function turnCell(degrees: number): Cell {
  const cell = decimal(degrees);
  return cell.text === LEAST ? decimal(180) : cell;
}
