/** Whether a transition leaves its tube enough straight to be clamped and welded by. mm. */
import type { PartRemark } from '../parts/part';
import { STRAIGHT_TOLERANCE } from '../tolerance';
import { LEAST_TUBE_START, leastLength } from './limits';
import type { PortFlow } from './portFlow';

/** @param flow of a port whose transition can be made */
export function tubeStartWarnings(flow: PortFlow, part: string): PartRemark[] {
  const { port, transition, runner, words } = flow;
  const line = runner.centerline;
  const first = line?.straights[0] ?? -1;
  if (!transition || !line || first < 0) return [];
  const { say } = words;
  const left = Math.max(0, first - transition.length);
  if (left >= LEAST_TUBE_START - STRAIGHT_TOLERANCE) return [];
  const shorter = words.down(first - LEAST_TUBE_START);
  const ask = `sk for a first straight of ${say(words.up(transition.length + LEAST_TUBE_START))} and lay the runner again`;
  const remedy =
    shorter >= leastLength(flow) && shorter > 0 ? `Make it ${say(shorter)} or shorter, or a${ask}` : `A${ask}`;
  const before = line.turns.length > 0 ? ' before its first bend' : '';
  return [
    {
      part,
      where: `ports/${port}/transition/length`,
      message: `Port ${port}: its transition takes ${say(transition.length)} of the ${say(first)} that runner ${runner.runner.id} goes straight, so the tube has ${say(left)} of straight left${before}; under ${say(LEAST_TUBE_START)} there is no room to clamp and weld it (common practice). ${remedy}.`,
    },
  ];
}
