/** What is left of lines once what hides them is taken away: looked at place by place, `step` apart. mm, the eye's frame. */
import { distance, lerp } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';

export type Flat = readonly [x: number, y: number];

/** Runs of places that are seen, each straight stretch with no more points than it needs. */
export function visibleRuns(
  lines: readonly (readonly Vec3[])[],
  isHidden: (p: Vec3) => boolean,
  step: number,
): Flat[][] {
  const runs: Flat[][] = [];
  for (const line of lines) {
    let run: Flat[] = [];
    for (const p of spaced(line, step))
      if (isHidden(p)) {
        runs.push(run);
        run = [];
      } else run.push([p[0], p[1]]);
    runs.push(run);
  }
  return runs.filter((run) => run.length > 1).map((run) => thinned(run, step / 12));
}

export function visibleLength(lines: readonly (readonly Vec3[])[], isHidden: (p: Vec3) => boolean, step: number) {
  const runs = visibleRuns(lines, isHidden, step);
  return runs.reduce(
    (sum, run) => sum + run.slice(1).reduce((s, [x, y], i) => s + Math.hypot(x - run[i]![0], y - run[i]![1]), 0),
    0,
  );
}

function spaced(line: readonly Vec3[], step: number): Vec3[] {
  const [first] = line;
  return [
    first!,
    ...line.slice(1).flatMap((to, i) => {
      const from = line[i]!;
      const count = Math.max(1, Math.ceil(distance(from, to) / step));
      return Array.from({ length: count }, (_, k) => lerp(from, to, (k + 1) / count));
    }),
  ];
}

/** Without the points that lie within `most` of the straight between those that are kept (Ramer, Douglas, Peucker). */
function thinned(run: readonly Flat[], most: number): Flat[] {
  const [a, b] = [run[0]!, run.at(-1)!];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  let [worst, at] = [most, 0];
  for (let i = 1; i < run.length - 1; i++) {
    const [x, y] = [run[i]![0] - a[0], run[i]![1] - a[1]];
    const off = length > 0 ? Math.abs(x * dy - y * dx) / length : Math.hypot(x, y);
    if (off > worst) [worst, at] = [off, i];
  }
  return at === 0 ? [a, b] : [...thinned(run.slice(0, at + 1), most).slice(0, -1), ...thinned(run.slice(at), most)];
}
