/**
 * A triangle against a tube's flat end where that needs no search: planes between the two mostly tell at once that they are no
 * nearer than what is known, and of the few that are left where they come nearest. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Disc } from './convexMinimum';
import { behindDisc } from './discs';
import { squaredToTriangle, triangleKind } from './triangle';

/**
 * A triangle against a flat end, by going from one to the other's nearest place in turns: null once a plane between the two
 * tells that it is no nearer than `below`, the least place once that plane is as far as the two are apart. Undefined where a
 * few turns do not tell, or the two may cut each other.
 */
export function besideDisc(
  disc: Disc,
  a: Vec3,
  b: Vec3,
  c: Vec3,
  below: number,
): { value: number; at: Vec3 } | null | undefined {
  if (below <= 0) {
    const middle = middleOfTriangle(a, b, c);
    if (behindDisc(disc)(...middle) - spreadOf(middle, a, b, c) >= below) return null;
  }
  if (below <= PLAIN) return undefined;
  for (let k = 0; k < 3; k++) {
    corners[k] = a[k]!;
    corners[3 + k] = b[k]!;
    corners[6 + k] = c[k]!;
  }
  const kind = triangleKind(corners, 0);
  squaredToTriangle(corners, 0, kind, ...disc.centre, q);
  let away = putOnDisc(disc, q, p);
  for (let turn = 0; turn < TURNS && away > PLAIN; turn++) {
    const upright = planeBetween(disc, away);
    if (upright.low >= below) return null;
    // Over a flat end the corner that reaches furthest is the nearest place: turns would only creep toward it.
    for (let k = 0; k < 3; k++) q[k] = corners[upright.corner + k]!;
    away = putOnDisc(disc, q, p);
    if (away - upright.low > EXACT) {
      away = Math.sqrt(squaredToTriangle(corners, 0, kind, p[0]!, p[1]!, p[2]!, q));
      if (away <= PLAIN) return undefined;
      const { low } = planeBetween(disc, away);
      if (low >= below) return null;
      if (away - low > EXACT) {
        away = putOnDisc(disc, q, p);
        continue;
      }
    }
    return { value: away, at: [p[0]!, p[1]!, p[2]!] };
  }
  return undefined;
}

/** Nearer than this to a flat end a triangle may cut it, mm. */
const PLAIN = 0.01;
const TURNS = 12;
/** How near a distance and its bound come before it is taken, mm. */
const EXACT = 1e-6;
const corners = new Float64Array(9);
const p = new Float64Array(3);
const q = new Float64Array(3);
/** What the planes square to the line from `q` to `p` leave between disc and triangle, and the corner that touches one. */
const between = { low: 0, corner: 0 };

function planeBetween({ centre, normal, radius }: Disc, away: number): typeof between {
  const ux = (p[0]! - q[0]!) / away;
  const uy = (p[1]! - q[1]!) / away;
  const uz = (p[2]! - q[2]!) / away;
  const upright = ux * normal[0] + uy * normal[1] + uz * normal[2];
  const across = Math.sqrt(Math.max(0, 1 - upright * upright));
  let under = Number.NEGATIVE_INFINITY;
  for (let o = 0; o < 9; o += 3) {
    const reach = ux * corners[o]! + uy * corners[o + 1]! + uz * corners[o + 2]!;
    if (reach <= under) continue;
    under = reach;
    between.corner = o;
  }
  between.low = ux * centre[0] + uy * centre[1] + uz * centre[2] - radius * across - under;
  return between;
}

/** Writes the disc's nearest place; @returns how far that is */
function putOnDisc({ centre, normal, radius }: Disc, from: Float64Array, into: Float64Array): number {
  const x = from[0]! - centre[0];
  const y = from[1]! - centre[1];
  const z = from[2]! - centre[2];
  const height = x * normal[0] + y * normal[1] + z * normal[2];
  const across = Math.sqrt(Math.max(0, x * x + y * y + z * z - height * height));
  const part = across > radius ? radius / across : 1;
  into[0] = centre[0] + part * (x - height * normal[0]);
  into[1] = centre[1] + part * (y - height * normal[1]);
  into[2] = centre[2] + part * (z - height * normal[2]);
  return across > radius ? Math.hypot(height, across - radius) : Math.abs(height);
}

export const middleOfTriangle = (a: Vec3, b: Vec3, c: Vec3): Vec3 => [
  (a[0] + b[0] + c[0]) / 3,
  (a[1] + b[1] + c[1]) / 3,
  (a[2] + b[2] + c[2]) / 3,
];

/** How far a triangle reaches from a place. */
export const spreadOf = (from: Vec3, a: Vec3, b: Vec3, c: Vec3): number =>
  Math.sqrt(Math.max(squaredTo(from, a), squaredTo(from, b), squaredTo(from, c)));

const squaredTo = (p: Vec3, q: Vec3): number => (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2;
