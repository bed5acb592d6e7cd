/** A movable merge stays in the box and the tilt that the document grants it. mm, degrees. */
import type { Header } from '../header/resolve';
import { DEGREES, END_DIRECTION_TOLERANCE_DEG, END_POSITION_TOLERANCE } from '../tolerance';
import { angleBetween } from '../vector';
import type { Problem } from './report';
import { deg, sayIn } from './words';

export function checkPlacement(header: Header): Problem[] {
  const say = sayIn(header.design.display);
  return [...header.merges.values()].flatMap(({ merge }): Problem[] => {
    const { placement, position } = merge;
    if (!placement) return [];
    const problems: Problem[] = [];
    const [p, q] = placement.within;
    const outside = [0, 1, 2].map((k) =>
      Math.max(0, Math.min(p[k]!, q[k]!) - position[k]!, position[k]! - Math.max(p[k]!, q[k]!)),
    );
    const off = Math.hypot(...outside);
    if (off > END_POSITION_TOLERANCE) {
      const message = `Collector ${merge.id} stands ${say(off)} outside the space given to it: move it back.`;
      problems.push({
        rule: 'placement',
        where: `merges/${merge.id}/position`,
        found: off,
        allowed: 0,
        message,
        at: position,
      });
    }
    const tilt = placement.axis ? angleBetween(placement.axis, merge.axis) * DEGREES : 0;
    const allowed = placement.tilt ?? 0;
    if (tilt > allowed + END_DIRECTION_TOLERANCE_DEG) {
      const message = `Collector ${merge.id} is tilted ${deg(tilt)}; ${deg(allowed)} is allowed: turn it back.`;
      problems.push({
        rule: 'placement',
        where: `merges/${merge.id}/axis`,
        found: tilt,
        allowed,
        message,
        at: position,
      });
    }
    return problems;
  });
}
