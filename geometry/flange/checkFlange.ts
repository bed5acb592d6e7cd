/** What can be wrong with a flange before any plate of it is drawn: its thickness, its step's depth, its ports not being of one face. */
import type { Flange } from '../../shared/design/types';
import { deg, sayIn } from '../check/words';
import type { Header, ResolvedPort } from '../header/resolve';
import { DEGREES, LENGTH_TOLERANCE } from '../tolerance';
import { add, angleBetween, norm } from '../vector';
import type { Finding } from './plan';
import { offPlate, plateFrame } from './plateFrame';
import { FLAT, LEAST_LAND, LEAST_THICKNESS, MOST_LEAN_DEG, MOST_OFF_PLANE, SQUARE_DEG, stepDepthOf } from './practice';

export function checkThickness({ design }: Header, flange: Flange): Finding[] {
  const say = sayIn(design.display);
  const where = `flanges/${flange.id}`;
  const found: Finding[] = [];
  const { thickness } = flange;
  if (thickness < LEAST_THICKNESS)
    found.push({
      where: `${where}/thickness`,
      message: `It is ${say(thickness)} thick, and plates thinner than ${say(LEAST_THICKNESS)} warp when welded (common practice: 8 to 12 mm of mild steel, 10 usual): choose thicker plate, or weld in short runs, clamped down.`,
      refuses: false,
    });
  if (flange.seat !== 'stepped') return found;
  const depth = stepDepthOf(flange);
  if (depth >= thickness)
    found.push({
      where: `${where}/stepDepth`,
      message: `Its step is ${say(depth)} deep in a plate of ${say(thickness)}: nothing would be left for the tube to stand on. Make the step at most ${say(thickness - LEAST_LAND)} deep, or the plate thicker.`,
      refuses: true,
    });
  else if (thickness - depth < LEAST_LAND)
    found.push({
      where: `${where}/stepDepth`,
      message: `Its step leaves ${say(thickness - depth)} of plate; under ${say(LEAST_LAND)} it burns through (common practice). Make the step shallower, or the plate thicker.`,
      refuses: false,
    });
  return found;
}

/** One plate has one direction and one face; each of separate plates is square to its own port. */
export function checkPorts({ design }: Header, flange: Flange, ports: readonly ResolvedPort[]): Finding[] {
  const separate = flange.plates === 'separate';
  if (separate && !flange.outline) return [];
  const say = sayIn(design.display);
  if (norm(ports.map(({ pose }) => pose.direction).reduce(add)) < LENGTH_TOLERANCE)
    return [
      {
        where: `flanges/${flange.id}/ports`,
        message:
          'Its ports point against each other, so that no one face is square to them: make a flange of those that point one way.',
        refuses: true,
      },
    ];
  const frame = plateFrame(ports);
  const reason = separate ? 'the plates are cut from one drawn outline' : 'one plate holds all its ports';
  const remedy = separate
    ? 'leave the outline out, so that each plate is made to fit its own port'
    : 'make its plates separate';
  return ports.flatMap(({ port, pose }): Finding[] => {
    const found: Finding[] = [];
    const lean = angleBetween(pose.direction, frame.pose.direction) * DEGREES;
    const off = Math.abs(offPlate(frame, pose.position));
    if (lean > SQUARE_DEG)
      found.push({
        where: `ports/${port.id}/direction`,
        message: `Port ${port.id} leans ${deg(lean)} from the mean of flange ${flange.id}, and ${reason}. Give its ports one direction, or ${remedy}.${lean > MOST_LEAN_DEG ? '' : ' Its opening is cut square to the plate, and its tube stands on it leaning.'}`,
        refuses: lean > MOST_LEAN_DEG,
      });
    if (off > FLAT)
      found.push({
        where: `ports/${port.id}/position`,
        message: `Port ${port.id} lies ${say(off)} off the face of flange ${flange.id}, and ${reason}. Move it onto the plane of the others, or ${remedy}.`,
        refuses: off > MOST_OFF_PLANE,
      });
    return found;
  });
}
