/** Tubes and bodies as they stand at one moment of the header's motion. mm. */
import type { Vec3 } from '../../shared/vec3';
import type { Chain, Link } from '../clearance/chain';
import type { Disc } from '../clearance/convexMinimum';
import type { Frustum } from '../header/merge';
import { mover, placedAt, type Stand, type Sway, sizeAt, turnedBy } from './motion';

export function movedChain(chain: Chain, sway: Sway, stand: Stand): Chain {
  const size = sizeAt(sway, stand);
  return {
    tubeRadius: chain.tubeRadius * size,
    links: chain.links.map((link) => movedLink(link, sway, stand, size)),
    ends: [movedDisc(chain.ends[0], sway, stand, size), movedDisc(chain.ends[1], sway, stand, size)],
  };
}

function movedLink(link: Link, sway: Sway, stand: Stand, size: number): Link {
  const { rock } = sway;
  const turning: Sway | null = rock && { rock: { ...rock, position: ORIGIN }, middle: ORIGIN, growth: 0 };
  return {
    ...link,
    points: movedRow(link.points, sway, stand),
    tangents: turning ? movedRow(link.tangents, turning, stand) : link.tangents,
    radius: link.radius * size,
    station: link.station * size,
    length: link.length * size,
  };
}

const ORIGIN: Vec3 = [0, 0, 0];

/** Three numbers a place. */
function movedRow(row: Float64Array, sway: Sway, { angle, heat }: Stand): Float64Array {
  const move = mover(sway);
  const moved = row.slice();
  for (let o = 0; o < moved.length; o += 3) move(moved, angle, heat, o);
  return moved;
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
