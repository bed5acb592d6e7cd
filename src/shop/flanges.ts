/**
 * `flange-ID.dxf` (R2000) and `flange-ID-r12.dxf`: what the laser cuts of a flange (OUTLINE, PORTS, HOLES) and what the mill
 * sinks (ETCH: steps, not cut through), seen on the outer face. Separate plates lie side by side as they bolt on. mm.
 */
import {
  circleLoop,
  edges,
  type FlangePlan,
  flangePlan,
  type Header,
  isInLoop,
  leastGap,
  loopBounds,
  movedLoop,
  type PlatePlan,
  type Point2,
  partFrame,
} from '../../geometry';
import type { DxfCurve } from '../formats/dxf/write';
import type { NamedFile } from '../formats/zip/zip';
import type { NotMade } from './part';
import { plateDxf, plateDxfNames } from './plateDxf';

/** Between plates that would lie on each other, mm. */
const ROOM = 5;

/** A flange that cannot be cut, whole or in part, is named with all that is wrong with it. */
export function flangeDrawings(header: Header): { files: NamedFile[]; notMade: NotMade[] } {
  const files: NamedFile[] = [];
  const notMade: NotMade[] = [];
  for (const flange of header.design.flanges ?? []) {
    const plan = flangePlan(header, flange);
    for (const { name, version } of plateDxfNames(`flange-${flange.id}`)) {
      if (files.some((file) => file.name.toLowerCase() === name.toLowerCase())) {
        notMade.push({
          name: `${name}, of flange ${flange.id}`,
          why: 'Another flange has a file of this name: rename it.',
        });
        continue;
      }
      if (plan.plates.length > 0) {
        files.push({ name, bytes: plateDxf(flangeCurves(plan), version) });
      }
      notMade.push(...missing(plan, name));
    }
  }
  return { files, notMade };
}

function missing({ plates, notMade }: FlangePlan, name: string): NotMade[] {
  const parts = [...new Set(notMade.map((r) => r.part))];
  return parts.map((part) => ({
    name: plates.length > 0 ? `${name}, ${part}` : name,
    why: notMade
      .filter((r) => r.part === part)
      .map((r) => `${r.message} (${r.where})`)
      .join(' '),
  }));
}

/** All plates on one sheet, about the first one's port. */
export function flangeCurves({ plates }: FlangePlan): DxfCurve[] {
  const laid: PlatePlan[] = [];
  return plates.flatMap((plate) => {
    const shift = placeFor(plate, plates[0]!, laid);
    const moved = { ...plate, outline: movedLoop(plate.outline, shift) };
    laid.push(moved);
    return [
      { layer: 'OUTLINE', loop: moved.outline },
      ...plate.openings.map(({ loop }) => ({ layer: 'PORTS', loop: movedLoop(loop, shift) })),
      ...plate.holes.map(({ centre, diameter }) => ({
        layer: 'HOLES',
        loop: movedLoop(circleLoop(centre, diameter / 2), shift),
      })),
      ...plate.steps.map(({ loop }) => ({ layer: 'ETCH', loop: movedLoop(loop, shift) })),
    ];
  });
}

/** Where it bolts on beside the first; in line to the right of all, where there it would lie on another (ports that fan out). */
function placeFor(plate: PlatePlan, first: PlatePlan, laid: readonly PlatePlan[]): Point2 {
  const [x, y, , origin] = partFrame(first.pose);
  const off = plate.pose.position.map((c, k) => c - origin[k]!);
  const along = (axis: readonly number[]) => axis.reduce((sum, c, k) => sum + c * off[k]!, 0);
  const there: Point2 = [along(x), along(y)];
  const outline = edges(movedLoop(plate.outline, there));
  const clashes = laid.some((other) => {
    const theirs = edges(other.outline);
    return (
      leastGap(outline, theirs).gap === 0 || isInLoop(outline[0]!.from, theirs) || isInLoop(theirs[0]!.from, outline)
    );
  });
  if (!clashes) return there;
  const right = Math.max(...laid.map((other) => loopBounds(other.outline).max[0]));
  return [right + ROOM - loopBounds(plate.outline).min[0], there[1]];
}
