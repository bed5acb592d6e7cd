/**
 * What a builder does with the two tables alone: takes a piece, turns its scribed line, welds it on. Independent of the kernel's own
 * way: the frame is carried by the scribed line, which runs along the outside, and arcs are swung about their centres.
 */
import {
  add,
  addScaled,
  angleBetween,
  type Centerline,
  DEGREES,
  distance,
  type Pose,
  pointAt,
  RADIANS,
  reject,
  rotate,
  scale,
  sub,
  unit,
} from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { readCsv } from '../../../../src/formats/csv/readCsv';

export type Step = { readonly station: number; readonly position: Vec3; readonly tangent: Vec3 };

/** Both ends of every straight and places within every arc. */
export function marchTables(start: Pose, runner: string, piecesText: string, jointsText: string): Step[] {
  const pieces = readCsv(piecesText).filter((row) => row.runner === runner);
  const turns = readCsv(jointsText).filter((row) => row.runner === runner);
  let t = unit(start.direction);
  let line = unit(reject(start.up, t));
  let station = Number(turns[0]!.station);
  let p = addScaled(start.position, t, station);
  const steps: Step[] = [];
  const go = (mm: number): void => {
    p = addScaled(p, t, mm);
    station += mm;
    steps.push({ station, position: p, tangent: t });
  };
  for (const [k, piece] of pieces.entries()) {
    line = rotate(line, t, Number(turns[k]!.turn) * RADIANS);
    const [ahead, angle, radius, behind] = [piece.in, piece.angle, piece.radius, piece.out].map(Number) as [
      number,
      number,
      number,
      number,
    ];
    go(ahead);
    const centre = addScaled(p, line, -radius);
    for (let i = 0; i < 6 && angle > 0; i++) {
      const phi = (angle * RADIANS) / 6;
      const [outward, along] = [line, t];
      line = add(scale(outward, Math.cos(phi)), scale(along, Math.sin(phi)));
      t = sub(scale(along, Math.cos(phi)), scale(outward, Math.sin(phi)));
      p = addScaled(centre, line, radius);
      station += radius * phi;
      steps.push({ station, position: p, tangent: t });
    }
    go(behind);
  }
  return steps;
}

/** The farthest that marching strays from a centerline, mm and degrees, and how much longer it is. */
export function strays(steps: readonly Step[], line: Centerline): { mm: number; degrees: number; longer: number } {
  let mm = 0;
  let degrees = 0;
  for (const step of steps) {
    // What lies ahead of the port's face is a straight.
    const at = pointAt(line, step.station);
    const ideal = step.station < 0 ? addScaled(at.position, at.tangent, step.station) : at.position;
    mm = Math.max(mm, distance(step.position, ideal));
    degrees = Math.max(degrees, angleBetween(step.tangent, at.tangent) * DEGREES);
  }
  return { mm, degrees, longer: steps.at(-1)!.station - line.length };
}
