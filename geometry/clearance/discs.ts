/** Distances of flat discs: the ends of tubes. mm. */
import { type Disc, type Field, minimumOnDisc } from './convexMinimum';

/** Unsigned distance of a point to a flat disc; convex in the point. */
export function pointToDisc({ centre, normal, radius }: Disc, x: number, y: number, z: number): number {
  const px = x - centre[0];
  const py = y - centre[1];
  const pz = z - centre[2];
  const height = px * normal[0] + py * normal[1] + pz * normal[2];
  const across = Math.sqrt(Math.max(0, px * px + py * py + pz * pz - height * height));
  return across <= radius ? Math.abs(height) : Math.hypot(height, across - radius);
}

/** What is nearer to a disc than this touches it: then it is the overlap of the tubes behind them that counts. */
export const TOUCHING = 1e-4;

/** Distance of two tube ends; where they cross, minus the depth to which one reaches into the tube behind the other. */
export function discToDisc(a: Disc, b: Disc): number {
  const apart = minimumOnDisc((x, y, z) => pointToDisc(b, x, y, z), a).value;
  if (apart > TOUCHING) return apart;
  return Math.min(depth(a, b), depth(b, a), 0);
}

/** How deep (negative) disc `a` reaches into the straight tube that lies behind disc `b`, whose normal points out of it. */
const depth = (a: Disc, b: Disc): number => minimumOnDisc(behindDisc(b), a).value;

/** Negative in the straight tube behind the disc, which is all of the tube that its end can tell of; convex. */
export function behindDisc({ centre, normal, radius }: Disc): Field {
  return (x, y, z) => {
    const px = x - centre[0];
    const py = y - centre[1];
    const pz = z - centre[2];
    const height = px * normal[0] + py * normal[1] + pz * normal[2];
    const across = Math.sqrt(Math.max(0, px * px + py * py + pz * pz - height * height));
    return Math.max(across - radius, height);
  };
}
