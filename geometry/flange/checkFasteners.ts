/** Fasteners: whether each has its hole, its nut a place to stand, and the weld its room. mm, on the plate. */
import type { Flange } from '../../shared/design/types';
import { nutRoom, threadDiameter } from '../../shared/stock/hexFasteners';
import { HOLE_CLASSES, holesFor } from '../../shared/stock/holes';
import type { Say } from '../check/words';
import { distanceToHull, hullArcs } from '../plane/discs';
import type { Draft } from './draftPlates';
import type { Finding, PlateHole } from './plan';

export function checkFasteners(flange: Flange, { holes, bites, seats }: Draft, say: Say): Finding[] {
  return [...holes, ...bites].flatMap((hole) => {
    const where = `flanges/${flange.id}/fasteners/${hole.fastener}`;
    return [
      ...checkHole(hole, where, say),
      ...seats.flatMap((seat) => (seat.welded ? checkRoom(hole, seat.welded, where, say) : [])),
    ];
  });
}

type Welded = NonNullable<Draft['seats'][number]['welded']>;

function checkRoom(
  { fastener, centre, diameter, thread }: PlateHole,
  welded: Welded,
  where: string,
  say: Say,
): Finding[] {
  const away = distanceToHull(hullArcs(welded.outer), centre);
  const name = `Fastener ${fastener + 1} (${thread})`;
  if (away < diameter / 2 && fallsThrough(thread, diameter) && away >= clearanceOf(thread) / 2)
    return [
      {
        where: `${where}/hole`,
        message: `The hole of fastener ${fastener + 1}, ${say(diameter)} for ${thread}, reaches under ${welded.what}, ${say(away)} from its middle: drill it ${say(clearanceOf(thread))}.`,
        refuses: true,
      },
    ];
  if (away < diameter / 2)
    return [
      {
        where,
        message: `${name} lies under ${welded.what}: no nut could be put on. Move it ${say(wanted(thread, diameter, welded.leg) - away)} away from the port.`,
        refuses: true,
      },
    ];
  const { nut, washer } = nutRoom(thread, diameter);
  const needs = wanted(thread, diameter, welded.leg);
  if (away >= needs - SAME) return [];
  const what =
    away < washer / 2
      ? 'its washer lies on'
      : away < nut / 2 + welded.leg
        ? 'its nut turns in the weld of'
        : 'its washer lies on the weld of';
  return [
    {
      where,
      message: `${name} is too near: ${what} ${welded.what}. It stands ${say(away)} from it and wants ${say(needs)}, half a washer of ${say(washer)} and ${say(welded.leg)} of weld (common practice): move it ${say(needs - away)} away from the port.`,
      refuses: false,
      like: {
        kind: 'room',
        place: `${fastener + 1} at ${welded.what} by ${say(needs - away)}`,
        together: (places) =>
          `Fasteners are too near for their nuts, their washers or the weld (common practice): ${places}. Move each so much away from the port.`,
      },
    },
  ];
}

/** From a fastener's middle to what is welded on: the nut and the washer clear of the weld, and so is the hole, however large. */
function wanted(thread: string, hole: number, weld: number): number {
  const { nut, washer } = nutRoom(thread, hole);
  return Math.max(nut, washer, hole) / 2 + weld;
}

/** Whether its washer would have nothing to stand on; a thread that names no size is taken from the hole. */
const fallsThrough = (thread: string, hole: number): boolean =>
  threadDiameter(thread) !== null && hole >= nutRoom(thread, hole).washer;

/** The usual hole for a thread. */
const clearanceOf = (thread: string): number => holesFor(thread)?.[1] ?? 1.1 * (threadDiameter(thread) ?? 0);

function checkHole({ fastener, diameter, thread, series }: PlateHole, where: string, say: Say): Finding[] {
  const size = threadDiameter(thread);
  const name = `The hole of fastener ${fastener + 1}`;
  const known = holesFor(thread);
  const table = known
    ? known.map((d, k) => `${HOLE_CLASSES[k]} ${say(d)}`).join(', ')
    : size && `about ${say(1.1 * size)}, a tenth more than the thread`;
  if (size !== null && diameter <= size)
    return [
      {
        where: `${where}/hole`,
        message: `${name} is ${say(diameter)}, and its thread ${thread} does not pass through: drill ${table}${known ? ' (ISO 273)' : ''}.`,
        refuses: false,
      },
    ];
  if (fallsThrough(thread, diameter))
    return [
      {
        where: `${where}/hole`,
        message: `${name} is ${say(diameter)}, and a nut's washer for ${thread} is ${say(nutRoom(thread, diameter).washer)} across: it falls through. Drill ${table}${known ? ' (ISO 273)' : ''}, or name the thread that goes through it.`,
        refuses: false,
      },
    ];
  if (!known || series) return [];
  return [
    {
      where: `${where}/hole`,
      message: `${name}, ${say(diameter)}, is of no ISO 273 series for ${thread}: ${table}. It is cut as designed.`,
      refuses: false,
      like: {
        kind: `no series ${thread}`,
        place: `${fastener + 1} (${say(diameter)})`,
        together: (places) =>
          `The holes of fasteners ${places} are of no ISO 273 series for ${thread}: ${table}. They are cut as designed.`,
      },
    },
  ];
}

const SAME = 1e-4;
