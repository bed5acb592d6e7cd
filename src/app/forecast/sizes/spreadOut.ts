/** The order in which sizes are tried: spread over the map from the first, not from one corner. */
import type { StudySize } from '../../../pulse/forecast/studySizes';

/** The middle first, then always what lies furthest from all that were; arrangements take turns. Each once; lengths and diameters over their own span. */
export function spreadOut(sizes: readonly StudySize[]): readonly StudySize[] {
  const names = [...new Set(sizes.map(({ arrangement }) => arrangement))];
  const orders = names.map((name) => spreadGroup(sizes.filter(({ arrangement }) => arrangement === name)));
  const longest = Math.max(0, ...orders.map((order) => order.length));
  return Array.from({ length: longest }, (_, k) => orders.flatMap((order) => order[k] ?? [])).flat();
}

function spreadGroup(sizes: readonly StudySize[]): readonly StudySize[] {
  const share = (of: (size: StudySize) => number) => {
    const [least, most] = [Math.min(...sizes.map(of)), Math.max(...sizes.map(of))];
    return (size: StudySize) => (most > least ? (of(size) - least) / (most - least) : 0.5);
  };
  const [x, y, z] = [
    share(({ length }) => length),
    share(({ outsideDiameter, wall }) => outsideDiameter - 2 * wall),
    share(({ outlet }) => outlet ?? 0),
  ];
  const places = sizes.map((size) => [x(size), y(size), z(size)] as const);
  const far = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((value, k) => value - b[k]!));
  const middle = places.map((place) => -far(place, [0.5, 0.5, 0.5]));
  const gaps = sizes.map(() => Number.POSITIVE_INFINITY);
  const left = new Set(sizes.keys());
  const order: StudySize[] = [];
  while (left.size > 0) {
    const scores = order.length === 0 ? middle : gaps;
    const next = [...left].reduce((best, k) => (scores[k]! > scores[best]! + 1e-9 ? k : best));
    left.delete(next);
    order.push(sizes[next]!);
    for (const k of left) gaps[k] = Math.min(gaps[k]!, far(places[k]!, places[next]!));
  }
  return order;
}
