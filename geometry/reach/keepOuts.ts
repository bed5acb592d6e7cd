/**
 * Room for tools as things that tubes must keep clear of: for each place one tool at one stand, free of all that stays where it
 * is, and the one that the tubes lie in least. Deterministic. mm, design frame.
 */
import type { Capsule, Cylinder } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import { WORKING_CLEARANCE } from '../../shared/stock/tools';
import type { Meshes } from '../check/meshes';
import type { Obstacle } from '../check/obstacles';
import { paddedTriangle } from '../clearance/paddedTriangle';
import { type ConvexShape, capsuleShape, cylinderShape } from '../clearance/shapes';
import type { Header } from '../header/resolve';
import { cloudsOf, wrapThickness } from './cloud';
import { barsFree, lackOf, type Scene, type Stance, stancesAmong, takenBy, toBar } from './judge';
import { type Near, nearTo } from './local';
import { outOf, type Place } from './place';
import type { ToolSolid } from './report';
import { type Spot, spotsOf } from './scenes';
import { shadowsOf, turned } from './shadows';
import { fixedStraights, lyingSomewhere } from './standing';
import { type Arm, STAND, STANDS, standsOf } from './swing';
import type { Bar, Way } from './ways';

/** As a surrounding: its clearance is the wrap's thickness and what a tool wants free. Parts with one id are one, drawn at a few stands. */
export type KeepOut = Cylinder | Capsule;

/** Swings are tried from every so many stands: 5°. */
const STRIDE = 8;
/** What a millimetre that tubes must give way is worth against an mm² of a tool's room. */
const GIVING_WAY = 10;
const SIZE = 1e-3;
/** Balls stray so much from a straight, and what stands exactly at its limit is to hold. */
const ROUNDING = 0.05;

/** Whether or not the design asks for it. @param meshes by file name, as for `check` */
export const keepOuts = (header: Header, meshes: Meshes = NO_MESHES): readonly KeepOut[] =>
  roomsOf(header)(meshes).flatMap((room) => room.solids);

/** A part of an envelope: as it is told, and as tubes keep clear of it. */
type Room = { readonly solids: readonly KeepOut[]; readonly shape: ConvexShape };

const NO_MESHES: Meshes = new Map();
const roomsOf = remembered((header: Header) =>
  remembered((meshes: Meshes): Room[] => {
    const fixed = cloudsOf(fixedStraights(header));
    const lying = cloudsOf(lyingSomewhere(header));
    const wrap = wrapThickness(header.design.wrap);
    return spotsOf(header, meshes).flatMap((spot) => roomAt(spot, near(spot, fixed), near(spot, lying), wrap));
  }),
);

const near = (spot: Spot, clouds: ReturnType<typeof cloudsOf>): Near =>
  nearTo(spot.place.axes, clouds, spot.out, spot.up, WORKING_CLEARANCE);

/** What the router and the balancer keep clear of beside the surroundings: nothing where the design does not ask for it. */
export function roomForTools(header: Header, meshes: Meshes): Obstacle[] {
  if (!header.design.access?.required) return [];
  return roomsOf(header)(meshes).map(({ solids: [surrounding], shape }) => ({ surrounding: surrounding!, shape }));
}

/** `room for f1 stud 3`, and `room for f1 stud 3 part 2`. */
const partName = ({ id }: Place, part: number): string => `room for ${id}${part === 0 ? '' : ` part ${part + 1}`}`;

type Choice = { readonly way: Way; readonly stance: Stance; readonly score: number };

function roomAt(spot: Spot, fixed: Near, lying: Near, wrap: number): Room[] {
  // Where even the fixed straights leave no room once wrapped, their wrap must end sooner: then bare.
  const choice = chosen(spot, fixed, lying, true) ?? (wrap > 0 ? chosen(spot, fixed, lying, false) : null);
  return choice ? envelope(spot.place, choice, fixed, wrap) : [];
}

function chosen({ ways }: Spot, straights: Near, lying: Near, wrapped: boolean): Choice | null {
  let best: Choice | null = null;
  for (const { way, fixed } of ways) {
    const still: Scene = { near: straights, fixed, room: WORKING_CLEARANCE };
    if (way.unfit !== null || !barsFree(still, way.bars, wrapped, 0)) continue;
    const all = stances(still, way, wrapped);
    if (all.length === 0) continue;
    const { lack, stance: run } = lackOf({ near: lying, fixed, room: WORKING_CLEARANCE }, way, true);
    const within = run ? all.filter((one) => liesIn(one, run)) : [];
    // Where the tubes would have to give way at another stand than the straights allow, they must do so farther.
    const score = (within.length > 0 ? lack : 2 * lack) * GIVING_WAY + sizeOf(way) * SIZE;
    if (best && score >= best.score) continue;
    const weigh = weigher(lying, way);
    const weights = (within.length > 0 ? within : all).map((stance) => ({ stance, weight: weigh(stance) }));
    const least = Math.min(...weights.map((w) => w.weight));
    const alike = weights.filter((w) => w.weight === least);
    best = { way, stance: alike[Math.floor(alike.length / 2)]!.stance, score };
  }
  return best;
}

/** How much of the tubes, wrapped, lies in the way of a stance: in balls, of which there is one every 2 mm. */
function weigher(lying: Near, way: Way): (stance: Stance) => number {
  const room = WORKING_CLEARANCE;
  let always = 0;
  for (let i = 0; i < lying.count; i++)
    if (way.bars.some((bar) => toBar(bar, lying.rho[i]!, lying.z[i]!) < lying.wrapped[i]! + room)) always++;
  const swung = shadowsOf(lying, way.arms, room);
  const put = shadowsOf(lying, way.approach, room);
  const half = ((standsOf(way.swing) - 1) / 2) * STAND;
  return ({ first, stand }) => {
    let found = always;
    for (const one of swung) if (turned(one.theta, first * STAND + half) <= one.half + half) found++;
    for (const one of put) if (turned(one.theta, stand * STAND) <= one.half) found++;
    return found;
  };
}

const liesIn = ({ first, count }: Stance, run: Stance): boolean =>
  run.count === STANDS || ((first - run.first + STANDS) % STANDS) + count <= run.count;

function stances(still: Scene, way: Way, wrapped: boolean): Stance[] {
  if (way.arms.length === 0) return [{ first: 0, count: STANDS, stand: 0 }];
  const taken = takenBy(still, way.arms, wrapped, 0, 'arms');
  const barred = way.approach.length > 0 ? takenBy(still, way.approach, wrapped, 0, 'approach') : null;
  return stancesAmong(taken, barred, standsOf(way.swing), STRIDE);
}

/** Areas that it covers, mm². */
const sizeOf = ({ bars, arms, swing }: Way): number =>
  bars.reduce((sum, b) => sum + 2 * b.radius * (b.to - b.from), 0) +
  arms.reduce((sum, a) => sum + 2 * a.radius * a.length * (1 + swing), 0);

function envelope(place: Place, { way, stance }: Choice, fixed: Near, wrap: number): Room[] {
  const { axes } = place;
  const full = wrap + WORKING_CLEARANCE;
  const found: Room[] = [];
  const put = (parts: readonly ToolSolid[], wanted = full, shape = shapeOf(parts[0]!)): void => {
    const own = { id: partName(place, found.length), clearance: clearanceLeft(place, fixed, shape, wanted) };
    found.push({ solids: parts.map((part) => ({ ...part, ...own })), shape });
  };
  for (const { from, to, radius } of outermost(way.bars))
    put([{ shape: 'cylinder', a: outOf(axes, [0, 0, from]), b: outOf(axes, [0, 0, to]), radius }]);
  const at = (arm: Arm, stand: number, longer = 0): ToolSolid => {
    const [level, up] = [arm.length * Math.cos(arm.rise) + longer, arm.length * Math.sin(arm.rise)];
    const [c, s] = [Math.cos(stand * STAND), Math.sin(stand * STAND)];
    const [a, b] = [outOf(axes, [0, 0, arm.height]), outOf(axes, [c * level, s * level, arm.height + up])];
    return { shape: 'capsule', a, b, radius: arm.flat ?? arm.radius };
  };
  const last = stance.first + standsOf(way.swing) - 1;
  for (const arm of way.arms) {
    // Between the first stand and the last: the triangle cut off at the middle of the arc's rise.
    const bow = arm.length * (1 - Math.cos(((last - stance.first) * STAND) / 2));
    const [one, other] = [at(arm, stance.first, bow / 2), at(arm, last, bow / 2)];
    const shape = paddedTriangle(one.a, one.b, other.b, arm.radius);
    put(
      [stance.first, (stance.first + last) / 2, last].map((stand) => at(arm, stand)),
      full + bow / 4,
      shape,
    );
  }
  // A spanner's head slid on lies within its handle's way but for its width: as round as it is high will do.
  for (const arm of middleAndLast(way.approach)) put([at(arm, stance.stand)]);
  return found;
}

const shapeOf = (solid: ToolSolid): ConvexShape =>
  solid.shape === 'cylinder' ? cylinderShape(solid) : capsuleShape(solid);

/** Bars that do not lie within another. */
const outermost = (bars: readonly Bar[]): Bar[] =>
  bars.filter(
    (b, i) =>
      !bars.some(
        (o, k) =>
          k !== i &&
          o.from <= b.from &&
          o.to >= b.to &&
          o.radius >= b.radius &&
          (k < i || o.from < b.from || o.to > b.to || o.radius > b.radius),
      ),
  );

/** As much as is wanted, or as the straights that cannot give way leave. */
function clearanceLeft({ axes }: Place, fixed: Near, { signedDistance }: ConvexShape, wanted: number): number {
  let least = wanted;
  for (let i = 0; i < fixed.count; i++) {
    const [rho, theta] = [fixed.rho[i]!, fixed.theta[i]!];
    const middle = outOf(axes, [rho * Math.cos(theta), rho * Math.sin(theta), fixed.z[i]!]);
    if (fixed.bare[i]! >= 0) least = Math.min(least, signedDistance(...middle) - fixed.bare[i]! - ROUNDING);
  }
  return Math.max(0, least);
}

/** Of a lift in fine steps the middle and the last: a tube does not fit in between. */
const middleAndLast = (arms: readonly Arm[]): readonly Arm[] =>
  arms.length < 3 ? arms : [arms[Math.floor((arms.length - 1) / 2)]!, arms.at(-1)!];
