/**
 * Where separate plates are parted: half way between neighbouring ports, or through the fasteners that stand there. A fastener
 * on the line is shared: as the trade does where two plates meet at a stud, each plate gets half of its hole and one thick washer
 * clamps both. mm, on the plate of the port asked about.
 */
import type { Point2 } from '../plane/loop';
import { LENGTH_TOLERANCE } from '../tolerance';
import type { Stud } from './draftPlates';
import { PARTING } from './practice';
import type { Seat } from './seats';

export type Parting = {
  /** From this port toward the other. */
  readonly way: Point2;
  /** How far along it from the origin the middle of the gap lies. */
  readonly at: number;
  /** Of a rectangle that holds all on this port's side. */
  readonly corners: readonly Point2[];
};

const along = ([x, y]: Point2, [u, v]: Point2): number => x * u + y * v;

export function partings(own: Seat, seats: readonly Seat[], studs: readonly Stud[]): Parting[] {
  return seats
    .filter((other) => other !== own && isBeside(own, other, seats))
    .map((other) => parting(own, other, studs));
}

/** No third port stands between them. */
function isBeside(a: Seat, b: Seat, seats: readonly Seat[]): boolean {
  const [x, y] = [(a.middle.x + b.middle.x) / 2, (a.middle.y + b.middle.y) / 2];
  const away = ({ middle }: Seat) => Math.hypot(middle.x - x, middle.y - y);
  // One place has no line through its middle.
  if (away(a) < LENGTH_TOLERANCE) return false;
  return seats.every((s) => s === a || s === b || away(s) >= away(a));
}

function parting(own: Seat, other: Seat, studs: readonly Stud[]): Parting {
  const [dx, dy] = [other.middle.x - own.middle.x, other.middle.y - own.middle.y];
  const apart = Math.hypot(dx, dy);
  const way: Point2 = [dx / apart, dy / apart];
  const half = along([own.middle.x, own.middle.y], way) + apart / 2;
  const shared = studs.filter(({ hole, boss }) => {
    const toward = [own, other].map(({ middle }) => Math.hypot(middle.x - boss.x, middle.y - boss.y));
    return Math.abs(along(hole.centre, way) - half) < boss.r && Math.max(...toward) < apart;
  });
  const at =
    shared.length > 0 ? shared.reduce((sum, { hole }) => sum + along(hole.centre, way), 0) / shared.length : half;
  return { way, at, corners: rectangle(way, at - PARTING / 2, 100 * apart) };
}

/** Counter-clockwise, ending at `edge` along the way. */
function rectangle([u, v]: Point2, edge: number, size: number): Point2[] {
  const place = (a: number, b: number): Point2 => [a * u - b * v, a * v + b * u];
  return [place(edge, -size), place(edge, size), place(edge - size, size), place(edge - size, -size)];
}

/** Whose a fastener is: on the line where this port's plate ends within its hole. */
export function sideOf({ way, at }: Parting, { hole }: Pick<Stud, 'hole'>): 'own' | 'on' | 'beyond' {
  const off = along(hole.centre, way) - (at - PARTING / 2);
  if (off <= -hole.diameter / 2) return 'own';
  return off < hole.diameter / 2 ? 'on' : 'beyond';
}
