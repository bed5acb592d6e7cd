/**
 * Letting go of a tube that is held over a plate: it rolls until it rests, the centre of mass sinking all the while. Each step finds
 * the face of the tube's convex hull straight below the centre of mass (a linear program in two unknowns, solved by exchanging
 * one of three points of contact for the lowest point of the tube) and lays it on that. mm; unit vectors.
 */
import { addScaled, anySquareTo, cross, dot, sub, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Lowest } from './lowest';

/** How true a plate is found, mm; smooth rests are as much less true in angle as its square root says. */
const LEVEL = 1e-11;
/** A rest is found when a step turns the tube no farther, radians. */
const STILL = 1e-10;
const MOST_STEPS = 400;
const MOST_EXCHANGES = 120;
/** Three points that no tube reaches, up to the side: they keep a step from turning the tube by more than about 45°. */
const FAR = 1e4;

/** @param up any unit vector @returns the unit vector that is upward once it rests */
export function settle(tube: Lowest, up: Vec3): Vec3 {
  let here = { up, height: tube.height(up) };
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = farther(tube, here.up, unit(faceBelow(tube, here.up)));
    if (next.height > here.height) return here.up;
    const moved = sub(next.up, here.up);
    here = next;
    if (dot(moved, moved) < STILL ** 2) break;
  }
  return here.up;
}

/** On in the same direction for as long as it sinks, twice as far each time: where it rolls on round metal, steps alone are short. */
function farther(tube: Lowest, from: Vec3, to: Vec3): { up: Vec3; height: number } {
  let best = { up: to, height: tube.height(to) };
  const step = sub(to, from);
  for (let far = 2; far * far * dot(step, step) < 1; far *= 2) {
    const up = unit(addScaled(from, step, far));
    const height = tube.height(up);
    if (height >= best.height) break;
    best = { up, height };
  }
  return best;
}

/** The normal of that face, scaled so that its part along `up` is 1. */
function faceBelow(tube: Lowest, up: Vec3): Vec3 {
  const u = anySquareTo(up);
  const v = cross(up, u);
  const held: Vec3[] = [0, 1, 2].map((k): Vec3 => {
    const [c, s] = [Math.cos((2 * Math.PI * k) / 3), Math.sin((2 * Math.PI * k) / 3)];
    return [
      FAR * (up[0] + c * u[0] + s * v[0]),
      FAR * (up[1] + c * u[1] + s * v[1]),
      FAR * (up[2] + c * u[2] + s * v[2]),
    ];
  });
  let normal = up;
  for (let k = 0; k < MOST_EXCHANGES; k++) {
    const low = tube.at(unit(normal));
    if (dot(low, normal) >= dot(held[0]!, normal) - LEVEL) break;
    const leaving = whichLeaves(held, low, u, v);
    if (leaving < 0) break;
    const before = held[leaving]!;
    held[leaving] = low;
    const next = planeOf(held, up);
    if (!next) {
      held[leaving] = before;
      break;
    }
    normal = next;
  }
  return normal;
}

/** Which of three gives way so that the centre of mass stays above the triangle that is left, seen along `up`; −1: all in one line. */
function whichLeaves(held: readonly Vec3[], low: Vec3, u: Vec3, v: Vec3): number {
  const [a, b, c] = held.map((p) => [dot(p, u), dot(p, v)] as const) as [Flat, Flat, Flat];
  const q: Flat = [dot(low, u), dot(low, v)];
  const whole = turn(a, b, c);
  if (whole === 0) return -1;
  const shares = (p: Flat): [number, number, number] => [
    turn(p, b, c) / whole,
    turn(a, p, c) / whole,
    turn(a, b, p) / whole,
  ];
  const [centre, its] = [shares([0, 0]), shares(q)];
  let leaving = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const [k, share] of its.entries()) {
    if (share <= 0) continue;
    const ratio = centre[k]! / share;
    if (ratio >= least) continue;
    least = ratio;
    leaving = k;
  }
  return leaving;
}

type Flat = readonly [number, number];
const turn = (a: Flat, b: Flat, c: Flat): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function planeOf([a, b, c]: readonly Vec3[], up: Vec3): Vec3 | null {
  const normal = cross(sub(b!, a!), sub(c!, a!));
  const along = dot(normal, up);
  if (along === 0) return null;
  return [normal[0] / along, normal[1] / along, normal[2] / along];
}
