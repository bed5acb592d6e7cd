/** Tubes and bodies as they stand at one moment of the header's motion. mm. */
import type { Chain, Link } from '../clearance/chain';
import type { Disc } from '../clearance/convexMinimum';
import type { Frustum } from '../header/merge';
import { placedAt, type Stand, type Sway, sizeAt, turnedBy } from './motion';

export function movedChain(chain: Chain, sway: Sway, stand: Stand): Chain {
  const size = sizeAt(sway, stand);
  return {
    tubeRadius: chain.tubeRadius * size,
    links: chain.links.map((link) => movedLink(link, sway, stand, size)),
    ends: [movedDisc(chain.ends[0], sway, stand, size), movedDisc(chain.ends[1], sway, stand, size)],
  };
}

function movedLink(link: Link, sway: Sway, stand: Stand, size: number): Link {
  const points = new Float64Array(link.points.length);
  const tangents = new Float64Array(link.tangents.length);
  for (let o = 0; o < points.length; o += 3) {
    points.set(placedAt(sway, [link.points[o]!, link.points[o + 1]!, link.points[o + 2]!], stand), o);
    tangents.set(turnedBy(sway, [link.tangents[o]!, link.tangents[o + 1]!, link.tangents[o + 2]!], stand), o);
  }
  const [radius, station, length] = [link.radius * size, link.station * size, link.length * size];
  return { ...link, points, tangents, radius, station, length };
}

const movedDisc = ({ centre, normal, radius }: Disc, sway: Sway, stand: Stand, size: number): Disc => ({
  centre: placedAt(sway, centre, stand),
  normal: turnedBy(sway, normal, stand),
  radius: radius * size,
});

export function movedBody(body: Frustum, sway: Sway, stand: Stand): Frustum {
  const size = sizeAt(sway, stand);
  return {
    position: placedAt(sway, body.position, stand),
    axis: turnedBy(sway, body.axis, stand),
    length: body.length * size,
    startRadius: body.startRadius * size,
    endRadius: body.endRadius * size,
  };
}
