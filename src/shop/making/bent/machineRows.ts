/**
 * Bend rows with what the machine is set to beside them, counted from one end; and the same rows counted from the other.
 * mm, degrees. The last row is the straight that remains: its mark is where the finished tube ends, its `markEnd` where the sawn
 * one does, its grip what is left for the tail.
 */
import { ANGLE_TOLERANCE, type BendRow, DEGREES, RADIANS, STRAIGHT_TOLERANCE } from '../../../../geometry';
import type { MachineRow } from '../report';
import type { BenderSettings } from './bender';

export type Trims = { readonly ahead: number; readonly behind: number };

export const arcOf = ({ radius, angle }: Pick<BendRow, 'radius' | 'angle'>): number => radius * angle * RADIANS;

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
    const taken = i === last ? trims.behind : arcOf(row) * (1 - stretch);
    const turn = turned(sign * row.rotation);
    dial = onDial(dial + turn);
    reached = mark + taken;
    stretched = arcOf(row) * stretch;
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

/** A turn that rounds to another name of the same is that: degrees. */
const SAME_TURN = ANGLE_TOLERANCE * DEGREES;

/** (−180, 180], and no minus zero. */
const turned = (degrees: number): number => (degrees <= -180 + SAME_TURN ? 180 : degrees + 0);

/** [0, 360): what rounds to a whole turn is none. */
export function onDial(degrees: number): number {
  const within = degrees - 360 * Math.floor(degrees / 360);
  return within >= 360 - SAME_TURN ? 0 : within;
}
