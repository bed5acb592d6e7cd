/** The arrow keys over the curves: from speed to speed along one, from one to the next at a speed. */
import type { Under } from './frame';
import type { Series } from './series';

/** Where a key takes it; null where the key means nothing here, or there is no point to go to. */
export function movedBy(key: string, from: Under | null, series: readonly Series[]): Under | null {
  const shown = series.filter(({ points }) => points.length > 0);
  if (!['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'].includes(key) || shown.length === 0)
    return null;
  const own = Math.max(
    0,
    shown.findIndex(({ kind }) => kind === from?.kind),
  );
  const { kind, points } = shown[own]!;
  const at = points.findIndex(({ rpm }) => rpm === from?.rpm);
  const along = (index: number): Under => ({
    kind,
    rpm: points[Math.min(points.length - 1, Math.max(0, index))]!.rpm,
  });
  if (key === 'Home') return along(0);
  if (key === 'End') return along(points.length - 1);
  if (!from || at < 0) return along(points.length >> 1);
  if (key === 'ArrowLeft') return along(at - 1);
  if (key === 'ArrowRight') return along(at + 1);
  // The next one up or down on screen that has this speed; past the last one it stays.
  const here = points[at]!.value;
  const beside = shown
    .flatMap((other) =>
      other.points.filter(({ rpm }) => rpm === from.rpm).map(({ value }) => ({ kind: other.kind, value })),
    )
    .filter((other) => other.kind !== kind && (key === 'ArrowUp' ? other.value >= here : other.value <= here))
    .sort((a, b) => Math.abs(a.value - here) - Math.abs(b.value - here));
  return beside[0] ? { kind: beside[0].kind, rpm: from.rpm } : from;
}
