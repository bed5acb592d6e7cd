/**
 * Where round a tube a welder's torch finds its room: a bar with round ends that stands square out from the skin must keep
 * clear of tubes. Common practice, no source: how thick a torch is, and that it stands square out. mm, degrees.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Chain } from '../clearance/chain';
import type { Station } from '../curve/pointAt';
import { distanceToTube } from '../gaps/tubeDistance';
import { add, cross, reject, scale, unit } from '../vector';

/** Half the thickness of a torch with its cup. */
const TORCH_RADIUS = 8;
/** Directions tried round the tube; each stands for as many degrees as its share. */
export const TORCH_DIRECTIONS = 72;
/** Least step outward, and how near to touching still passes: the torch rests on the very skin that it welds. */
const STEP = 0.25;
const TOUCH = 0.05;

export type TorchReach = {
  /** Degrees round the tube with nothing but the tube itself there, and with the others too. */
  readonly free: number;
  readonly freeInPlace: number;
  readonly bySelf: boolean;
  /** Those of the others that take some direction. */
  readonly byOthers: readonly string[];
};

/**
 * @param at a ring of the tube, and `side`, where round it the first direction is
 * @param room how far out from the skin the torch reaches
 */
export function torchReach(
  own: Chain,
  others: ReadonlyMap<string, Chain>,
  at: Pick<Station, 'position' | 'tangent'>,
  side: Vec3,
  room: number,
): TorchReach {
  const first = unit(reject(side, at.tangent));
  const second = cross(at.tangent, first);
  const reach = own.tubeRadius + room;
  const near = [...others].filter(([, chain]) => distanceToTube(chain, ...at.position, reach) < reach);
  const by = new Set<string>();
  let bySelf = false;
  let free = 0;
  let freeInPlace = 0;
  for (let k = 0; k < TORCH_DIRECTIONS; k++) {
    const angle = (2 * Math.PI * k) / TORCH_DIRECTIONS;
    const out = add(scale(first, Math.cos(angle)), scale(second, Math.sin(angle)));
    const taken = isTaken(own, at.position, out, own.tubeRadius, room);
    const takers = near.filter(([, chain]) => isTaken(chain, at.position, out, own.tubeRadius, room));
    for (const [id] of takers) by.add(id);
    if (taken) bySelf = true;
    else {
      free++;
      if (takers.length === 0) freeInPlace++;
    }
  }
  const share = 360 / TORCH_DIRECTIONS;
  return {
    free: free * share,
    freeInPlace: freeInPlace * share,
    bySelf,
    byOthers: near.flatMap(([id]) => (by.has(id) ? [id] : [])),
  };
}

/** Outward along the torch's axis in steps as long as nothing can be nearer than the torch is thick. */
function isTaken(tube: Chain, from: Vec3, out: Vec3, skin: number, room: number): boolean {
  const radius = Math.min(TORCH_RADIUS, room / 2);
  const end = skin + room - radius;
  for (let t = skin + radius; ; ) {
    const apart = distanceToTube(tube, from[0] + t * out[0], from[1] + t * out[1], from[2] + t * out[2], room + radius);
    if (apart < radius - TOUCH) return true;
    if (t >= end) return false;
    t = Math.min(end, t + Math.max(STEP, apart - radius));
  }
}
