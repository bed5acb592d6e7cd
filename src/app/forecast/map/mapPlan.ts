/** Where the sizes of the map lie: lengths across, bores upward, true to scale; each size has the room half way to its neighbours. */
import type { MapArrangement, MapCell, MapSize, RuleRange } from './types';

export type Axis = {
  readonly values: readonly number[];
  /** Between each two values half way, and as far beyond the outermost ones. */
  readonly edges: readonly number[];
};

const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
export const sameSize = (a: MapSize, b: MapSize): boolean => same(a.length, b.length) && same(a.bore, b.bore);

/** @param single half the room that one value alone has */
export function axisOf(all: readonly number[], single: number): Axis {
  const values = [...all].sort((a, b) => a - b).filter((value, k, list) => k === 0 || !same(value, list[k - 1]!));
  if (values.length === 0) return { values, edges: [] };
  const between = values.slice(1).map((value, k) => (value + values[k]!) / 2);
  const [first, last] = [values[0]!, values.at(-1)!];
  const low = between.length > 0 ? between[0]! - first : single;
  const high = between.length > 0 ? last - between.at(-1)! : single;
  return { values, edges: [first - low, ...between, last + high] };
}

export type Box = { readonly left: number; readonly top: number; readonly width: number; readonly height: number };

export type MapPlan = {
  readonly across: Axis;
  readonly up: Axis;
  readonly toX: (length: number) => number;
  readonly toY: (bore: number) => number;
  readonly boxOf: (size: MapSize) => Box | null;
};

/** @param room px of the plot itself */
export function planMap(cells: readonly MapCell[], room: Box): MapPlan {
  const across = axisOf(
    cells.map(({ length }) => length),
    0.05,
  );
  const up = axisOf(
    cells.map(({ bore }) => bore),
    0.002,
  );
  const scale = ({ edges }: Axis, at: number, size: number): number =>
    ((at - edges[0]!) / (edges.at(-1)! - edges[0]!)) * size;
  const toX = (length: number) => room.left + scale(across, length, room.width);
  const toY = (bore: number) => room.top + room.height - scale(up, bore, room.height);
  const boxOf = ({ length, bore }: MapSize): Box | null => {
    const [i, j] = [
      across.values.findIndex((value) => same(value, length)),
      up.values.findIndex((value) => same(value, bore)),
    ];
    if (i < 0 || j < 0) return null;
    const [left, top] = [toX(across.edges[i]!), toY(up.edges[j + 1]!)];
    return { left, top, width: toX(across.edges[i + 1]!) - left, height: toY(up.edges[j]!) - top };
  };
  return { across, up, toX, toY, boxOf };
}

/** What of a rule's range lies within the axis, and whether its middle does. Null: none of it. */
export function seenOf(range: RuleRange, { edges }: Axis): { low: number; high: number; middle: boolean } | null {
  const [from, to] = [edges[0]!, edges.at(-1)!];
  const [low, high] = [Math.max(from, range.low), Math.min(to, range.high)];
  if (low > high) return null;
  return { low, high, middle: range.middle >= from && range.middle <= to };
}

export const followedOf = ({ cells }: MapArrangement): readonly (MapCell & { readonly torque: number })[] =>
  cells.filter((cell): cell is MapCell & { torque: number } => cell.torque !== null);

/** The one with the most, or null where none was followed yet. */
export const bestOf = (arrangement: MapArrangement) =>
  followedOf(arrangement).reduce<(MapCell & { readonly torque: number }) | null>(
    (best, cell) => (best && best.torque >= cell.torque ? best : cell),
    null,
  );

/** One decimal where less than 20 N m lie between all of them. */
export function decimalsOf(cells: readonly { readonly torque: number }[]): number {
  const all = cells.map(({ torque }) => torque);
  return Math.max(...all) - Math.min(...all) < 20 ? 1 : 0;
}

/** To the next size that way, over gaps; null where there is none. */
export function stepFrom(cells: readonly MapCell[], from: MapSize, key: string): MapSize | null {
  const [dx, dy] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[key] ?? [0, 0];
  const ahead = cells.filter(({ length, bore }) =>
    dx !== 0
      ? same(bore, from.bore) && dx * (length - from.length) > 1e-6
      : dy !== 0 && same(length, from.length) && dy * (bore - from.bore) > 1e-6,
  );
  const far = (cell: MapSize) => Math.abs(cell.length - from.length) + Math.abs(cell.bore - from.bore);
  return ahead.reduce<MapSize | null>((best, cell) => (best && far(best) <= far(cell) ? best : cell), null);
}

/** Sizes that were followed, or tried in vain, and all there are. */
export const triedOf = ({ cells }: MapArrangement): { readonly tried: number; readonly all: number } => ({
  tried: cells.filter(({ torque, failed }) => torque !== null || failed !== undefined).length,
  all: cells.length,
});

/** Of the torque: what coarse cells may put wrong while nothing was checked on fine ones. Our own, a careful guess. */
const LIKELY_ERROR = 0.01;

/** How dark a size is, 0 to 1. Sizes that the error cannot tell apart differ by no more than their share of it. @param error N m; null: not known */
export function shareOf(
  torque: number,
  followed: readonly { readonly torque: number }[],
  error: number | null,
): number {
  const all = followed.map((cell) => cell.torque);
  const most = Math.max(...all);
  const span = Math.max(most - Math.min(...all), error ?? 0, LIKELY_ERROR * Math.abs(most));
  return span > 0 ? 1 - (most - torque) / span : 1;
}

/** Ways in which the best size has no neighbour that was tried, so that a better one may lie there. */
export function edgeWays(best: MapSize, cells: readonly MapCell[]): readonly string[] {
  const at = (values: readonly number[], value: number, under: string, over: string): string[] => {
    const [least, most] = [Math.min(...values), Math.max(...values)];
    if (same(least, most)) return [];
    return same(value, least) ? [under] : same(value, most) ? [over] : [];
  };
  return [
    ...at(
      cells.map(({ length }) => length),
      best.length,
      'shorter',
      'longer',
    ),
    ...at(
      cells.map(({ bore }) => bore),
      best.bore,
      'narrower',
      'wider',
    ),
  ];
}

/** Places moved as little as it takes to lie `gap` apart, in the order they were given. px */
export function apart(places: readonly number[], gap: number, from: number, to: number): readonly number[] {
  const order = [...places.keys()].sort((a, b) => places[a]! - places[b]! || a - b);
  const out = [...places];
  let least = from;
  for (const k of order) {
    out[k] = Math.max(least, places[k]!);
    least = out[k]! + gap;
  }
  let most = to;
  for (const k of order.toReversed()) {
    out[k] = Math.min(most, out[k]!);
    most = out[k]! - gap;
  }
  return out;
}
