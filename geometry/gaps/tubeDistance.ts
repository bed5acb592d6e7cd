/**
 * Distance of a place to the skin of a stretch of tube, in closed form: what a profile asks thousands of times. Nearest to a
 * straight or an arc where its foot lies within it, else to one of the flat ends. mm; negative inside.
 */
import { remembered } from '../../shared/remember';
import { type Chain, type Link, vectorAt } from '../clearance/chain';
import { pointToDisc } from '../clearance/discs';
import { cross, reject, sub, unit } from '../vector';

/** Of each link: where it starts, its way, which way it bends, square to both; radius and angle (length for a straight); a ball about it. */
const WIDTH = 18;

export const linkNumbers = remembered(({ links }: Chain): Float64Array => {
  const numbers = new Float64Array(WIDTH * links.length);
  for (const [i, link] of links.entries()) numbers.set(numbersOf(link), WIDTH * i);
  return numbers;
});

function numbersOf(link: Link): number[] {
  const start = vectorAt(link.points, 0);
  const way = vectorAt(link.tangents, 0);
  const middle = vectorAt(link.points, link.count >> 1);
  const inward = link.radius > 0 ? unit(reject(vectorAt(link.tangents, 1), way)) : ([0, 0, 0] as const);
  const extent = link.radius > 0 ? link.length / link.radius : link.length;
  const far = sub(vectorAt(link.points, link.count), middle);
  const near = sub(start, middle);
  const half = Math.max(Math.hypot(...far), Math.hypot(...near));
  const ball = link.radius > 0 ? [...middle, half + link.length / link.count] : [...middle, link.length];
  return [...start, ...way, ...inward, ...cross(way, inward), link.radius, extent, ...ball];
}

/** @returns `below` where the tube is no nearer */
export function distanceToTube(tube: Chain, x: number, y: number, z: number, below: number): number {
  const N = linkNumbers(tube);
  const { tubeRadius } = tube;
  let least = below;
  for (let o = 0; o < N.length; o += WIDTH) {
    const cx = x - N[o + 14]!;
    const cy = y - N[o + 15]!;
    const cz = z - N[o + 16]!;
    const reach = least + tubeRadius + N[o + 17]!;
    if (reach <= 0 || cx * cx + cy * cy + cz * cz >= reach * reach) continue;
    const px = x - N[o]!;
    const py = y - N[o + 1]!;
    const pz = z - N[o + 2]!;
    const along = px * N[o + 3]! + py * N[o + 4]! + pz * N[o + 5]!;
    const radius = N[o + 12]!;
    let off: number;
    if (radius === 0) {
      if (along < 0 || along > N[o + 13]!) continue;
      off = Math.sqrt(Math.max(0, px * px + py * py + pz * pz - along * along));
    } else {
      const inward = px * N[o + 6]! + py * N[o + 7]! + pz * N[o + 8]!;
      const over = px * N[o + 9]! + py * N[o + 10]! + pz * N[o + 11]!;
      const angle = Math.atan2(along, radius - inward);
      if ((angle < 0 ? angle + 2 * Math.PI : angle) > N[o + 13]!) continue;
      const ring = Math.sqrt(along * along + (radius - inward) * (radius - inward)) - radius;
      off = Math.sqrt(ring * ring + over * over);
    }
    if (off - tubeRadius < least) least = off - tubeRadius;
  }
  for (const end of tube.ends) {
    const ex = x - end.centre[0];
    const ey = y - end.centre[1];
    const ez = z - end.centre[2];
    const reach = least + tubeRadius;
    if (reach <= 0 || ex * ex + ey * ey + ez * ez >= reach * reach) continue;
    const apart = pointToDisc(end, x, y, z);
    if (apart < least) least = apart;
  }
  return least;
}
