/**
 * The closed curves of a drawing told apart: the outline is the one that holds the others; in it lie openings and holes,
 * and what lies in these is no cut of the plate. mm, the drawing's own frame.
 */
import { DesignError } from '../../shared/design/refusal';
import { type Circle, fitCircle } from '../plane/fitCircle';
import { edges, type Loop, loopArea, type Point2, reversedLoop, sampleLoop } from '../plane/loop';
import { isInPolygon, loopCentre } from '../plane/within';

export type Cut = {
  readonly loop: Loop;
  /** Of its area. */
  readonly centre: Point2;
  /** mm². */
  readonly area: number;
  readonly circle: Circle | null;
};

export type SortedLoops = {
  readonly outline: Loop;
  /** Largest first. */
  readonly cuts: readonly Cut[];
  /** How many lay in an opening or hole, and are left out. */
  readonly nested: number;
};

/** Fine enough to tell inside from outside, mm. */
const SAMPLE = 0.02;
/** A curve that strays from a circle by less is one, mm; a drawing program's circles come as many straights. */
const SAME_CIRCLE = 0.02;
const LEAST_CORNERS = 12;
/** What encloses less, mm², is a leftover of drawing. */
const LEAST_AREA = 0.05;

/** @throws DesignError where there is nothing closed, or something lies outside the outline */
export function sortLoops(loops: readonly Loop[]): SortedLoops {
  const drawn = loops
    .map((loop) => ({ loop: loopArea(loop) < 0 ? reversedLoop(loop) : loop, area: Math.abs(loopArea(loop)) }))
    .filter(({ area }) => area > LEAST_AREA)
    .sort((a, b) => b.area - a.area);
  const [first, ...rest] = drawn;
  if (!first)
    throw new DesignError([{ path: 'drawing', found: 'no closed curve', allowed: 'the outline of a flange, closed' }]);
  const rim = sampleLoop(first.loop, SAMPLE);
  const polygons: Point2[][] = [];
  const cuts: Cut[] = [];
  for (const { loop, area } of rest) {
    const centre = loopCentre(loop);
    const start: Point2 = [loop[0]![0], loop[0]![1]];
    if (!isInPolygon(start, rim))
      throw new DesignError([
        {
          path: `drawing at ${place(centre)}`,
          found: 'a closed curve outside the largest one',
          allowed: 'one outline that holds all the others: delete the rest, such as a frame or a second part',
        },
      ]);
    if (polygons.some((polygon) => isInPolygon(start, polygon))) continue;
    polygons.push(sampleLoop(loop, SAMPLE));
    cuts.push({ loop, centre, area, circle: circleOf(loop) });
  }
  return { outline: first.loop, cuts, nested: rest.length - cuts.length };
}

export const place = ([x, y]: Point2): string => `(${Math.round(x * 100) / 100}, ${Math.round(y * 100) / 100})`;

/** The circle that a loop runs round once, or null. */
export function circleOf(loop: Loop): Circle | null {
  const all = edges(loop);
  if (all.some(({ arc }) => !arc) && loop.length < LEAST_CORNERS) return null;
  const points = all.flatMap(({ from, arc }): Point2[] => {
    if (!arc) return [from];
    const quarters = [0, 0.25, 0.5, 0.75].map((t) => arc.start + t * arc.turn);
    return quarters.map((a) => [arc.centre[0] + arc.radius * Math.cos(a), arc.centre[1] + arc.radius * Math.sin(a)]);
  });
  const circle = fitCircle(points);
  if (!circle) return null;
  const { centre, radius } = circle;
  const strays = points.some(([x, y]) => Math.abs(Math.hypot(x - centre[0], y - centre[1]) - radius) > SAME_CIRCLE);
  if (strays) return null;
  // Corners on a circle with a wide straight between two of them are a disc with a flat.
  const widest = Math.max(...all.map(({ from, to, arc }) => (arc ? 0 : Math.hypot(from[0] - to[0], from[1] - to[1]))));
  return widest < 0.7 * radius ? circle : null;
}
