/**
 * Fasteners that are not where a flange can have them: far from every port, or off the plate's face. Both are mostly a slip in a
 * coordinate; the plate is made all the same, so they are said. mm, on the plate.
 */
import type { Flange } from '../../shared/design/types';
import type { Say } from '../check/words';
import { distanceToHull, hullArcs } from '../plane/discs';
import type { Draft } from './draftPlates';
import type { Finding } from './plan';
import { offPlate } from './plateFrame';
import { borderOf, FARTHEST_BORDERS, MOST_OFF_PLANE } from './practice';
import { at } from './words';

export function checkStrays(flange: Flange, { frame, holes, bites, seats }: Draft, say: Say): Finding[] {
  // By the usual border: one that is asked for says nothing of where fasteners stand.
  const most = FARTHEST_BORDERS * borderOf({ thickness: flange.thickness });
  const ports = seats.map(({ port, opening }) => ({ port, arcs: hullArcs(opening) }));
  return [...holes, ...bites].flatMap(({ fastener, centre, thread }): Finding[] => {
    const where = `flanges/${flange.id}/fasteners/${fastener}`;
    const name = `Fastener ${fastener + 1} (${thread})`;
    const found: Finding[] = [];
    const [nearest] = ports
      .map(({ port, arcs }) => ({ port, away: distanceToHull(arcs, centre) }))
      .sort((a, b) => a.away - b.away);
    if (nearest && nearest.away > most)
      found.push({
        where,
        message: `${name} stands at ${at(centre, say)}, ${say(nearest.away)} from the edge of port ${nearest.port}, the nearest; beyond ${say(most)}, ${FARTHEST_BORDERS} border widths, it clamps no gasket (common practice). Check its position, move it at least ${say(nearest.away - most)} nearer, or take it out.`,
        refuses: false,
        like: {
          kind: 'far off',
          place: `${fastener + 1} at ${at(centre, say)}, ${say(nearest.away)} from port ${nearest.port}`,
          together: (places) =>
            `Fasteners stand far from the edge of every port: ${places}. Beyond ${say(most)}, ${FARTHEST_BORDERS} border widths, they clamp no gasket (common practice). Check their positions, move them nearer, or take them out.`,
        },
      });
    const off = offPlate(frame, flange.fasteners![fastener]!.position);
    if (Math.abs(off) > MOST_OFF_PLANE)
      found.push({
        where,
        message: `${name} lies ${say(Math.abs(off))} off the plate's face, ${off > 0 ? 'out from' : 'into'} the head, at ${at(centre, say)}; its hole is drawn square to the face from there. Check its position, or move it ${say(Math.abs(off))} ${off > 0 ? 'toward' : 'out of'} the head, onto the plane of the ports.`,
        refuses: false,
        like: {
          kind: 'off the face',
          place: `${fastener + 1} by ${say(Math.abs(off))} ${off > 0 ? 'out from' : 'into'} the head`,
          together: (places) =>
            `Fasteners lie off the plate's face: ${places}; their holes are drawn square to the face from there. Check their positions and the ports' directions, to which the face is square, or move them onto the plane of the ports.`,
        },
      });
    return found;
  });
}
