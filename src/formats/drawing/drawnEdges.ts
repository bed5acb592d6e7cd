/** The edges of a curve that a pen has to go along: not the one that closing the path draws by itself. */
import { type Edge, edges } from '../../../geometry';
import type { Curve } from './drawing';

export function drawnEdges({ vertices, closed }: Pick<Curve, 'vertices' | 'closed'>): Edge[] {
  const all = edges(vertices);
  return closed && all.at(-1)!.arc ? all : all.slice(0, -1);
}
