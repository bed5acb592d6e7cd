/** Stretches along a tube, from and to in mm from its start: in order, apart from each other, none empty. */
import type { Runner } from '../../shared/design/types';

export type Span = readonly [from: number, to: number];

/** In order and joined where they meet or come nearer than `apart`. */
export function joined(spans: readonly Span[], apart = 0): Span[] {
  const sorted = spans.filter(([a, b]) => b > a).sort((a, b) => a[0] - b[0]);
  const found: Span[] = [];
  for (const span of sorted) {
    const last = found.at(-1);
    if (last && span[0] <= last[1] + apart) found[found.length - 1] = [last[0], Math.max(last[1], span[1])];
    else found.push(span);
  }
  return found;
}

export const clipped = (spans: readonly Span[], length: number): Span[] =>
  joined(spans.map(([a, b]): Span => [Math.max(0, a), Math.min(length, b)]));

/** What of `spans` is not in `cuts`. Both in order. */
export function without(spans: readonly Span[], cuts: readonly Span[]): Span[] {
  let left: Span[] = [...spans];
  for (const [from, to] of cuts)
    left = left.flatMap(([a, b]): Span[] =>
      to <= a || from >= b ? [[a, b]] : [[a, from] as Span, [to, b] as Span].filter(([p, q]) => q > p),
    );
  return left;
}

/** What is in both. */
export const common = (spans: readonly Span[], others: readonly Span[]): Span[] =>
  spans.flatMap(([a, b]) =>
    others.map(([p, q]): Span => [Math.max(a, p), Math.min(b, q)]).filter(([from, to]) => to > from),
  );

export const isIn = (spans: readonly Span[], s: number): boolean => spans.some(([a, b]) => s >= a && s <= b);

/** What the design says is wrapped, within the tube. */
export const wrappedSpans = (runner: Runner, length: number): Span[] =>
  clipped(
    (runner.wrapped ?? [[0, length]]).map(([a, b]): Span => [Math.min(a, b), Math.max(a, b)]),
    length,
  );
