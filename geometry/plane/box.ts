/** Boxes round edges, to leave out pairs that cannot meet. mm. */
import { LENGTH_TOLERANCE } from '../tolerance';
import type { Edge } from './loop';

export type Box = readonly [left: number, low: number, right: number, high: number];

/** Of an arc, of its whole circle: good enough to leave most pairs out. */
export function boxOf({ from, to, arc }: Edge): Box {
  if (arc) {
    const { centre, radius } = arc;
    return [centre[0] - radius, centre[1] - radius, centre[0] + radius, centre[1] + radius];
  }
  const [x0, x1] = from[0] < to[0] ? [from[0], to[0]] : [to[0], from[0]];
  const [y0, y1] = from[1] < to[1] ? [from[1], to[1]] : [to[1], from[1]];
  return [x0, y0, x1, y1];
}

export const boxesApart = (a: Box, b: Box): boolean =>
  a[0] > b[2] + LENGTH_TOLERANCE ||
  b[0] > a[2] + LENGTH_TOLERANCE ||
  a[1] > b[3] + LENGTH_TOLERANCE ||
  b[1] > a[3] + LENGTH_TOLERANCE;
