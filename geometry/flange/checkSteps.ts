/** A step: it must keep a ledge round its opening for the tube to stand on, and metal round itself. mm. */
import type { Flange } from '../../shared/design/types';
import type { Say } from '../check/words';
import { isInLoop } from '../plane/inside';
import { circleLoop, edges } from '../plane/loop';
import { leastGap } from '../plane/meet';
import { LENGTH_TOLERANCE } from '../tolerance';
import type { Draft } from './draftPlates';
import type { Like } from './gather';
import type { Finding } from './plan';
import { LEAST_LEDGE } from './practice';
import { at } from './words';

export function checkSteps(flange: Flange, { outline, openings, steps, holes }: Draft, say: Say): Finding[] {
  const edge = edges(outline);
  const where = `flanges/${flange.id}/seat`;
  const refuse = (message: string, like?: Like): Finding => ({ where, message, refuses: true, ...(like && { like }) });
  const smaller = flange.stepGap === undefined ? 'or make the seat flush' : `ask for less room round the tubes than ${say(flange.stepGap)} (stepGap), or make the seat flush`; // biome-ignore format: one line
  const found: Finding[] = [];
  for (const [i, { port, loop }] of steps.entries()) {
    const step = edges(loop);
    const opening = edges(openings.find((o) => o.port === port)!.loop);
    const ledge = leastGap(opening, step);
    if (ledge.gap < LENGTH_TOLERANCE || !isInLoop(opening[0]!.from, step))
      found.push(
        refuse(
          `The step of port ${port} does not go round its opening (at ${at(ledge.at, say)}): what slips in would fall through. Give the port a transition, or make the seat flush.`,
        ),
      );
    else if (ledge.gap < LEAST_LEDGE)
      found.push({
        where,
        message: `The ledge in the step of port ${port} is ${say(ledge.gap)} wide at ${at(ledge.at, say)}; a tube wants ${say(LEAST_LEDGE)} to stand on (common practice): give the port a transition, or a wider tube.`,
        refuses: false,
      });
    const out = leastGap(step, edge);
    if (out.gap < LENGTH_TOLERANCE || !isInLoop(step[0]!.from, edge))
      found.push(
        refuse(
          `The step of port ${port} is wider than its land: it cuts the plate's edge at ${at(out.at, say)}. Draw the outline farther out, or make the seat flush.`,
        ),
      );
    for (const { fastener, centre, diameter } of holes) {
      const hole = edges(circleLoop(centre, diameter / 2));
      if (leastGap(step, hole).gap < LENGTH_TOLERANCE || isInLoop(centre, step))
        found.push(
          refuse(
            `The step of port ${port} is wider than its land: it runs into the hole of fastener ${fastener + 1}. Move the fastener out, or make the seat flush.`,
            {
              kind: 'step in a hole',
              place: `port ${port} into fastener ${fastener + 1}`,
              together: (places) =>
                `The steps are wider than their land and run into holes: ${places}. Move the fasteners out, ${smaller}.`,
            },
          ),
        );
    }
    for (const other of steps.slice(i + 1))
      if (leastGap(step, edges(other.loop)).gap < LENGTH_TOLERANCE)
        found.push(
          refuse(
            `The steps of ports ${port} and ${other.port} run into each other: make the seat flush, or the tubes smaller.`,
            {
              kind: 'steps in each other',
              place: `ports ${port} and ${other.port}`,
              together: (places) => `The steps run into each other: ${places}. Make the tubes smaller, ${smaller}.`,
            },
          ),
        );
  }
  return found;
}
