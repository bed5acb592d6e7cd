/**
 * Runners as the router has them before it begins: the straights that every tube must have at its port and its inlet, which stay
 * where they are, and where no line is drawn yet the straight way from one to the other. mm.
 */
import type { Runner } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { centerline } from '../curve/centerline';
import type { Header, ResolvedRunner } from '../header/resolve';
import { addScaled } from '../vector';

/** Where the tooling asks for no straight, so much of one is there at least. */
const LEAST_STUB = 1;
/** A corner of a way that nobody bends. */
const SHARP = 1;

/** @returns the header with nothing but its fixed straights; a locked runner is fixed all along */
export function fixedStraights(header: Header): Header {
  return { ...header, runners: header.runners.flatMap((r) => straightsOf(header, r)) };
}

function straightsOf(header: Header, r: ResolvedRunner): ResolvedRunner[] {
  const { runner, start, tooling } = r;
  if (runner.locked) return r.centerline ? [r] : [];
  const found: ResolvedRunner[] = [];
  const still = !('merge' in runner.from) || !header.merges.get(runner.from.merge)!.merge.placement;
  const out = addScaled(start.position, start.direction, Math.max(LEAST_STUB, tooling.firstStraight));
  if (still) found.push(along(r, [start.position, out]));
  const { merge, inlets } = header.merges.get(runner.to.merge)!;
  if (merge.placement) return found;
  // Whoever comes in there: all inlets of a collector that stays are taken where it has as many as runners.
  const entering = header.runners.filter((other) => other.runner.to.merge === merge.id).length;
  const ends = r.end ? [r.end] : entering === inlets.length ? inlets : [];
  const length = Math.max(LEAST_STUB, tooling.lastStraight);
  for (const end of ends)
    found.push(along(r, [addScaled(end.position, end.direction, -length), end.position], { merge: merge.id }));
  return found;
}

/** @returns the header with every runner lying somewhere */
export function lyingSomewhere(header: Header): Header {
  return {
    ...header,
    runners: header.runners.map((r) => {
      if (r.centerline) return r;
      const { start, end, tooling, runner } = r;
      const out = addScaled(start.position, start.direction, Math.max(LEAST_STUB, tooling.firstStraight));
      const goal = end?.position ?? header.merges.get(runner.to.merge)!.merge.position;
      return along(r, [start.position, out, goal]);
    }),
  };
}

const along = (r: ResolvedRunner, points: readonly Vec3[], from?: Runner['from']): ResolvedRunner => ({
  ...r,
  runner: from ? { ...r.runner, from } : r.runner,
  centerline: centerline(
    points,
    points.slice(1, -1).map(() => SHARP),
  ),
});
