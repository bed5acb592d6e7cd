/**
 * How a collector is built: where its tubes run on from the inlets, where they have met, where cone and outlet begin. In the
 * collector's own frame: z along the flow from the inlet plane, y along its up, x = up × axis. mm, radians.
 *
 * Leaning tubes are cut along the planes they share and have met once no gap is left between their bores. Tubes that never
 * meet (no lean, or too little length) end at a plate with a bore for each.
 */
import type { OutletJoint } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import type { Header, ResolvedMerge } from '../header/resolve';
import { partFrame, toFrame } from '../parts/place';
import { RADIANS } from '../tolerance';
import { norm, unit } from '../vector';
import { reachThrough } from './sharedPlane';

export type CollectorInlet = {
  readonly position: Vec3;
  /** Of travel, into the collector. */
  readonly direction: Vec3;
  /** Unit, from the axis toward the inlet, square to the axis; y for an inlet at the centre. */
  readonly outward: Vec3;
  /** From the axis. */
  readonly offset: number;
};

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
  slip: 40,
  'band-clamp': 30,
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
const BEFORE_PLATE = 1.5;
/** A plate of at least so much, mm: common practice. */
const PLATE = 3;
/** Least cone, mm, and least metal between two bores of a plate. */
const LEAST_CONE = 15;
const LEAST_BRIDGE = 1;
/** How much nearer than their diameter inlets may stand, mm: rounding of a typed pitch. */
const OVERLAP_SLACK = 0.05;

export function collectorPlan(header: Header, merge: ResolvedMerge): CollectorPlan {
  const { merge: m } = merge;
  const pose: Pose = { position: m.position, direction: merge.outlet.direction, up: merge.outlet.up };
  const inlets = merge.inlets.map((inlet) => inletIn(pose, inlet));
  const tubeRadius = merge.inletOutsideDiameter / 2;
  const boreRadius = tubeRadius - merge.wall;
  const convergence = (m.convergence ?? 0) * RADIANS;
  const followed = header.design.runners.some((r) => 'merge' in r.from && r.from.merge === m.id);
  const joint = followed ? null : (m.outletJoint ?? null);
  const outlet = m.outletLength ?? Math.min(OUTLETS[joint ?? 'none'], OUTLET_SHARE * m.length);
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
  return { ...base, problems: problemsOf(base, meeting) };
}

function inletIn(pose: Pose, { position, direction }: Pose): CollectorInlet {
  const frame = partFrame(pose);
  const [x, y] = toFrame(frame, position);
  const offset = Math.hypot(x, y);
  const [u, v, w] = toFrame([frame[0], frame[1], frame[2], [0, 0, 0]], direction);
  return {
    position: [x, y, 0],
    direction: unit([u, v, w]),
    outward: offset > 0 ? [x / offset, y / offset, 0] : [0, 1, 0],
    offset,
  };
}

/** Where every two neighbouring bores have met, and where the middle has closed; infinite where that never is. */
type Meeting = { readonly sides: number; readonly middle: number; readonly apex: number };

function meetingHeight(inlets: readonly CollectorInlet[], bore: number, convergence: number): Meeting {
  const tan = Math.tan(convergence);
  const offsets = inlets.map((i) => i.offset);
  const apex = tan > 0 ? Math.min(...offsets.filter((o) => o > 0)) / tan : Number.POSITIVE_INFINITY;
  const sides = Math.max(0, ...neighbours(inlets).map(([a, b]) => sidesMeet(a, b, OPEN * bore)));
  // A gap in the middle is left only where no inlet lies there and three or more stand round it.
  const open = inlets.length > 2 && offsets.every((o) => o > 0) && !isLine(inlets);
  const middle = open ? (offsets[0]! - bore / Math.cos(convergence)) / tan : 0;
  return { sides, middle: tan > 0 || middle <= 0 ? middle : Number.POSITIVE_INFINITY, apex };
}

const isLine = (inlets: readonly CollectorInlet[]): boolean =>
  inlets.every(({ position: [x, y] }) => {
    const [a, b] = inlets[0]!.position;
    return Math.abs(x * b - y * a) < 1e-6 * inlets[0]!.offset * Math.max(1, Math.hypot(x, y));
  });

/** Inlets that stand side by side: in a ring each and the next, in a line likewise without the last and the first. */
export function neighbours(inlets: readonly CollectorInlet[]): (readonly [CollectorInlet, CollectorInlet])[] {
  const pairs = inlets.slice(1).map((inlet, k) => [inlets[k]!, inlet] as const);
  return inlets.length > 2 && !isLine(inlets) ? [...pairs, [inlets.at(-1)!, inlets[0]!]] : pairs;
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
  { sides, middle, apex }: Meeting,
  inlets: readonly CollectorInlet[],
  wished: number | undefined,
  coneEnd: number,
  tubeRadius: number,
  convergence: number,
): { meets: boolean; tubesEnd: number } {
  if (inlets.length === 1) return { meets: true, tubesEnd: wished ?? 0 };
  const most = Math.min(MOST_SHARE * coneEnd, 0.95 * apex);
  const beforePlate = convergence > 0 ? tubeRadius * Math.sin(convergence) + BEFORE_PLATE : 0;
  if (wished !== undefined) return { meets: wished >= sides, tubesEnd: wished };
  if (!(sides <= most)) return { meets: false, tubesEnd: beforePlate };
  const wanted = Math.max(1.1 * sides, middle + PAST_MEETING, LEAST_SHARE * coneEnd);
  return { meets: true, tubesEnd: Math.min(wanted, most) };
}

function problemsOf(plan: Omit<CollectorPlan, 'problems'>, { sides, apex }: Meeting) {
  const { inlets, tubeRadius, boreRadius, tubesEnd, plateEnd, coneEnd, length, merge, weldGap } = plan;
  const problems: { field: string; message: string }[] = [];
  const say = (field: string, message: string) => problems.push({ field, message });
  const mm = (x: number) => `${x.toFixed(1)} mm`;
  if (!(boreRadius > 0))
    say('wall', `The wall of ${mm(merge.wall)} leaves no bore in a tube of ${mm(2 * tubeRadius)}.`);
  const through = neighbours(inlets).flatMap(([a, b]) => [
    reachThrough(a, b, tubeRadius),
    reachThrough(b, a, tubeRadius),
  ]);
  const overlap = 2 * Math.max(0, ...through.map(({ by }) => by));
  if (overlap > OVERLAP_SLACK) {
    const grow = Math.max(...through.map((t) => t.grow));
    say(
      'pitch',
      `Its inlets overlap by ${mm(overlap)}: tubes of ${mm(2 * tubeRadius)} stand at a pitch of ${mm(merge.pitch)}. Make the pitch at least ${mm(Math.ceil(10 * grow * merge.pitch) / 10)}, or choose narrower tube.`,
    );
  }
  if (tubesEnd > apex)
    say('mergingLength', `Its tubes would cross ${mm(apex)} from the inlets: make the merging length less than that.`);
  const bridge = merge.pitch * (1 - tubesEnd / apex) - (2 * boreRadius) / Math.cos(plan.convergence);
  if (!plan.meets && inlets.length > 1 && bridge < LEAST_BRIDGE)
    say(
      plan.merge.merge.mergingLength === undefined ? 'pitch' : 'mergingLength',
      Number.isFinite(sides)
        ? `At ${mm(tubesEnd)} from the inlets its bores are ${mm(Math.max(0, bridge))} apart: too near for a plate, too far to meet. Let tubes run on to ${mm(1.1 * sides)} (merging length), or lean them more (convergence).`
        : `Only ${mm(Math.max(0, bridge))} of metal would be left between its bores: make the pitch larger.`,
    );
  if (coneEnd - plateEnd - weldGap < LEAST_CONE)
    say(
      plan.merge.merge.mergingLength === undefined ? 'length' : 'mergingLength',
      `Only ${mm(Math.max(0, coneEnd - plateEnd))} is left for its cone, which needs at least ${mm(LEAST_CONE)}: make the collector longer than ${mm(length)}, or its merging or outlet length shorter.`,
    );
  return problems;
}
