/** What stands around a made problem: boxes and rods at random places that keep clear of lines, ports and collectors. mm. */
import { boxShape, capsuleShape } from '../../../geometry/clearance/shapes';
import type { Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import type { Random } from '../../random';

/** Balls that must stay free. */
export type Keep = { readonly at: Vec3; readonly radius: number };

/** More than clearance: lines are rough, and real bends go a little elsewhere. */
const ROOM = 10;
const TRIES = 20_000;

export const round1 = (x: number): number => Math.round(10 * x) / 10;
const rounded = (p: readonly number[]): Vec3 => [round1(p[0]!), round1(p[1]!), round1(p[2]!)];

/** Least room left between a surrounding and what must stay free. */
export function roomBeside(s: Surrounding, keep: readonly Keep[]): number {
  if (s.shape !== 'box' && s.shape !== 'capsule') throw new Error('Problems made here have boxes and bars only.');
  const field = (s.shape === 'box' ? boxShape(s) : capsuleShape(s)).signedDistance;
  return Math.min(...keep.map(({ at, radius }) => field(...at) - radius - (s.clearance ?? 0)));
}

/** `count` things about the keep: near enough to be in the way of other ways. */
export function things(next: Random, keep: readonly Keep[], count: number, least = ROOM): Surrounding[] {
  const made: Surrounding[] = [];
  for (let i = 0; i < TRIES && made.length < count; i++) {
    const about = keep[next.whole(0, keep.length - 1)]!.at;
    const thing = next() < 0.5 ? box(next, about, made.length) : rod(next, about, made.length);
    const room = roomBeside(thing, keep);
    if (room < least || room > 90) continue;
    made.push(thing);
  }
  if (made.length < count) throw new Error(`Only ${made.length} of ${count} things found a place.`);
  return made;
}

const off = (next: Random, p: Vec3, by: number): Vec3 => rounded(p.map((x) => x + next.between(-by, by)));

function box(next: Random, about: Vec3, i: number): Surrounding {
  const min = off(next, about, 190);
  const max = rounded(min.map((x) => x + next.between(25, 120)));
  return { id: `box ${i + 1}`, shape: 'box', min, max, clearance: next.whole(4, 10) };
}

function rod(next: Random, about: Vec3, i: number): Surrounding {
  const a = off(next, about, 190);
  const b = rounded(a.map((x) => x + next.between(-220, 220)));
  return { id: `rod ${i + 1}`, shape: 'capsule', a, b, radius: next.whole(6, 22), clearance: next.whole(4, 12) };
}
