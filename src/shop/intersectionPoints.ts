/** `intersection-points.csv`: start, every point where tangents meet, end, counted from 1; design frame. Ends have radius 0. */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import type { Part } from './part';

export const INTERSECTION_POINTS = 'intersection-points.csv';

export const intersectionPoints = (parts: readonly Part[]): string =>
  writeCsv(
    ['runner', 'point', 'x', 'y', 'z', 'radius'],
    parts.flatMap(({ id, line }) =>
      line.points.map(([x, y, z], i): Cell[] => [
        id,
        String(i + 1),
        decimal(x),
        decimal(y),
        decimal(z),
        decimal(line.radii[i - 1] ?? 0),
      ]),
    ),
  );
