/**
 * How a header moves: the engine rolls in its mounts, and tubes and collectors grow about the middle of the ports as they get
 * hot. Resolved from the document; mm, radians, the design's frame, in which what is fixed to the vehicle stands still.
 */
import type { Design, Surrounding } from '../../shared/design/types';
import { expansion, REFERENCE_TEMPERATURE } from '../../shared/stock/expansion';
import type { Vec3 } from '../../shared/vec3';
import { DEFAULT_MATERIAL } from '../header/resolve';
import { RADIANS } from '../tolerance';
import { add, rotate, scale, sub, unit } from '../vector';

export type Motion = {
  /** Null where the engine stands still. */
  readonly rock: { readonly position: Vec3; readonly axis: Vec3; readonly low: number; readonly high: number } | null;
  /** Null where nothing gets hot. */
  readonly heat: { readonly middle: Vec3; readonly rise: number; readonly temperature: number } | null;
  /** The same for motions that are the same. */
  readonly key: string;
};

/** Null where the design does not move at all. */
export function motionOf(design: Design): Motion | null {
  const { rock, heat } = design.motion ?? {};
  // At rest it stands at 0, whatever it is said to roll between.
  const [low, high] = rock ? [Math.min(0, ...rock.angles), Math.max(0, ...rock.angles)] : [0, 0];
  const rise = heat ? heat.temperature - (heat.from ?? REFERENCE_TEMPERATURE) : 0;
  const rolls = rock && (low !== 0 || high !== 0);
  if (!rolls && rise === 0) return null;
  const own = {
    rock: rolls ? { position: rock.position, axis: unit(rock.axis), low: low * RADIANS, high: high * RADIANS } : null,
    heat: rise !== 0 ? { middle: middleOfPorts(design), rise, temperature: heat!.temperature } : null,
  };
  return { ...own, key: JSON.stringify(own) };
}

/** Of their positions: tubes are bolted on there, and grow from there. */
function middleOfPorts({ ports }: Design): Vec3 {
  const sum = ports.reduce<Vec3>((a, p) => add(a, p.position), [0, 0, 0]);
  return scale(sum, 1 / Math.max(1, ports.length));
}

/** Part by which a thing of a material is larger when it is hot; as the usual material where no table knows its own. */
export function hotGrowth({ heat }: Motion, material = DEFAULT_MATERIAL): number {
  if (!heat) return 0;
  const known = expansion(material, heat.temperature) ?? expansion(DEFAULT_MATERIAL, heat.temperature)!;
  return known.mean * heat.rise;
}

/** How one part of the header moves against one surrounding. */
export type Sway = {
  readonly rock: Motion['rock'];
  readonly middle: Vec3;
  /** At full heat. */
  readonly growth: number;
};

/** What is fixed to the engine rolls with the header and sees it grow only. */
export function swayOf(motion: Motion, surrounding: Surrounding, material?: string): Sway {
  return {
    rock: surrounding.fixedTo === 'engine' ? null : motion.rock,
    middle: motion.heat?.middle ?? [0, 0, 0],
    growth: hotGrowth(motion, material),
  };
}

/** An angle of the engine, radians, and a heat from 0 to 1. */
export type Stand = { readonly angle: number; readonly heat: number };

export const sizeAt = ({ growth }: Sway, { heat }: Stand): number => 1 + growth * heat;

export const turnedBy = ({ rock }: Sway, way: Vec3, { angle }: Stand): Vec3 =>
  rock && angle !== 0 ? rotate(way, rock.axis, angle) : way;

export function placedAt(sway: Sway, p: Vec3, stand: Stand): Vec3 {
  const { rock, middle } = sway;
  const hot = add(middle, scale(sub(p, middle), sizeAt(sway, stand)));
  return rock ? add(rock.position, turnedBy(sway, sub(hot, rock.position), stand)) : hot;
}

/**
 * As `placedAt`, of places that are written over: without garbage, for what is asked by the thousand.
 * @param o where in `p` the three numbers begin
 */
export function mover({
  rock,
  middle,
  growth,
}: Sway): (p: Float64Array, angle: number, heat: number, o?: number) => void {
  return (p, angle, heat, o = 0) => {
    const size = 1 + growth * heat;
    for (let k = 0; k < 3; k++) p[o + k] = middle[k]! + size * (p[o + k]! - middle[k]!);
    if (!rock || angle === 0) return;
    const { position, axis } = rock;
    const [x, y, z] = [p[o]! - position[0], p[o + 1]! - position[1], p[o + 2]! - position[2]];
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const along = (1 - cos) * (x * axis[0] + y * axis[1] + z * axis[2]);
    p[o] = position[0] + cos * x + sin * (axis[1] * z - axis[2] * y) + along * axis[0];
    p[o + 1] = position[1] + cos * y + sin * (axis[2] * x - axis[0] * z) + along * axis[1];
    p[o + 2] = position[2] + cos * z + sin * (axis[0] * y - axis[1] * x) + along * axis[2];
  };
}

/** A place that is there when cold is no further from the roll axis than this, hot or cold. */
export function leverOf({ rock, middle, growth }: Sway, x: number, y: number, z: number): number {
  const { position, axis } = rock!;
  const [px, py, pz] = [x - position[0], y - position[1], z - position[2]];
  const off = Math.hypot(py * axis[2] - pz * axis[1], pz * axis[0] - px * axis[2], px * axis[1] - py * axis[0]);
  return off + Math.abs(growth) * Math.hypot(x - middle[0], y - middle[1], z - middle[2]);
}
