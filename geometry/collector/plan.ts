/**
 * How a collector is built: where its tubes run on from the inlets, where they have met, where cone and outlet begin. In the
 * collector's own frame: z along the flow from the inlet plane, y along its up, x = up × axis. mm, radians.
 *
 * Leaning tubes are cut along the planes they share and have met once no gap is left between their bores. Tubes that never
 * meet (no lean, or too little length) end at a plate with a bore for each.
 */
import type { OutletJoint } from '../../shared/design/types';
import { rememberedOfTwo } from '../../shared/remember';
import type { Vec3 } from '../../shared/vec3';
import { sayIn } from '../check/words';
import type { Pose } from '../header/merge';
import type { Header, ResolvedMerge } from '../header/resolve';
import { RADIANS } from '../tolerance';
import { norm } from '../vector';
import { type CollectorInlet, inletIn, isLine, LEAST_BRIDGE, neighbours, reachPastPlane } from './inlets';
import { leastOutlet } from './jointSizes';
import { collectorProblems } from './problems';

export type CollectorPlan = {
  readonly id: string;
  readonly merge: ResolvedMerge;
  /** Where the frame lies. */
  readonly pose: Pose;
  readonly inlets: readonly CollectorInlet[];
  /** Half the outside diameter of every tube that enters, and of its bore. */
  readonly tubeRadius: number;
  readonly boreRadius: number;
  readonly wall: number;
  readonly outletRadius: number;
  readonly convergence: number;
  /** Whether its tubes meet; else they end at a plate. */
  readonly meets: boolean;
  /** z at which tubes end, the cone ends (and the outlet begins), the outlet ends. */
  readonly tubesEnd: number;
  readonly plateEnd: number;
  readonly coneEnd: number;
  readonly length: number;
  readonly weldGap: number;
  readonly joint: OutletJoint | null;
  /** What keeps it from being built: field and words. */
  readonly problems: readonly { readonly field: string; readonly message: string }[];
};

/** Plain outlet that a joint takes, mm, and at most this share of the collector's length: common practice. */
const OUTLETS: Readonly<Record<OutletJoint | 'none', number>> = {
  slip: 32,
  'band-clamp': 28,
  flange: 20,
  flexible: 30,
  weld: 10,
  none: 10,
};
const OUTLET_SHARE = 0.3;
/** Tubes that meet run on at least to this share of what is left, at most to that: the rest is the cone's. */
const LEAST_SHARE = 0.5;
const MOST_SHARE = 0.8;
/** Past the place where bores have just met, mm, so that a cone can be welded on there. */
const PAST_MEETING = 1.5;
/** Beyond this the crotch between two bores is open enough, as a share of the bore's radius. */
const OPEN = 0.93;
/** Free tube before a plate, where inlets lean, mm. */
const BEFORE_PLATE = 10;
const LEAST_BEFORE_PLATE = 1.5;
/** A plate of at least so much, mm: common practice. */
const PLATE = 3;
/** Worked out once for a header: solids and templates both ask for it. */
export const collectorPlan: (header: Header, merge: ResolvedMerge) => CollectorPlan = rememberedOfTwo(planned);

function planned(header: Header, merge: ResolvedMerge): CollectorPlan {
  const { merge: m } = merge;
  const pose: Pose = { position: m.position, direction: merge.outlet.direction, up: merge.outlet.up };
  const inlets = merge.inlets.map((inlet) => inletIn(pose, inlet));
  const tubeRadius = merge.inletOutsideDiameter / 2;
  const boreRadius = tubeRadius - merge.wall;
  const convergence = (m.convergence ?? 0) * RADIANS;
  const followed = header.design.runners.some((r) => 'merge' in r.from && r.from.merge === m.id);
  const joint = followed ? null : (m.outletJoint ?? null);
  const outlet =
    m.outletLength ?? Math.max(leastOutlet(joint), Math.min(OUTLETS[joint ?? 'none'], OUTLET_SHARE * m.length));
  const coneEnd = m.length - outlet;
  const meeting = meetingHeight(inlets, boreRadius, convergence);
  const { meets, tubesEnd } = tubesEndOf(meeting, inlets, m.mergingLength, coneEnd, tubeRadius, convergence);
  const plateEnd = meets || m.inlets === 1 ? tubesEnd : tubesEnd + Math.max(PLATE, 2 * merge.wall);
  const base = {
    id: m.id,
    merge,
    pose,
    inlets,
    tubeRadius,
    boreRadius,
    wall: merge.wall,
    outletRadius: m.outletDiameter / 2,
    convergence,
    meets,
    tubesEnd,
    plateEnd,
    coneEnd,
    length: m.length,
    weldGap: m.weldGap ?? 0,
    joint,
  };
  return { ...base, problems: collectorProblems(base, meeting, sayIn(header.design.display)) };
}

/** Where every two neighbouring bores have met, where the middle has closed, where axes cross; infinite where that never is. */
export type Meeting = {
  readonly sides: number;
  readonly middle: number;
  readonly apex: number;
  /** Up to where a plate would have metal enough between its bores. */
  readonly apart: number;
};

function meetingHeight(inlets: readonly CollectorInlet[], bore: number, convergence: number): Meeting {
  const tan = Math.tan(convergence);
  const offsets = inlets.map((i) => i.offset);
  const apex = tan > 0 ? Math.min(...offsets.filter((o) => o > 0)) / tan : Number.POSITIVE_INFINITY;
  const sides = Math.max(0, ...neighbours(inlets).map(([a, b]) => sidesMeet(a, b, OPEN * bore)));
  // A gap in the middle is left only where no inlet lies there and three or more stand round it.
  const open = inlets.length > 2 && offsets.every((o) => o > 0) && !isLine(inlets);
  const middle = open ? (offsets[0]! - bore / Math.cos(convergence)) / tan : 0;
  const bridged = bore / Math.cos(convergence) + LEAST_BRIDGE / 2;
  const apart = Math.min(Number.POSITIVE_INFINITY, ...neighbours(inlets).map(([a, b]) => sidesMeet(a, b, bridged)));
  return { sides, middle: tan > 0 || middle <= 0 ? middle : Number.POSITIVE_INFINITY, apex, apart };
}

/** z at which two axes are 2·half apart: their places apart shrink evenly along z. */
function sidesMeet(a: CollectorInlet, b: CollectorInlet, half: number): number {
  const at = ({ position: p, direction: d }: CollectorInlet, z: number): Vec3 => [
    p[0] + (z * d[0]) / d[2],
    p[1] + (z * d[1]) / d[2],
    0,
  ];
  const apart = (z: number) => norm([at(a, z)[0] - at(b, z)[0], at(a, z)[1] - at(b, z)[1], 0]);
  const [now, slope] = [apart(0), apart(0) - apart(1)];
  return slope > 1e-9 ? Math.max(0, (now - 2 * half) / slope) : Number.POSITIVE_INFINITY;
}

function tubesEndOf(
  { sides, middle, apex, apart }: Meeting,
  inlets: readonly CollectorInlet[],
  wished: number | undefined,
  coneEnd: number,
  tubeRadius: number,
  convergence: number,
): { meets: boolean; tubesEnd: number } {
  if (inlets.length === 1) return { meets: true, tubesEnd: wished ?? 0 };
  const most = Math.min(MOST_SHARE * coneEnd, 0.95 * apex);
  if (wished !== undefined) return { meets: wished >= sides, tubesEnd: wished };
  if (!(sides <= most))
    return { meets: false, tubesEnd: convergence > 0 ? beforePlate(tubeRadius, convergence, apart) : 0 };
  const wanted = Math.max(1.1 * sides, middle + PAST_MEETING, LEAST_SHARE * coneEnd);
  return { meets: true, tubesEnd: Math.min(wanted, most) };
}

/** A handy length of tube on the short side, less where bores would come too near each other on the way. */
function beforePlate(tubeRadius: number, convergence: number, apart: number): number {
  const reach = reachPastPlane(tubeRadius, convergence);
  return Math.max(reach + LEAST_BEFORE_PLATE, Math.min(reach + BEFORE_PLATE, apart));
}
