/**
 * Bend rows with what the machine is set to beside them, counted from one end; and the same rows counted from the other.
 * mm, degrees. The last row is the straight that remains: its mark is where the finished tube ends, its `markEnd` where the sawn
 * one does, its grip what is left for the tail.
 */
import { type BendRow, STRAIGHT_TOLERANCE } from '../../../../geometry';
import { halfTurn, wholeTurn } from '../../angles';
import { arcLength } from '../../arcs';
import type { MachineRow } from '../report';
import type { BenderSettings } from './bender';

export type Trims = { readonly ahead: number; readonly behind: number };

/** Looked along from the other end, a screw turns the same way: rotations keep their sign, and stand one bend on. */
export function reversedRows(rows: readonly BendRow[]): BendRow[] {
  const bends = rows.slice(0, -1);
  const back = bends.map(
    ({ angle, radius }, i): BendRow => ({
      length: rows[i + 1]!.length,
      rotation: rows[i + 1]!.rotation,
      angle,
      radius,
    }),
  );
  back.reverse();
  return [...back, { length: rows[0]!.length, rotation: 0, angle: 0, radius: 0 }];
}

/** @param rows of the real tube: its first straight as it is, not as the centerline has it */
export function machineRows(rows: readonly BendRow[], trims: Trims, bender: BenderSettings): MachineRow[] {
  const { stretch, sign } = bender;
  const last = rows.length - 1;
  let reached = trims.ahead;
  let stretched = 0;
  let dial = 0;
  return rows.map((row, i): MachineRow => {
    const sawnOn = (i === 0 ? trims.ahead : 0) + (i === last ? trims.behind : 0);
    const grip = row.length + sawnOn;
    const feed = grip - stretched;
    const mark = reached + row.length;
    const taken = i === last ? trims.behind : arcLength(row) * (1 - stretch);
    const turn = halfTurn(sign * row.rotation);
    dial = wholeTurn(dial + turn);
    reached = mark + taken;
    stretched = arcLength(row) * stretch;
    const needed = last === 0 ? 0 : i === last ? bender.tail : bender.clamp;
    return {
      length: row.length,
      rotation: row.rotation,
      angle: row.angle,
      radius: row.radius,
      feed,
      turn,
      dial,
      set: row.angle === 0 ? 0 : bender.springback.set(row.angle),
      mark,
      markEnd: reached,
      grip,
      clamps: grip >= needed - STRAIGHT_TOLERANCE,
    };
  });
}
