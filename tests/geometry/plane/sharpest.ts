/** How smooth a loop is. */
import { type Edge, edges, type Loop } from '../../../geometry';

/** The greatest turn at a corner, radians: 0 where every edge runs on into the next. */
export function sharpest(loop: Loop): number {
  const all = edges(loop);
  return Math.max(
    ...all.map((edge, k) => {
      const next = all[(k + 1) % all.length]!;
      const [a, b] = [endWay(edge), startWay(next)];
      return Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]));
    }),
  );
}

const wayAt = ({ from, to, arc }: Edge, angle: number): [number, number] => {
  if (!arc) return [to[0] - from[0], to[1] - from[1]];
  const sign = Math.sign(arc.turn);
  return [-sign * Math.sin(angle), sign * Math.cos(angle)];
};
const startWay = (e: Edge) => wayAt(e, e.arc?.start ?? 0);
const endWay = (e: Edge) => wayAt(e, e.arc ? e.arc.start + e.arc.turn : 0);
