/** Room for the torch at places along a runner, among the other runners as they are laid; each place measured once. mm, degrees. */
import {
  type Arc,
  anySquareTo,
  type Centerline,
  type Chain,
  chain,
  cross,
  type Header,
  pointAt,
  type ResolvedRunner,
  type TorchReach,
  torchReach,
} from '../../../../geometry';
import { remembered } from '../../../../shared/remember';
import type { Vec3 } from '../../../../shared/vec3';

const chainOf = remembered((resolved: ResolvedRunner): Chain | null =>
  resolved.centerline ? chain(resolved.centerline, resolved.tubeRadius) : null,
);

export function torchAlong(header: Header, resolved: ResolvedRunner, room: number): (station: number) => TorchReach {
  const own = chainOf(resolved)!;
  const others = new Map<string, Chain>();
  for (const other of header.runners) {
    const tube = other === resolved ? null : chainOf(other);
    if (tube) others.set(other.runner.id, tube);
  }
  const known = new Map<number, TorchReach>();
  return (station) => {
    const kept = known.get(station);
    if (kept) return kept;
    const at = pointAt(resolved.centerline!, station);
    const reach = torchReach(own, others, at, sideAt(resolved.centerline!, station, at.tangent), room);
    known.set(station, reach);
    return reach;
  };
}

/** The side of the scribed line, so that a mirrored tube is tried in mirrored directions. */
function sideAt({ segments }: Centerline, station: number, tangent: Vec3): Vec3 {
  const arcs = segments.filter((segment): segment is Arc => segment.kind === 'arc');
  const arc = arcs.findLast((a) => a.station <= station) ?? arcs[0];
  return arc ? cross(tangent, cross(arc.direction, arc.inward)) : anySquareTo(tangent);
}
