/**
 * Whether a plate can be cut and used: its outline, what lies in it and how much metal is between. What refuses could not be cut
 * or bolted on at all; the rest is made and said. mm, on the plate.
 */
import type { Flange } from '../../shared/design/types';
import { type Say, sayIn } from '../check/words';
import type { Header } from '../header/resolve';
import { isInLoop, selfCrossing } from '../plane/inside';
import { circleLoop, type Edge, edges, loopArea } from '../plane/loop';
import { leastGap } from '../plane/meet';
import { LENGTH_TOLERANCE } from '../tolerance';
import { checkFasteners } from './checkFasteners';
import { checkSteps } from './checkSteps';
import { checkStrays } from './checkStrays';
import { checkWebs } from './checkWebs';
import type { Draft } from './draftPlates';
import type { Finding } from './plan';
import { borderOf } from './practice';
import { at, upper } from './words';

/** A closed curve in the plate, and how it is called. */
export type Cutout = { readonly name: string; readonly where: string; readonly edges: readonly Edge[] };

export function checkPlate(header: Header, flange: Flange, draft: Draft): Finding[] {
  const say = sayIn(header.design.display);
  const broken = checkOutline(flange, draft, say);
  if (broken.length > 0) return broken;
  const cutouts = cutoutsOf(flange, draft);
  return [
    ...checkBorders(flange, draft, cutouts, say),
    ...checkBetween(flange, cutouts, say),
    ...checkSteps(flange, draft, say),
    ...checkFasteners(flange, draft, say),
    ...checkStrays(flange, draft, say),
    ...checkWebs(flange, draft, say),
  ];
}

function checkOutline(flange: Flange, { outline, ports }: Draft, say: Say): Finding[] {
  const where = `flanges/${flange.id}/${flange.outline ? 'outline' : 'plates'}`;
  const refuse = (message: string): Finding[] => [{ where, message, refuses: true }];
  if (outline.length < 2)
    return refuse(
      `Nothing of the plate of port ${ports[0]} is left between its neighbours: space the ports farther apart, or make one plate of it.`,
    );
  // Before all else: what encloses nothing also lies on itself, and has no way round.
  if (outline.length === 2 && Math.abs(loopArea(outline)) < NO_AREA)
    return refuse(
      'Its outline of two corners encloses no area: give at least three corners, or its edges a bulge (two of 1 make a circle).',
    );
  const crossing = selfCrossing(outline);
  if (crossing)
    return refuse(
      `Its outline crosses or touches itself at ${at(crossing, say)}, so that no plate can be cut by it: move the corners near there apart.`,
    );
  if (loopArea(outline) <= 0)
    return refuse(
      'Its outline runs clockwise: list its corners the other way round, with the bulge of each edge of the other sign.',
    );
  return [];
}

function cutoutsOf(flange: Flange, { openings, holes }: Draft): Cutout[] {
  return [
    ...openings.map(({ port, loop }) => ({
      name: `the opening of port ${port}`,
      where: `ports/${port}/opening`,
      edges: edges(loop),
    })),
    ...holes.map(({ fastener, centre, diameter }) => ({
      name: `the hole of fastener ${fastener + 1}`,
      where: `flanges/${flange.id}/fasteners/${fastener}`,
      edges: edges(circleLoop(centre, diameter / 2)),
    })),
  ];
}

/** Every opening and hole lies within the outline, with its border. */
function checkBorders(flange: Flange, { outline, bites }: Draft, cutouts: readonly Cutout[], say: Say): Finding[] {
  const edge = edges(outline);
  const border = borderOf(flange);
  const remedy =
    flange.plates === 'separate' ? 'make one plate for all ports, or ask for a smaller border' : 'draw the outline farther out there, or ask for a smaller border'; // biome-ignore format: one line
  return cutouts.flatMap((cutout): Finding[] => {
    const { gap, at: place } = leastGap(cutout.edges, edge);
    const cuts = gap < LENGTH_TOLERANCE || !isInLoop(cutout.edges[0]!.from, edge);
    if (cuts)
      return [
        {
          where: cutout.where,
          message: `${upper(cutout.name)} cuts the plate's edge at ${at(place, say)}: move it inward, or draw the outline round it.`,
          refuses: true,
        },
      ];
    if (gap > border - SAME || (bites.length > 0 && gap > border / 2)) return [];
    return [
      {
        where: cutout.where,
        message: `${say(gap)} of metal is left between ${cutout.name} and the plate's edge at ${at(place, say)}; its border is ${say(border)}${byPractice(flange)}: ${remedy}.`,
        refuses: false,
        like: {
          kind: 'border',
          ...ofBorder(flange),
          place: `${cutout.name} (${say(gap)})`,
          together: (places) =>
            `Less metal is left to the plate's edge than its border, ${say(border)}${byPractice(flange)}: ${places}: ${remedy}.`,
        },
      },
    ];
  });
}

const byPractice = ({ border }: Flange): string => (border === undefined ? ' by common practice' : '');

const ofBorder = ({ id, border }: Flange) => (border === undefined ? {} : { where: `flanges/${id}/border` });

/** Between themselves half a border will do, unless one is asked for. */
function checkBetween(flange: Flange, cutouts: readonly Cutout[], say: Say): Finding[] {
  const least = flange.border ?? borderOf(flange) / 2;
  return cutouts.flatMap((a, i) =>
    cutouts.slice(i + 1).flatMap((b): Finding[] => {
      if (farApart(a, b, least)) return [];
      const { gap, at: place } = leastGap(a.edges, b.edges);
      const overlap =
        gap < LENGTH_TOLERANCE || isInLoop(a.edges[0]!.from, b.edges) || isInLoop(b.edges[0]!.from, a.edges);
      if (!overlap && gap > least - SAME) return [];
      const message = overlap
        ? `${upper(b.name)} runs into ${a.name} at ${at(place, say)}: move them apart.`
        : `${say(gap)} of metal is left between ${a.name} and ${b.name} at ${at(place, say)}; at least ${say(least)} is wanted${byPractice(flange)}: move them apart, or make them smaller.`;
      const like = {
        kind: 'between',
        ...ofBorder(flange),
        place: `${a.name} and ${b.name} (${say(gap)})`,
        together: (places: string) =>
          `Less metal is left than the ${say(least)} wanted${byPractice(flange)} between ${places}: move them apart, make them smaller, or ask for a smaller border.`,
      };
      return [{ where: b.where, message, refuses: overlap, ...(overlap ? {} : { like }) }];
    }),
  );
}

/** Quick to tell for the many pairs of a plate with many holes: by the circles round them. */
function farApart(a: Cutout, b: Cutout, least: number): boolean {
  const [p, q] = [roundOf(a), roundOf(b)];
  return Math.hypot(p.x - q.x, p.y - q.y) - p.r - q.r > least;
}

function roundOf({ edges: all }: Cutout): { x: number; y: number; r: number } {
  const x = all.reduce((sum, { from }) => sum + from[0], 0) / all.length;
  const y = all.reduce((sum, { from }) => sum + from[1], 0) / all.length;
  const r = Math.max(
    ...all.map(({ from, arc }) =>
      arc ? Math.hypot(arc.centre[0] - x, arc.centre[1] - y) + arc.radius : Math.hypot(from[0] - x, from[1] - y),
    ),
  );
  return { x, y, r };
}

/** mm², far less than any plate. */
const NO_AREA = 1e-3;

/** A border is held that is less by no more than this. */
const SAME = 1e-4;
