/** What of one loop lies within another, or outside it: plates parted from each other, a hole's bite out of an edge. mm. */
import { LENGTH_TOLERANCE } from '../tolerance';
import { isInLoop } from './inside';
import { type Edge, edges, type Loop, loopArea, type Point2, reversedLoop } from './loop';
import { edgeLength, meetings, pointOnEdge } from './meet';

/** The greatest piece; null where nothing is left. Both run counter-clockwise and cross properly, not along each other. */
export function cutLoop(loop: Loop, by: Loop, keep: 'inside' | 'outside'): Loop | null {
  const [own, knife] = [edges(loop), edges(by)];
  const wanted = keep === 'inside';
  const along = partsOf(own, knife).filter((e) => isInLoop(pointOnEdge(e, 0.5), knife) === wanted);
  const blade = edges(wanted ? by : reversedLoop(by));
  const across = partsOf(blade, own).filter((e) => isInLoop(pointOnEdge(e, 0.5), own));
  const loops = chained([...along, ...across]).filter((l) => loopArea(l) > 0);
  return loops.length === 0 ? null : loops.reduce((a, b) => (loopArea(b) > loopArea(a) ? b : a));
}

/** Cut wherever they meet the others. */
function partsOf(all: readonly Edge[], others: readonly Edge[]): Edge[] {
  return all.flatMap((edge) => {
    const met = others.flatMap((other) => meetings(edge, other).map(({ s }) => s));
    const slack = LENGTH_TOLERANCE / edgeLength(edge);
    const shares = [0, ...met.filter((s) => s > slack && s < 1 - slack).sort((a, b) => a - b), 1];
    return shares.slice(1).flatMap((end, k): Edge[] => {
      const start = shares[k]!;
      if (end - start < slack) return [];
      const arc = edge.arc && {
        ...edge.arc,
        start: edge.arc.start + start * edge.arc.turn,
        turn: (end - start) * edge.arc.turn,
      };
      const [from, to] = [
        start === 0 ? edge.from : pointOnEdge(edge, start),
        end === 1 ? edge.to : pointOnEdge(edge, end),
      ];
      return [{ from, to, arc }];
    });
  });
}

function chained(parts: readonly Edge[]): Loop[] {
  const left = new Set(parts);
  const loops: Loop[] = [];
  for (const first of parts) {
    if (!left.delete(first)) continue;
    const round = [first];
    for (;;) {
      const end = round.at(-1)!.to;
      if (near(end, first.from)) break;
      const next = [...left].find((e) => near(e.from, end));
      if (!next) break;
      left.delete(next);
      round.push(next);
    }
    if (near(round.at(-1)!.to, first.from))
      loops.push(round.map(({ from, arc }) => [from[0], from[1], arc ? Math.tan(arc.turn / 4) : 0]));
  }
  return loops;
}

const near = (a: Point2, b: Point2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 10 * LENGTH_TOLERANCE;
