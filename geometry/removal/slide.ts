/**
 * The first thing a piece must do: off its studs, or out of its slip joints, straight. Where to, how far, and whether anything is
 * in the way; with studs only along them, with bolts out any way that lifts off every face. mm, unit vectors.
 */
import type { Flange } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { isStud, studBeyond } from '../flange/stud';
import type { Header } from '../header/resolve';
import { DEGREES, RADIANS } from '../tolerance';
import { add, angleBetween, dot, norm, scale, unit } from '../vector';
import { type Body, bodyOf } from './body';
import { askedAt, type Counter, moved } from './motion';
import { type Link, type Members, sameWay } from './pieces';
import { AT_REST, movedBy } from './pose';
import type { RemovalPose } from './report';
import type { Standing } from './space';

/** Kept beside everything while it is moved by hand, mm: common practice. */
export const ROOM = 1;
/** Beyond a stud's tip, or a slip joint's end, mm. */
const PAST = 1;
/** Studs let a flange off along themselves within this; bolted faces are left at this angle at most. */
const STUDS_AGREE = 2 * RADIANS;
const FACES_LEFT = 60 * RADIANS;
/** Two faces bolted to each other are apart at once, mm. */
const PARTED = 5;
/** Not pushed into a joint's other half: cosines down to this are rounding. */
const LEVEL = -0.01;

export type Slide =
  | { readonly ok: true; readonly axis: Vec3 | null; readonly far: number; readonly pose: RemovalPose }
  | {
      readonly ok: false;
      readonly axis: Vec3 | null;
      readonly after: number;
      /** As far as it would have to go, mm. */
      readonly far: number;
      readonly by: readonly string[];
      readonly at: Vec3;
      /** Why it cannot even begin, in words; null where something is met. */
      readonly why: string | null;
    };

type Way =
  | { readonly axis: Vec3 | null; readonly far: number }
  | { readonly why: string; readonly by: readonly string[] };

/** @param links of this piece to pieces that are still in place, as seen from it: `away` is the way out of the joint */
export function slideOff(
  header: Header,
  members: Members,
  links: readonly Held[],
  standing: readonly Standing[],
  counter: Counter,
): Slide {
  const whole = bodyOf(header, members)!;
  const way = wayOff(header, members, links);
  if ('why' in way) return { ok: false, axis: null, after: 0, far: 0, by: way.by, at: whole.middle, why: way.why };
  const { axis, far } = way;
  if (!axis) return { ok: true, axis: null, far: 0, pose: AT_REST };
  const body: Body = bodyOf(header, members, axis)!;
  const to = movedBy(AT_REST, axis, far);
  const asked = askedAt(body, AT_REST, standing, ROOM);
  const first = moved(body, AT_REST, to, asked, counter, true);
  if (first.share >= 1) return { ok: true, axis, far, pose: to };
  // Where it comes to touch tells more than where the room for a hand ends.
  const touching = asked.map((a) => ({ ...a, room: Math.min(a.room, 0) }));
  const touch = moved(body, AT_REST, to, touching, counter, true);
  const stop = touch.share < 1 ? touch : first;
  return { ok: false, axis, after: stop.share * far, far, by: stop.by, at: stop.at, why: null };
}

export type Held = { readonly partner: string; readonly away: Vec3; readonly overlap: number };

/** How a piece is held by those still in place. @param nameOf a piece, for words */
export const heldBy = (
  links: readonly Link[],
  piece: number,
  isThere: (piece: number) => boolean,
  nameOf: (piece: number) => string,
): Held[] =>
  links.flatMap(({ axis, upstream, downstream, overlap }): Held[] => {
    if (upstream === piece && isThere(downstream))
      return [{ partner: nameOf(downstream), away: scale(axis, -1), overlap }];
    if (downstream === piece && isThere(upstream)) return [{ partner: nameOf(upstream), away: axis, overlap }];
    return [];
  });

function wayOff(header: Header, members: Members, links: readonly Held[]): Way {
  const seats = seatsOf(header, members);
  const slips = links.filter((l) => l.overlap > 0);
  const faces = links.filter((l) => l.overlap === 0);
  const directions =
    seats.length > 0 ? seats.map((s) => s.direction) : (slips.length > 0 ? slips : faces).map((l) => l.away);
  if (directions.length === 0) return { axis: null, far: 0 };
  const sum = directions.reduce(add);
  const axis = unit(sum);
  const off = norm(sum) > 0 ? seats.map((s) => angleBetween(s.direction, axis)) : [Math.PI / 2];
  const worst = Math.max(0, ...off);
  const studs = seats.some((s) => s.isStud);
  if (seats.length > 0 && worst > (studs ? STUDS_AGREE : FACES_LEFT)) {
    const apart = Math.max(...seats.flatMap((a) => seats.map((b) => angleBetween(a.direction, b.direction))));
    const names = [...new Set(seats.map((s) => s.flange))];
    return {
      by: names,
      why: `its flanges ${names.join(' and ')} face ${Math.round(apart * DEGREES)}° apart, so that no one way leads off the ${studs ? 'studs' : 'faces'} of all`,
    };
  }
  const stuck = slips.find((l) => !sameWay(l.away, axis));
  if (stuck) {
    const angle = Math.round(angleBetween(stuck.away, axis) * DEGREES);
    const among = seats.length > 0 ? 'its studs' : 'its other joints';
    return { by: [stuck.partner], why: `its slip joint to ${stuck.partner} lies ${angle}° askew to ${among}` };
  }
  const pushed = faces.find((l) => dot(l.away, axis) < LEVEL);
  if (pushed) return { by: [pushed.partner], why: `it would be pushed into ${pushed.partner}, which it is flanged to` };
  const overlaps = slips.map((l) => l.overlap + PAST);
  const far = Math.max(...seats.map((s) => s.far), ...overlaps, seats.length + slips.length > 0 ? 0 : PARTED);
  return { axis, far };
}

type Seat = { readonly flange: string; readonly direction: Vec3; readonly far: number; readonly isStud: boolean };

/** One for each port; a port without a flange is taken as a plate of usual thickness on studs. */
function seatsOf(header: Header, members: Members): Seat[] {
  const flanges = header.design.flanges ?? [];
  return header.runners.flatMap(({ runner: { id, from } }): Seat[] => {
    if (!('port' in from) || !members.runners.includes(id)) return [];
    const flange = flanges.find((f) => f.ports.includes(from.port));
    const { direction } = header.ports.get(from.port)!.pose;
    if (!flange) return [{ flange: `at ${from.port}`, direction, far: UNKNOWN, isStud: true }];
    return [{ flange: flange.id, direction, ...liftOff(flange) }];
  });
}
/** To lift a flange that is not told of, mm: a plate of 10 with its gasket and the usual studs of M8. Common practice. */
const UNKNOWN = 22;

/** How far a flange must come: past the tip of its longest stud, or with bolts out by its own thickness. */
function liftOff(flange: Flange): { far: number; isStud: boolean } {
  const { thickness, gasket = 0, fasteners = [] } = flange;
  const below = thickness + gasket;
  const studs = fasteners.filter(isStud);
  if (fasteners.length > 0 && studs.length === 0) return { far: below, isStud: false };
  const proud = studs.map((stud) => below + studBeyond(flange, stud));
  return { far: (proud.length > 0 ? Math.max(...proud) : below + USUAL_STUD) + PAST, isStud: true };
}
/** What a stud stands beyond the plate where none is told of, mm: M8 and its nut. Common practice. */
const USUAL_STUD = 9;
