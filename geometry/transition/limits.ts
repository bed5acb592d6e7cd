/**
 * What keeps a port transition from being made, with the remedy: longer than the runner's first straight, shorter than its
 * walls can be formed in, its own wall too thick for its length. mm.
 */
import type { PartRemark } from '../parts/part';
import { RADIANS, STRAIGHT_TOLERANCE } from '../tolerance';
import type { PortFlow } from './portFlow';

/** The steepest a wall is led to the tube without tearing or buckling, degrees from the axis. Common practice. */
export const STEEPEST_WALL = 30;

/** The shortest straight that a tube is clamped and welded by, mm. Common practice. */
export const LEAST_TUBE_START = 3;

const SLOPE = Math.tan(STEEPEST_WALL * RADIANS);

/** The shortest transition from this opening to this bore, mm: how far its bore must move anywhere, at the steepest wall. */
export const leastLength = ({ beyond }: Pick<PortFlow, 'beyond'>): number => Math.max(...beyond.map(Math.abs)) / SLOPE;

export function transitionLimits(flow: PortFlow, part: string): PartRemark[] {
  const { port, transition, runner, words } = flow;
  const { say, up, down } = words;
  if (!transition) return [];
  const { length } = transition;
  const found: PartRemark[] = [];
  const report = (field: string, message: string) =>
    found.push({ part, where: `ports/${port}/transition/${field}`, message: `Port ${port}: ${message}` });

  const least = leastLength(flow);
  // Not routed, or its bends have no room: what its tube cannot be is said there.
  const first = runner.centerline?.straights[0] ?? -1;
  if (first >= 0 && length > first + STRAIGHT_TOLERANCE) {
    const ask = `sk for a first straight of ${say(up(length + LEAST_TUBE_START))} and lay the runner again`;
    const longest = first - LEAST_TUBE_START;
    const remedy = longest > least ? `Make it ${say(down(longest))} or shorter, or a${ask}` : `A${ask}`;
    report(
      'length',
      `its transition is ${say(length)} long and runner ${runner.runner.id} goes straight for ${say(first)} only, so the tube would have to start within the bend. ${remedy}.`,
    );
  }
  if (length < least)
    report(
      'length',
      `its transition is ${say(length)} long, and on that length its wall must move ${say(least * SLOPE)}: steeper than ${STEEPEST_WALL}°, about the most that is formed (common practice). Make it at least ${say(up(least))} long, or choose a tube nearer to the opening's size.`,
    );
  else wallLimits(flow, report);
  return found;
}

/** The outside has its own way to go where the wall is not the tube's. */
function wallLimits(
  { transition, beyond, runner: { tube }, words: { say, up, down } }: PortFlow,
  report: (field: string, message: string) => unknown,
) {
  const { length, wall = tube.wall } = transition!;
  const moves = beyond.map((by) => by + wall - tube.wall);
  const most = Math.max(...moves.map(Math.abs));
  if (most <= length * SLOPE) return;
  const thickest = tube.wall + length * SLOPE - Math.max(...beyond);
  const thinnest = tube.wall - length * SLOPE - Math.min(...beyond);
  const remedy = wall > tube.wall ? `at most ${say(down(thickest))}` : `at least ${say(up(Math.max(thinnest, 0)))}`;
  report(
    'wall',
    `its transition's wall is ${say(wall)} and the tube's ${say(tube.wall)}, so its outside must move ${say(most)} on ${say(length)}: steeper than ${STEEPEST_WALL}°, about the most that is formed (common practice). Make the wall ${remedy}, or the transition at least ${say(up(most / SLOPE))} long.`,
  );
}
