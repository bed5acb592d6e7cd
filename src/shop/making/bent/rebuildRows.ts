/**
 * The proof of a machine table: from either end, by its nominal columns or by its machine ones (feed, turn and set, with the
 * stretch and the springback taken the other way), it gives the tube's centerline back. mm, degrees.
 */
import { type BendRow, fromBendTable, type Pose } from '../../../../geometry';
import { arcLength } from '../../arcs';
import type { MachineRow } from '../report';
import type { BenderSettings } from './bender';
import type { Trims } from './machineRows';

/** Points and radii. @param clocking of the first bend from the start's up, right-handed about its direction */
export const rebuildRows = (
  start: Pose,
  clocking: number,
  rows: readonly BendRow[],
): ReturnType<typeof fromBendTable> => fromBendTable(start, { clocking, rows });

/** What the bender makes of the machine columns. */
export function rowsFromMachine(
  rows: readonly Pick<MachineRow, 'feed' | 'turn' | 'set' | 'radius'>[],
  trims: Trims,
  { stretch, springback, sign }: Pick<BenderSettings, 'stretch' | 'springback' | 'sign'>,
): BendRow[] {
  let stretched = 0;
  return rows.map(({ feed, turn, set, radius }, i): BendRow => {
    const sawnOn = (i === 0 ? trims.ahead : 0) + (i === rows.length - 1 ? trims.behind : 0);
    const row = { length: feed + stretched - sawnOn, rotation: sign * turn, angle: springback.left(set), radius };
    stretched = arcLength(row) * stretch;
    return row;
  });
}
