/** A cut's curve as points on paper: x from the seam, y up from the square line, chords within a hundredth of a millimetre. */
import type { WrapCut } from '../../../geometry';
import type { Point } from '../../formats/drawing/drawing';

const CHORD_ERROR = 0.005;
const TURN = 2 * Math.PI;
/** Begun with, so that no bump between two looks can hide. */
const PIECES = 96;
const DEEPEST = 14;

/** @param width of the paper for one turn. @param until angle to go on to, beyond one turn for an overlap */
export function wrappedCurve(cut: Pick<WrapCut, 'height' | 'corners'>, width: number, until = TURN): Point[] {
  const at = (angle: number): Point => [(angle / TURN) * width, cut.height(angle % TURN)];
  const stops = [
    ...Array.from({ length: PIECES + 1 }, (_, i) => (i * TURN) / PIECES),
    ...cut.corners,
    ...cut.corners.map((c) => c + TURN),
    ...Array.from({ length: PIECES }, (_, i) => TURN + ((i + 1) * TURN) / PIECES),
  ]
    .filter((a) => a < until)
    .sort((a, b) => a - b);
  stops.push(until);
  const points: Point[] = [at(stops[0]!)];
  for (let i = 1; i < stops.length; i++)
    if (stops[i]! > stops[i - 1]!) points.push(...between(at, stops[i - 1]!, stops[i]!, DEEPEST), at(stops[i]!));
  return points;
}

function between(at: (angle: number) => Point, a: number, b: number, depth: number): Point[] {
  const middle = (a + b) / 2;
  const [p, m, q] = [at(a), at(middle), at(b)];
  if (depth === 0 || Math.abs(m[1] - (p[1] + q[1]) / 2) < CHORD_ERROR) return [];
  return [...between(at, a, middle, depth - 1), m, ...between(at, middle, b, depth - 1)];
}
