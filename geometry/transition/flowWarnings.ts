/**
 * What the gas meets between a port and its tube that costs flow: a bore smaller than the opening, an edge that faces the
 * stream, a sudden change of shape, a transition that widens too fast. Made all the same; numbers and remedy. mm, mm².
 */
import type { PartRemark } from '../parts/part';
import { DEGREES, RADIANS } from '../tolerance';
import { leastLength } from './limits';
import { type PortFlow, radiusOf } from './portFlow';

/** Flow stays with the wall of a cone up to about this half-angle, degrees. Source: key DIFF in `tests/reference/fabrication.json`. */
export const ATTACHED_HALF_ANGLE = 7;

/** An edge or a difference of diameters below this is less than ports and tubes are true to, mm. Common practice. */
const NOTICEABLE = 0.05;

/** Of the cone with the same areas at its ends, degrees; positive where it widens. */
export const halfAngle = (from: number, to: number, length: number): number =>
  Math.atan2(radiusOf(to) - radiusOf(from), length) * DEGREES;

export function flowWarnings(flow: PortFlow, part: string): PartRemark[] {
  const { port, transition } = flow;
  const found: PartRemark[] = [];
  const add = (field: string, message: string | null) => {
    if (message) found.push({ part, where: `ports/${port}/${field}`, message: `Port ${port}: ${message}` });
  };
  add('opening', narrower(flow));
  if (transition) add('transition/length', widening(flow, transition.length));
  else add('opening', edge(flow) ?? change(flow));
  return found;
}

function narrower({ openingArea, boreArea, bore, runner: { tube }, words }: PortFlow): string | null {
  const held = 2 * radiusOf(openingArea);
  if (bore >= held - NOTICEABLE) return null;
  const { say, area, up } = words;
  const less = (100 * (1 - boreArea / openingArea)).toFixed(1);
  return `the tube's bore of ${say(bore)} (${area(boreArea)}) is ${less} % smaller than the opening (${area(openingArea)}), so the tube narrows the stream. A bore of at least ${say(up(held))} holds it: ${say(up(held + 2 * tube.wall))} outside with this wall.`;
}

/** Where the opening stands beyond the bore, the tube's end faces the stream. */
function edge(flow: PortFlow): string | null {
  const { beyond, bore, opening, stepDepth, words } = flow;
  const { say, up } = words;
  const most = Math.max(...beyond);
  if (most <= NOTICEABLE) return null;
  const [across, high, corner] = beyond;
  const places = [
    across > NOTICEABLE && 'at its sides',
    high > NOTICEABLE && 'at top and bottom',
    corner > Math.max(across, high) + NOTICEABLE && 'at its corners',
  ].filter((place) => place !== false);
  const isRound = Math.min(opening.width, opening.height) === 2 * opening.corner && opening.width === opening.height;
  const where = isRound ? 'all round' : places.join(' and ');
  const place = stepDepth > 0 ? "on the floor of the flange's step" : "at the flange's face";
  return `the opening reaches up to ${say(most)} beyond the tube's bore of ${say(bore)} ${where}, so that much of the tube's end faces the stream ${place}. Give the port a transition of at least ${say(up(leastLength(flow)))}, or the runner a tube of at least ${say(up(bore + 2 * most))} bore.`;
}

function change(flow: PortFlow): string | null {
  const { opening, openingArea, boreArea, words } = flow;
  const { say, area, up } = words;
  if (opening.width === opening.height && 2 * opening.corner >= opening.width) return null;
  return `the opening is not round and its tube is, so the gas goes from ${area(openingArea)} to ${area(boreArea)} at once. Give the port a transition of at least ${say(up(leastLength(flow)))}.`;
}

function widening({ openingArea, boreArea, words: { say, area, up } }: PortFlow, length: number): string | null {
  const angle = halfAngle(openingArea, boreArea, length);
  if (angle <= ATTACHED_HALF_ANGLE) return null;
  const long = (radiusOf(boreArea) - radiusOf(openingArea)) / Math.tan(ATTACHED_HALF_ANGLE * RADIANS);
  return `its transition widens from ${area(openingArea)} to ${area(boreArea)} on ${say(length)}, as a cone of ${angle.toFixed(1)}° half-angle does; flow stays with the wall up to about ${ATTACHED_HALF_ANGLE}°. Make it at least ${say(up(long))} long, or choose a smaller tube.`;
}
