/**
 * Plain outlet and the joint behind it: a sleeve that slips over the outlet, a band round a butt, a flange on its end, or a
 * flexible length. A joint stands
 * outside the body by which clearances are checked. mm; the collector's frame, whose z runs along the flow.
 */
import { circleLoop, type Loop, type Point2 } from '../plane/loop';
import { extrudedSolid, extrudedVolume, rims } from '../solid/extruded';
import { circlesOf, revolvedSolid, revolvedVolume } from '../solid/revolved';
import { BAND, BELLOWS, FLANGE, SLEEVE } from './jointSizes';
import type { Piece, PiecePlan } from './piece';
import type { CollectorPlan } from './plan';

export const outletPiece = (plan: CollectorPlan): PiecePlan[] => {
  const [low, high] = [plan.coneEnd + plan.weldGap, plan.length];
  if (!(high - low > 0.5)) return [];
  const { outletRadius: r, wall } = plan;
  const name = { kind: 'outlet', name: 'outlet', pose: plan.pose } as const;
  return [{ ...name, make: () => turned(tubeProfile(r, wall, low, high)) }];
};

export function jointPiece(plan: CollectorPlan): PiecePlan[] {
  const make = makerOf(plan);
  return make ? [{ kind: 'joint', name: 'joint', pose: plan.pose, make }] : [];
}

function makerOf(plan: CollectorPlan): (() => Piece) | null {
  const { outletRadius: r, wall, length, coneEnd, joint } = plan;
  switch (joint) {
    case 'slip': {
      const low = coneEnd + SLEEVE.short;
      const inner = r + (plan.merge.merge.slipGap ?? SLEEVE.gap);
      return () => turned(tubeProfile(inner + wall, wall, low, length + SLEEVE.beyond));
    }
    case 'band-clamp':
      return () => band(r, length);
    case 'flange':
      return () => jointFlange(r, length);
    case 'flexible':
      return () => turned(bellows(r, length - BELLOWS.cuff), [0, -1]);
    default:
      return null;
  }
}

const tubeProfile = (outer: number, wall: number, low: number, high: number): Point2[] => [
  [outer, low],
  [outer, high],
  [outer - wall, high],
  [outer - wall, low],
];

/** @param marked corners of the profile whose circles are drawn; all of them by default */
function turned(profile: readonly Point2[], marked?: readonly number[]): Piece {
  return {
    mesh: revolvedSolid(profile),
    volume: revolvedVolume(profile),
    edges: circlesOf(marked ? marked.map((i) => profile.at(i)!) : profile),
  };
}

/** An open ring with an ear bent out at either end, for the bolt that draws it together. */
function band(radius: number, at: number): Piece {
  const { width, thickness, slit, ear, earThickness, gap } = BAND;
  const inner = radius + gap;
  const outer = inner + thickness;
  const [half, out] = [slit / 2, outer + ear];
  const onCircle = (r: number, x: number): Point2 => [x, Math.sqrt(r * r - x * x)];
  const [startInner, endInner] = [onCircle(inner, -half), onCircle(inner, half)];
  const shoulder = half + earThickness;
  const [startOuter, endOuter] = [onCircle(outer, -shoulder), onCircle(outer, shoulder)];
  // Once round outside, counter-clockwise from the left ear's foot to the right one's; out and in along the ears; back inside.
  const roundOuter = 2 * Math.PI - 2 * Math.asin(shoulder / outer);
  const roundInner = 2 * Math.PI - 2 * Math.asin(half / inner);
  const outline: Loop = [
    [...startOuter, Math.tan(roundOuter / 4)],
    [...endOuter, 0],
    [shoulder, out, 0],
    [half, out, 0],
    [...endInner, -Math.tan(roundInner / 4)],
    [...startInner, 0],
    [-half, out, 0],
    [-shoulder, out, 0],
  ];
  return drawn(outline, [], at - width / 2, at + width / 2);
}

/** Three bolts round the outlet, bosses joined by the ring. The outlet goes through it to its outer face. */
function jointFlange(radius: number, at: number): Piece {
  const { thickness, hole, land, gap, bolts } = FLANGE;
  const circle = radius + gap + hole / 2 + land;
  const centres = Array.from({ length: bolts }, (_, i): Point2 => {
    const a = (2 * Math.PI * i) / bolts + Math.PI / 2;
    return [circle * Math.cos(a), circle * Math.sin(a)];
  });
  const bore = circleLoop([0, 0], radius + gap);
  const holes = centres.map((c) => circleLoop(c, hole / 2));
  const outline = bossed(circle, radius + gap + land, hole / 2 + land, bolts);
  const flat = { outline, ports: [bore], holes, thickness };
  return { ...drawn(outline, [bore, ...holes], at - thickness, at), flat };
}

/**
 * A ring with bosses: boss arcs joined to the ring's by straights tangent to both. Seen from a boss's middle line, the
 * tangent point lies at β with cos β = (ring − boss) / circle on either circle.
 */
function bossed(circle: number, ring: number, boss: number, count: number): Loop {
  const beta = Math.acos((ring - boss) / circle);
  const at = (a: number, r: number, from: Point2 = [0, 0]): Point2 => [
    from[0] + r * Math.cos(a),
    from[1] + r * Math.sin(a),
  ];
  return Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count + Math.PI / 2).flatMap((middle) => {
    const centre = at(middle, circle);
    const rest = (2 * Math.PI) / count - 2 * beta;
    return [
      [...at(middle - beta, boss, centre), Math.tan((2 * beta) / 4)],
      [...at(middle + beta, boss, centre), 0],
      [...at(middle + beta, ring), Math.tan(rest / 4)],
      [...at(middle + beta + rest, ring), 0],
    ] as const;
  });
}

const drawn = (outline: Loop, holes: readonly Loop[], low: number, high: number): Piece => ({
  mesh: extrudedSolid(outline, holes, low, high),
  volume: extrudedVolume(outline, holes, low, high),
  edges: rims([outline, ...holes], [low, high]),
});

/** A plain cuff, waves, a plain cuff: the wall's outside up, its inside back down. */
function bellows(radius: number, from: number): Point2[] {
  const { length, waves, depth, wall, cuff, gap } = BELLOWS;
  const inner = radius + gap;
  const steps = 16 * waves;
  const wave = (share: number) => (depth * (1 - Math.cos(2 * Math.PI * waves * share))) / 2;
  const middle = Array.from({ length: steps + 1 }, (_, i): Point2 => {
    return [inner + wave(i / steps), from + cuff + ((length - 2 * cuff) * i) / steps];
  });
  const line: Point2[] = [[inner, from], ...middle, [inner, from + length]];
  const outside = line.map(([r, z]): Point2 => [r + wall, z]);
  return [...outside, ...line.reverse()];
}
