/**
 * What comes out where marks are read off a tape and angles off a dial: marks and trims to the tape, the cumulative dial and what
 * bends are set to to the dial. The tube is made from the end it is clamped from, fitted at its start with its first bend's plane
 * true, and looked at at its far end. mm, degrees.
 */
import {
  add,
  addScaled,
  angleBetween,
  type BendRow,
  DEGREES,
  distance,
  RADIANS,
  rotate,
  scale,
} from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { arcLength } from '../../arcs';
import { toStep } from '../../toStep';
import type { MachineRow, Rounded } from '../report';
import type { BenderSettings } from './bender';
import { reversedRows, type Trims } from './machineRows';

type Steps = { readonly tape: number; readonly dial: number };

export function roundedTube(
  { rows, trims, fromEnd }: { readonly rows: readonly MachineRow[]; readonly trims: Trims; readonly fromEnd: boolean },
  bender: BenderSettings,
  { tape, dial }: Steps,
): Rounded {
  const made = asMade(rows, trims, bender, { tape, dial });
  const turnedRound = (list: readonly BendRow[]): readonly BendRow[] => (fromEnd ? reversedRows(list) : list);
  const [real, nominal] = [farEnd(turnedRound(made)), farEnd(turnedRound(rows))];
  return {
    tape,
    dial,
    position: distance(real.position, nominal.position),
    angle: angleBetween(real.direction, nominal.direction) * DEGREES,
    length: lengthOf(made) - lengthOf(rows),
  };
}

const lengthOf = (rows: readonly BendRow[]): number => rows.reduce((sum, row) => sum + row.length + arcLength(row), 0);

/** The tube that a builder gets, also where a straight of it comes out shorter than nothing: then it is the mark that lies. */
function asMade(rows: readonly MachineRow[], trims: Trims, bender: BenderSettings, steps: Steps): BendRow[] {
  const onTape = (mm: number): number => toStep(mm, steps.tape);
  const onDial = (degrees: number): number => toStep(degrees, steps.dial);
  let reached = onTape(trims.ahead);
  let plane = rows[0]!.dial;
  return rows.map((row, i): BendRow => {
    const length = onTape(row.mark) - reached;
    if (i === rows.length - 1) return { length, rotation: 0, angle: 0, radius: 0 };
    const angle = bender.springback.left(onDial(row.set));
    const rotation = bender.sign * (onDial(row.dial) - plane);
    plane = onDial(row.dial);
    const bend = { length, rotation, angle, radius: row.radius };
    reached = onTape(row.mark) + arcLength(bend) * (1 - bender.stretch);
    return bend;
  });
}

/** Marched from the origin along x, bending toward z first. */
function farEnd(rows: readonly BendRow[]): { position: Vec3; direction: Vec3 } {
  let position: Vec3 = [0, 0, 0];
  let direction: Vec3 = [1, 0, 0];
  let inward: Vec3 = [0, 0, 1];
  for (const { length, rotation, angle, radius } of rows) {
    position = addScaled(position, direction, length);
    inward = rotate(inward, direction, rotation * RADIANS);
    const [c, s] = [Math.cos(angle * RADIANS), Math.sin(angle * RADIANS)];
    position = addScaled(addScaled(position, direction, radius * s), inward, radius * (1 - c));
    [direction, inward] = [add(scale(direction, c), scale(inward, s)), add(scale(direction, -s), scale(inward, c))];
  }
  return { position, direction };
}
