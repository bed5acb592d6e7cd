/**
 * The gap along each tube, at even stations: to other tubes, to bodies that it does not belong to, to what stands around.
 * What is bundled or welded together is left out, as in `check`. What each pair has is remembered, so that after an edit only
 * what changed is measured. For colour: a station tells of the tube's section there. Of a header that moves it is the least over
 * the moments that the solver keeps clear of, with the clearance that the design asks for: between two moments it may be a little
 * less, as the list of gaps tells. mm.
 */
import { isTree, type Obstacle } from '../check/obstacles';
import { bodyShape, isWeldedTo, partsOf } from '../check/pairGaps';
import { type ConvexShape, slopeOf } from '../clearance/shapes';
import { requiredGap } from '../clearance/stretches';
import type { TriangleTree } from '../clearance/triangleTree';
import type { Header, ResolvedMerge, ResolvedRunner } from '../header/resolve';
import type { GapProfile } from './report';
import { type Station, sampleStations } from './stations';
import { distanceToTube } from './tubeDistance';

export type ProfileOptions = {
  /** Margins are capped at this, mm. */
  readonly within: number;
  /** About so far apart, mm. */
  readonly step: number;
};

/** One for each runner that has a line, in the design's order. @param obstacles at all moments that count, clearances in mm */
export function gapProfiles(header: Header, obstacles: readonly Obstacle[], options: ProfileOptions): GapProfile[] {
  return header.runners.flatMap((r) => gapProfile(header, r, obstacles, options));
}

/** Empty for a runner that has no line. */
export function gapProfile(
  header: Header,
  r: ResolvedRunner,
  obstacles: readonly Obstacle[],
  { within, step }: ProfileOptions,
): GapProfile[] {
  if (!r.centerline) return [];
  const places = sampleStations(r, step);
  const margins = new Float64Array(places.length).fill(within);
  const take = (gaps: Float64Array, required: number): void => {
    for (let k = 0; k < gaps.length; k++) margins[k] = Math.min(margins[k]!, gaps[k]! - required);
  };
  for (const other of header.runners)
    if (other !== r && other.centerline)
      take(toTube(r, other, within + header.tubeToTube, step, header), header.tubeToTube);
  for (const merge of header.merges.values()) if (!isWeldedTo(r, merge)) take(toBody(r, merge, within, step), 0);
  for (const [{ surrounding }, shapes] of byMoments(obstacles)) {
    const required = surrounding.clearance ?? 0;
    take(toObstacle(r, shapes, within + required, step), required);
  }
  return [{ runner: r.runner.id, stations: Float64Array.from(places, (p) => p.station), margins }];
}

/** Gaps at a runner's stations to one thing, none above `cap`; kept until another cap or step is asked. */
function rememberedRow<B extends object>(
  work: (r: ResolvedRunner, other: B, places: readonly Station[], cap: number, header: Header) => Float64Array,
): (r: ResolvedRunner, other: B, cap: number, step: number, header?: Header) => Float64Array {
  const known = new WeakMap<ResolvedRunner, WeakMap<B, { cap: number; step: number; row: Float64Array }>>();
  return (r, other, cap, step, header) => {
    const own = known.get(r) ?? new WeakMap();
    known.set(r, own);
    const kept = own.get(other);
    if (kept?.cap === cap && kept.step === step) return kept.row;
    const row = work(r, other, sampleStations(r, step), cap, header!);
    own.set(other, { cap, step, row });
    return row;
  };
}

const toTube = rememberedRow<ResolvedRunner>((r, other, places, cap, header) => {
  const own = partsOf(r, header);
  const others = partsOf(other, header);
  return Float64Array.from(places, ({ station, at: [x, y, z] }) => {
    const part =
      own.find(({ chain: { links } }) => station <= links.at(-1)!.station + links.at(-1)!.length) ?? own.at(-1);
    let gap = cap;
    for (const q of others)
      if (part && requiredGap(part, q, 0) >= 0)
        gap = distanceToTube(q.chain, x, y, z, gap + r.tubeRadius) - r.tubeRadius;
    return gap;
  });
});

const toBody = rememberedRow<ResolvedMerge>((r, merge, places, cap) => {
  const row = new Float64Array(places.length).fill(cap);
  toShape(r, bodyShape(merge), places, row);
  return row;
});

const toObstacle = rememberedRow<Shapes>((r, shapes, places, cap) => {
  const row = new Float64Array(places.length).fill(cap);
  for (const shape of shapes) {
    if (isTree(shape)) toMesh(r, shape, places, row);
    else toShape(r, shape, places, row);
  }
  return row;
});

type Shapes = readonly Obstacle['shape'][];

const shapesBy = new WeakMap<Obstacle['shape'], Shapes>();

/**
 * Each surrounding with its shapes at all its moments, the last and the first before those between: there most is nearest, and
 * what was found spares most of the rest. Shapes outlive an edit, obstacles do not: the list is the same for the same shapes, so
 * that rows of what was not edited are remembered.
 */
function byMoments(obstacles: readonly Obstacle[]): [Obstacle, Shapes][] {
  const lists = new Map<Obstacle, Obstacle['shape'][]>();
  for (const o of obstacles) {
    const list = lists.get(o.original ?? o) ?? [];
    lists.set(o.original ?? o, list);
    list.push(o.shape);
  }
  return [...lists].map(([o, list]) => {
    const kept = shapesBy.get(list[0]!);
    if (kept?.length === list.length) return [o, kept];
    const sorted = list.length > 1 ? [list.at(-1)!, ...list.slice(0, -1)] : list;
    shapesBy.set(list[0]!, sorted);
    return [o, sorted];
  });
}

/** Lowers what a row holds where the shape is nearer. */
function toShape(
  r: ResolvedRunner,
  { signedDistance: field }: ConvexShape,
  places: readonly Station[],
  row: Float64Array,
): void {
  let low = Number.NEGATIVE_INFINITY;
  let last = 0;
  for (const [k, place] of places.entries()) {
    // Nothing can have come nearer by more than the place went on.
    low -= place.station - last;
    last = place.station;
    if (low - r.tubeRadius >= row[k]!) continue;
    const [x, y, z] = place.at;
    const off = field(x, y, z);
    low = off;
    if (off - r.tubeRadius >= row[k]!) continue;
    const slant = place.isByEnd ? across(place, ...slopeOf(field, x, y, z)) : 1;
    row[k] = Math.min(row[k]!, off - r.tubeRadius * slant);
  }
}

/** As well, for a mesh. */
function toMesh(r: ResolvedRunner, tree: TriangleTree, places: readonly Station[], row: Float64Array): void {
  const foot = new Float64Array(3);
  let before = Number.POSITIVE_INFINITY;
  let last = 0;
  for (const [k, place] of places.entries()) {
    const [x, y, z] = place.at;
    const most = row[k]! + r.tubeRadius;
    // Nothing can have come further away by more than the place went on.
    const off = tree.nearest(x, y, z, Math.min(most, before + (place.station - last) + NEARLY), foot);
    last = place.station;
    before = off;
    if (off >= most) continue;
    const slant =
      place.isByEnd && off > 0 ? across(place, (x - foot[0]!) / off, (y - foot[1]!) / off, (z - foot[2]!) / off) : 1;
    row[k] = Math.min(row[k]!, off - r.tubeRadius * slant);
  }
}

const NEARLY = 1e-6;

/** How much of a unit vector lies in the tube's section. */
function across({ way }: Station, x: number, y: number, z: number): number {
  const along = x * way[0] + y * way[1] + z * way[2];
  return Math.sqrt(Math.max(0, x * x + y * y + z * z - along * along));
}
