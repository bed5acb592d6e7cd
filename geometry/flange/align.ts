/**
 * A drawing laid over a flange: each port is given the opening that is its own, and the drawing is turned and shifted, and turned
 * over where it was taken from the other side, so that their middles fall on the ports' by least squares. Every pair of openings
 * is tried for the two ports farthest apart. mm, the flange's plane.
 */
import { DesignError } from '../../shared/design/refusal';
import { openingArea } from '../../shared/engine/openingArea';
import type { Point2 } from '../plane/loop';
import { movePoint2, type Rigid, rigidFit } from '../plane/rigid';
import { DEGREES } from '../tolerance';
import type { FramedFlange } from './flangeFrame';
import type { Cut } from './sortLoops';

export type Alignment = {
  readonly rigid: Rigid;
  /** For each port, in the flange's order: its opening among the cuts, and how far the two middles lie apart, mm. */
  readonly matches: readonly { readonly cut: number; readonly off: number }[];
  /** Other ways to lay it that fit as well, in words; of these the chosen one is turned least. */
  readonly alike: readonly string[];
};

/** Two openings farther out of the ports' distance than this are not tried for them, mm. */
const WRONG_DISTANCE = 20;
/** A port's opening and the drawing's differ at most this much in area. */
const MOST_LARGER = 3;
/** What a fastener without a hole near it counts at most, mm. */
const NO_HOLE = 6;
/** Ways that fit within this of the best one, mm root mean square, fit as well. */
const ALIKE = 0.3;
/** Openings are sought among this many largest cuts. */
const MOST_CUTS = 96;

/**
 * @param mirrored whether the drawing is seen from the other side; absent: whichever fits, as it is where both do
 * @param turned whether it is to be turned most, and not least, of the ways that fit as well
 */
export function align(flange: FramedFlange, cuts: readonly Cut[], mirrored?: boolean, turned = false): Alignment {
  const ports = flange.ports.map(({ port, at }) => ({ at, area: openingArea(port.opening) }));
  const openings = cuts.slice(0, Math.max(MOST_CUTS, ports.length));
  if (openings.length < ports.length) refuse(flange, `${openings.length} openings in it for ${ports.length} ports`);
  const ways = (mirrored === undefined ? [false, true] : [mirrored]).flatMap((side) =>
    starts(flange, openings, side).flatMap((start) => settle(flange, openings, start) ?? []),
  );
  if (ways.length === 0) refuse(flange, whyNone(flange, openings));
  const nearest = Math.min(...ways.map((w) => w.miss));
  const good = distinct(ways.filter((w) => w.miss <= Math.hypot(nearest, ALIKE)));
  const least = good.reduce((a, b) => (effort(b) < effort(a) ? b : a));
  const alike = good.filter((w) => w.rigid.mirrored === least.rigid.mirrored);
  const chosen = turned ? alike.reduce((a, b) => (effort(b) > effort(a) ? b : a)) : least;
  return {
    rigid: chosen.rigid,
    matches: chosen.matches,
    alike: good.filter((w) => w !== chosen).map((w) => wayWords(w.rigid, chosen.rigid)),
  };
}

type Way = Pick<Alignment, 'rigid' | 'matches'> & {
  /** Root mean square, mm, of ports, and of fasteners as far as they have holes near. */
  readonly miss: number;
};

/** First guesses: two ports on two openings, or one port on one and a fastener on a hole. */
function starts({ ports, fasteners }: FramedFlange, openings: readonly Cut[], mirrored: boolean): Rigid[] {
  const [first] = ports;
  const far = farthest(first!.at, ports.length > 1 ? ports.slice(1).map(({ at }) => at) : fasteners);
  if (!far) return openings.map((o) => rigidFit([o.centre], [first!.at], mirrored));
  const apart = Math.hypot(far[0] - first!.at[0], far[1] - first!.at[1]);
  return openings.flatMap((a) =>
    openings.flatMap((b) => {
      const distance = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]);
      if (a === b || Math.abs(distance - apart) > WRONG_DISTANCE) return [];
      return [rigidFit([a.centre, b.centre], [first!.at, far], mirrored)];
    }),
  );
}

const farthest = (from: Point2, points: readonly Point2[]): Point2 | undefined =>
  [...points].sort((a, b) => gap(b, from) - gap(a, from))[0];

const gap = (a: Point2, b: Point2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Each port its nearest free opening, then the fit of all of them; twice. Null where some port gets none of about its size. */
function settle(flange: FramedFlange, openings: readonly Cut[], start: Rigid): Way | null {
  let rigid = start;
  for (let turn = 0; turn < 2; turn++) {
    const own = assign(flange, openings, rigid);
    if (!own) return null;
    const centres = own.map((k) => openings[k]!.centre);
    const goals = flange.ports.map(({ at }) => at);
    if (goals.length > 1) rigid = rigidFit(centres, goals, rigid.mirrored);
    else rigid = onPort(rigid, centres[0]!, goals[0]!);
  }
  const own = assign(flange, openings, rigid);
  if (!own) return null;
  const matches = flange.ports.map(({ at }, k) => ({
    cut: own[k]!,
    off: gap(movePoint2(openings[own[k]!]!.centre, rigid), at),
  }));
  const holes = openings.flatMap((o, k) => (o.circle && !own.includes(k) ? [movePoint2(o.circle.centre, rigid)] : []));
  const missed = flange.fasteners.map((f) => Math.min(NO_HOLE, ...holes.map((h) => gap(h, f))));
  const squares = [...matches.map(({ off }) => off), ...missed].reduce((sum, d) => sum + d * d, 0);
  return { rigid, matches, miss: Math.sqrt(squares / (matches.length + missed.length)) };
}

/** A lone port keeps the turn that it began with. */
function onPort(rigid: Rigid, centre: Point2, goal: Point2): Rigid {
  const [x, y] = movePoint2(centre, rigid);
  return { ...rigid, shift: [rigid.shift[0] + goal[0] - x, rigid.shift[1] + goal[1] - y] };
}

function assign({ ports }: FramedFlange, openings: readonly Cut[], rigid: Rigid): number[] | null {
  const at = openings.map(({ centre }) => movePoint2(centre, rigid));
  const own: number[] = [];
  for (const { port, at: goal } of ports) {
    const wanted = openingArea(port.opening);
    let [best, nearest] = [-1, WRONG_DISTANCE];
    openings.forEach(({ area }, k) => {
      if (own.includes(k) || area > MOST_LARGER * wanted || wanted > MOST_LARGER * area) return;
      const distance = gap(at[k]!, goal);
      if (distance < nearest) [best, nearest] = [k, distance];
    });
    if (best < 0) return null;
    own.push(best);
  }
  return own;
}

/** Ways that put all in one place are one. */
function distinct(ways: readonly Way[]): Way[] {
  const kept: Way[] = [];
  for (const way of [...ways].sort((a, b) => a.miss - b.miss))
    if (!kept.some((k) => sameWay(k.rigid, way.rigid))) kept.push(way);
  return kept;
}

const sameWay = (a: Rigid, b: Rigid): boolean =>
  a.mirrored === b.mirrored && Math.cos(a.turn - b.turn) > 0.999 && gap(a.shift, b.shift) < 5;

/** Not turned over rather than turned over; turned little rather than much. */
const effort = ({ rigid: { mirrored, turn } }: Way): number =>
  (mirrored ? 10 : 0) + Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)));

function wayWords(other: Rigid, chosen: Rigid): string {
  const by = Math.round(
    Math.abs(Math.atan2(Math.sin(other.turn - chosen.turn), Math.cos(other.turn - chosen.turn))) * DEGREES,
  );
  const turned = by < 3 ? '' : `turned ${by}°`;
  if (other.mirrored === chosen.mirrored) return turned || 'a little shifted';
  return turned ? `turned over and ${turned}` : 'turned over';
}

function whyNone({ ports }: FramedFlange, openings: readonly Cut[]): string {
  const spread = spreadOf(ports.map(({ at }) => at));
  const drawn = spreadOf(openings.slice(0, ports.length).map(({ centre }) => centre));
  const words = 'no openings at the ports’ distances and of about their size';
  if (!(spread > 0 && drawn > 0)) return words;
  const times = Math.round((100 * drawn) / spread) / 100;
  return `${words}: its openings lie ${times} times as far apart as the ports`;
}

function spreadOf(points: readonly Point2[]): number {
  return Math.max(0, ...points.flatMap((a) => points.map((b) => gap(a, b))));
}

function refuse({ flange }: FramedFlange, found: string): never {
  throw new DesignError([
    {
      path: `flanges/${flange.id}/outline`,
      found,
      allowed: 'a drawing of this flange, or where it lies by an offset: check its unit or scale, and the ports',
    },
  ]);
}
