/** Arcs along the middle line, from angle to length and back. mm, degrees. */
import { DEGREES, RADIANS } from '../../geometry';

export const arcLength = ({ angle, radius }: { readonly angle: number; readonly radius: number }): number =>
  radius * angle * RADIANS;

/** What so much of the middle line turns; what a saw's kerf takes of a bend. */
export const arcAngle = (length: number, radius: number): number => (length / radius) * DEGREES;

/** How far a turn reaches round a tube's outside. */
export const aroundTube = (turn: number, outsideDiameter: number): number =>
  arcLength({ angle: turn, radius: outsideDiameter / 2 });
