/** What of a collector can be built and should be known first, each with the field that mends it. mm, degrees in words. */
import { deg, sayIn } from '../check/words';
import type { Header } from '../header/resolve';
import { cutHeight, heightLines } from '../solid/cutTube';
import { DEGREES } from '../tolerance';
import type { CollectorPlan } from './plan';
import type { CollectorRemark } from './problems';
import { stubs } from './stubs';

/** Half angles, degrees to the axis. Steeper a cone chokes the flow, and tubes that lean more turn it: common practice. */
const STEEPEST = 25;
const MOST_LEAN = 20;
/** Wider than this the flow leaves the wall: conical diffusers, half angle up to about 7° (a review). */
const WIDEST = 7;

/** @param reach of the cone's foot, at each angle */
export function collectorWarnings(header: Header, plan: CollectorPlan, reach: readonly number[]): CollectorRemark[] {
  const say = sayIn(header.design.display);
  const found: CollectorRemark[] = [];
  const warn = (field: string, message: string) => found.push({ field, message });
  const run = plan.coneEnd - plan.plateEnd - plan.weldGap;
  const slope = (from: number) => Math.atan((from - plan.outletRadius) / run) * DEGREES;
  const steep = slope(Math.max(...reach));
  if (steep > STEEPEST)
    warn(
      'length',
      `Its cone narrows at ${deg(Math.round(steep))} to the axis over ${say(run)}; common practice stays under ${STEEPEST}°. Make the collector longer, lean its tubes more, or choose a wider outlet.`,
    );
  const wide = -slope(Math.min(...reach));
  if (wide > WIDEST)
    warn(
      'outletDiameter',
      `Its cone widens at ${deg(Math.round(wide))} to the axis; past about ${WIDEST}° the flow leaves the wall. Choose a narrower outlet, or a longer collector.`,
    );
  if (plan.outletRadius - plan.wall < plan.boreRadius)
    warn(
      'outletDiameter',
      `Its outlet's bore of ${say(2 * (plan.outletRadius - plan.wall))} is narrower than one inlet's, ${say(2 * plan.boreRadius)}: choose a wider outlet.`,
    );
  if (plan.convergence * DEGREES > MOST_LEAN)
    warn(
      'convergence',
      `Its tubes lean by ${deg(plan.convergence * DEGREES)}; common practice stays within ${MOST_LEAN}°, most often 7° to 15°.`,
    );
  if (plan.weldGap > plan.wall)
    warn(
      'weldGap',
      `A weld gap of ${say(plan.weldGap)} is wider than the wall of ${say(plan.wall)}: common practice stays under the wall.`,
    );
  const pitch = pitchForCuts(plan);
  if (pitch !== null)
    warn(
      'pitch',
      `Where its tubes stand nearest, their cuts reach past the square ends, and nothing of the tube is left there to weld a runner to. Make the pitch at least ${say(Math.ceil(10 * pitch) / 10)}${plan.weldGap > 0 ? ', or the weld gap less' : ''}.`,
    );
  const sizes = [
    ...new Set(header.runners.filter((r) => r.runner.to.merge === plan.id).map((r) => r.tube.outsideDiameter)),
  ].sort((a, b) => a - b);
  if (sizes.length > 1)
    warn(
      'inlets',
      `Tubes of ${sizes.map(say).join(' and ')} enter it; its own are made for the widest. Set a reducer from ${say(sizes[0]!)} to ${say(sizes.at(-1)!)} before it, or use one size.`,
    );
  return found;
}

/**
 * The pitch at which every cut leaves some of the tube; null where it does already. A shared plane is reached so much farther
 * along the tube as the tube stands farther from it, over the sine between them.
 */
function pitchForCuts(plan: CollectorPlan): number | null {
  let most = 0;
  for (const { shape } of stubs(plan)) {
    const radius = shape.outsideDiameter / 2;
    for (const plane of shape.planes.slice(0, -1)) {
      const lines = heightLines([plane]);
      const [x, y, z] = plane.normal;
      const across = Math.hypot(x, y);
      const lowest = cutHeight(lines, [(radius * x) / across, (radius * y) / across]) - shape.start;
      if (lowest < 0) most = Math.max(most, -2 * lowest * z);
    }
  }
  return most > 0 ? plan.merge.pitch + most : null;
}
