/**
 * What each runner of a header without lines could be, cheapest first: every free inlet of its merge with every shape
 * that reaches it at the length asked. mm.
 */
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { type Header, type ResolvedRunner, resolveHeader } from '../header/resolve';
import type { Option } from './choose';
import { type Bar, barOf, bodyBar, lineOf, obstruction, selfCrowding } from './crowding';
import { nearShapes, shapesOf, shortest } from './shapes';

/** Costs, in mm² as crowding is: a bend counts as much as 4 mm of overlap at one point, a right angle as 5 mm. */
const BEND = 16;
const RADIAN = 16;
/** Reaching out beyond the ports and merges by more than this costs, mm. */
const ROOMY = 110;
/** Points of a line that lie at its start, in the head's shade. */
const IN_SHADE = 3;
/** Beside a merge that may move, shapes are near enough to a length by this part of it; 10 mm off cost 1, 50 mm cost 25. */
const NEARLY_AS_LONG = 0.2;
const OFF_LENGTH = 10;
/** Kept for each inlet: two-bend shapes are few, so that the others get their share. */
const MOST_A_RUNNER = 96;

/** Length that each group would have at the least, drawn with sampled shapes: what lies in the head included. */
export function leastLengths(design: Design): Map<string, number> {
  const header = resolveHeader(design);
  const least = new Map<string, number>();
  for (const r of header.runners) {
    const ends = inletsOf(header, r).map((end) => shortest(r.start, end, r.tooling));
    const lengths = ends.flatMap((s) => (s ? [s.length] : []));
    if (lengths.length === 0) continue;
    const group = r.runner.group!;
    least.set(group, Math.max(least.get(group) ?? 0, r.lengthInHead + Math.min(...lengths)));
  }
  return least;
}

const inletsOf = (header: Header, r: ResolvedRunner) => header.merges.get(r.runner.to.merge)!.inlets;

/** @param lengths of each group, what lies in the head included */
export function optionsOf(design: Design, lengths: ReadonlyMap<string, number>): Option[][] {
  const header = resolveHeader(design);
  const heads = header.surroundings.flatMap((s) => (s.shape === 'capsule' ? [barOf(s)] : []));
  const box = boxOf(header);
  return header.runners.map((r) => {
    const merge = header.merges.get(r.runner.to.merge)!;
    const length = lengths.get(r.runner.group!)! - r.lengthInHead;
    const fromMerge = 'merge' in r.runner.from ? r.runner.from.merge : null;
    const movable = merge.merge.placement !== undefined || fromMerge !== null;
    const bodies = [...header.merges]
      .filter(([id]) => id !== r.runner.to.merge && id !== fromMerge)
      .map(([, m]) => bodyBar(m.body));
    const each = Math.max(8, Math.floor(MOST_A_RUNNER / merge.inlets.length));
    const options = merge.inlets.flatMap((end, i) => {
      const shapes = shapesOf(r.start, end, r.tooling, length);
      if (movable) shapes.push(...nearShapes(r.start, end, r.tooling, length, NEARLY_AS_LONG));
      const all = shapes.map((shape): Option => {
        const line = lineOf(shape, r.tooling.centerlineRadius, r.tubeRadius, r.runner.to.merge, merge.bundle);
        const bends = shape.points.length - 2;
        const blocked =
          selfCrowding(line) +
          total(heads, (bar) => obstruction(line, bar, fromMerge ? 0 : IN_SHADE)) +
          total(bodies, (bar) => obstruction(line, bar));
        const cost =
          BEND * (bends - 2) +
          RADIAN * shape.turned +
          excess(box, line.low, line.high) +
          3 * blocked +
          ((shape.length - length) / OFF_LENGTH) ** 2;
        return { inlet: i + 1, shape, line, cost };
      });
      return all.sort(cheaper).slice(0, each);
    });
    return options.sort(cheaper);
  });
}

const cheaper = (a: Option, b: Option): number => a.cost - b.cost;
const total = (bars: readonly Bar[], of: (bar: Bar) => number): number => bars.reduce((sum, bar) => sum + of(bar), 0);

type Box = { readonly low: Vec3; readonly high: Vec3 };

function boxOf(header: Header): Box {
  const places = [
    ...[...header.ports.values()].map((p) => p.pose.position),
    ...[...header.merges.values()].flatMap((m) => [m.merge.position, m.outlet.position]),
  ];
  const bound = (pick: (...xs: number[]) => number, by: number): Vec3 => [
    pick(...places.map((p) => p[0])) + by,
    pick(...places.map((p) => p[1])) + by,
    pick(...places.map((p) => p[2])) + by,
  ];
  return { low: bound(Math.min, -ROOMY), high: bound(Math.max, ROOMY) };
}

/** Reaching 10 mm too far costs 1, 100 mm cost 100. */
function excess(box: Box, low: Vec3, high: Vec3): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const over = Math.max(0, box.low[k]! - low[k]!, high[k]! - box.high[k]!);
    sum += (over / 10) ** 2;
  }
  return sum;
}
