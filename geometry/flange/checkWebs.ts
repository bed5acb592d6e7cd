/** Stiffness between ports, and room for the welds round them: common practice. Generated outlines have both; drawn ones may not. mm. */
import type { Flange } from '../../shared/design/types';
import type { Say } from '../check/words';
import { hullLoop } from '../plane/discs';
import { isInLoop } from '../plane/inside';
import { type Edge, edges, type Point2 } from '../plane/loop';
import { leastGap, meetings } from '../plane/meet';
import type { Draft } from './draftPlates';
import { leastWeb, neighbours } from './outline';
import type { Finding } from './plan';
import { WEB_SHARE } from './practice';
import type { Seat } from './seats';
import { at } from './words';

/** How many places between two ports are looked at. */
const PLACES = 41;

export function checkWebs(flange: Flange, { outline, seats }: Draft, say: Say): Finding[] {
  const edge = edges(outline);
  const found: Finding[] = [];
  for (const [a, b] of neighbours(seats)) {
    const { height, place } = narrowest(edge, a, b);
    const least = 2 * leastWeb(a, b);
    if (height < least - SAME)
      found.push({
        where: `flanges/${flange.id}/outline`,
        message: `Between ports ${a.port} and ${b.port} the plate is ${say(height)} high at ${at(place, say)}; under ${say(least)}, ${WEB_SHARE * 100} % of its height at the ports, it bends there and leaks (common practice): draw it higher there.`,
        refuses: false,
      });
  }
  for (const { port, welded } of seats) {
    if (!welded) continue;
    const { gap, at: place } = leastGap(edges(hullLoop(welded.outer)), edge);
    if (gap < welded.room - SAME)
      found.push({
        where: `flanges/${flange.id}/outline`,
        message: `${say(gap)} of face is left between ${welded.what} and the plate's edge at ${at(place, say)}; its weld wants ${say(welded.room)} (common practice): draw the outline farther out at port ${port}.`,
        refuses: false,
      });
  }
  return found;
}

/** Square to the line from port to port, the plate's height there, least of all places between. */
function narrowest(edge: readonly Edge[], { middle: a }: Seat, { middle: b }: Seat): { height: number; place: Point2 } {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  const [nx, ny] = [-(b.y - a.y) / long, (b.x - a.x) / long];
  const far = 1000 * long;
  let best = { height: Number.POSITIVE_INFINITY, place: [a.x, a.y] as Point2 };
  for (let k = 1; k < PLACES; k++) {
    const place: Point2 = [a.x + ((b.x - a.x) * k) / PLACES, a.y + ((b.y - a.y) * k) / PLACES];
    const reach = (way: number): number => {
      const ray: Edge = { from: place, to: [place[0] + way * far * nx, place[1] + way * far * ny], arc: null };
      return Math.min(...edge.flatMap((e) => meetings(ray, e).map(({ s }) => s * far)));
    };
    const height = isInLoop(place, edge) ? reach(1) + reach(-1) : 0;
    if (height < best.height) best = { height, place };
  }
  return best;
}

const SAME = 1e-3;
