/**
 * Clearances for the search, as rows at places every few millimetres along each runner: blunter than the solver's contacts,
 * but many of them pull at once where things overlap deeply, so that there is a way out of most overlaps. mm.
 */
import { isTree, type Obstacle } from '../check/obstacles';
import { slopeOf } from '../clearance/shapes';
import { bodyRows } from '../layout/bodyRows';
import { pathOf, pushPlace } from '../layout/contactRows';
import { type LayoutProblem, place, pull, type SolverRunner } from '../layout/layoutProblem';
import { linksOf, pointOnLink, type SolverLink } from '../layout/links';
import type { RowBuilder } from '../layout/rowBuilder';
import { linksNow } from '../layout/runnerLinks';
import { shapeRows } from '../layout/shapeRows';
import { BUNDLE_OVERLAP, SELF_SEPARATION } from '../tolerance';

/** Between places, mm. */
const STEP = 12;
/** Places with more room than this pull at nothing in one step, mm. */
const NEAR = 6;
/** How much one place counts beside a rule on the runner as a whole. */
const WEIGHT = 0.6;
/** Overlaps of several places are dearer to miss than a millimetre. */
const SPARE = 0.5;

type Samples = {
  readonly runner: SolverRunner;
  readonly count: number;
  readonly at: Float64Array;
  readonly station: Float64Array;
  readonly link: readonly SolverLink[];
  readonly fraction: Float64Array;
  readonly bundle: Int8Array;
  readonly total: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
};

/** Every rule that the search minds, about `x`; leaves the problem's paths there. */
export function gatherSampled(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  x: Float64Array,
  rows: RowBuilder,
): void {
  place(problem, x);
  rows.clear();
  shapeRows(problem, x, rows);
  const all = problem.runners.map(sampled);
  const links = problem.runners.map(linksNow);
  for (const [i, a] of all.entries()) {
    for (const b of all.slice(i + 1)) if (a.runner.at >= 0 || b.runner.at >= 0) pairRows(problem, a, b, rows);
    if (a.runner.at < 0) continue;
    selfRows(a, rows);
    for (const o of obstacles) aroundRows(a, o, rows);
  }
  bodyRows(problem, x, obstacles, links, rows);
}

function sampled(runner: SolverRunner): Samples {
  const links = linksOf(runner);
  const total = runner.path.length;
  const counts = links.map((l) => Math.max(1, Math.round((l.end - l.station) / STEP)));
  const count = counts.reduce((sum, n) => sum + n, 1);
  const at = new Float64Array(3 * count);
  const station = new Float64Array(count);
  const fraction = new Float64Array(count);
  const bundle = new Int8Array(count);
  const link: SolverLink[] = [];
  const low = Float64Array.of(Infinity, Infinity, Infinity);
  const high = Float64Array.of(-Infinity, -Infinity, -Infinity);
  let n = 0;
  for (const [k, l] of links.entries())
    for (let i = k === 0 ? 0 : 1; i <= counts[k]!; i++, n++) {
      const part = i / counts[k]!;
      fraction[n] = l.low + (l.high - l.low) * part;
      pointOnLink(runner, l.index, l.isArc, fraction[n]!, at, 3 * n);
      station[n] = l.station + (l.end - l.station) * part;
      bundle[n] = l.bundle;
      link.push(l);
      for (let axis = 0; axis < 3; axis++) {
        const value = at[3 * n + axis]!;
        if (value < low[axis]!) low[axis] = value;
        if (value > high[axis]!) high[axis] = value;
      }
    }
  return { runner, count: n, at, station, link, fraction, bundle, total, low, high };
}

function pairRows(problem: LayoutProblem, a: Samples, b: Samples, rows: RowBuilder): void {
  const radii = a.runner.resolved.tubeRadius + b.runner.resolved.tubeRadius;
  const most = radii + problem.header.tubeToTube + SPARE + NEAR;
  for (let k = 0; k < 3; k++) if (a.low[k]! - b.high[k]! > most || b.low[k]! - a.high[k]! > most) return;
  const meet = a.runner.to.id === b.runner.to.id;
  const part = a.runner.from.id === b.runner.from.id;
  const key = `tube-to-tube|${pathOf(a.runner)}|${pathOf(b.runner)}|`;
  for (let i = 0; i < a.count; i++) {
    const x = a.at[3 * i]!;
    const y = a.at[3 * i + 1]!;
    const z = a.at[3 * i + 2]!;
    let value = NEAR;
    let nearest = -1;
    for (let j = 0; j < b.count; ) {
      const dx = x - b.at[3 * j]!;
      const dy = y - b.at[3 * j + 1]!;
      const dz = z - b.at[3 * j + 2]!;
      const d = Math.sqrt(dx * dx + dy * dy + dz * dz);
      const bundled = a.bundle[i] !== 0 && a.bundle[i] === b.bundle[j] && (a.bundle[i]! > 0 ? meet : part);
      const room = d - radii - (bundled ? -BUNDLE_OVERLAP : problem.header.tubeToTube + SPARE);
      if (room < value) {
        value = room;
        nearest = j;
      }
      const spare = d - most;
      j += spare > STEP ? Math.floor(spare / STEP) : 1;
    }
    if (nearest < 0) continue;
    const j = nearest;
    const dx = x - b.at[3 * j]!;
    const dy = y - b.at[3 * j + 1]!;
    const dz = z - b.at[3 * j + 2]!;
    const d = Math.max(1e-6, Math.sqrt(dx * dx + dy * dy + dz * dz));
    const normal = [(WEIGHT * dx) / d, (WEIGHT * dy) / d, (WEIGHT * dz) / d] as const;
    const offset = rows.add(WEIGHT * value, false, key);
    push(a, i, normal, 1, rows, offset);
    push(b, j, normal, -1, rows, offset);
  }
}

function push(
  s: Samples,
  i: number,
  normal: readonly [number, number, number],
  sign: number,
  rows: RowBuilder,
  offset: number,
): void {
  if (s.runner.at < 0) return;
  pushPlace({ link: s.link[i]!, fraction: s.fraction[i]! }, normal, sign);
  pull(s.runner, rows.array, offset);
}

function selfRows(s: Samples, rows: RowBuilder): void {
  const { resolved } = s.runner;
  const apart = SELF_SEPARATION * resolved.tube.outsideDiameter;
  const need = 2 * resolved.tubeRadius + SPARE;
  const key = `self|${pathOf(s.runner)}||`;
  for (let i = 0; i < s.count; i++) {
    let value = 0;
    let nearest = -1;
    for (let j = i + 1; j < s.count; ) {
      const d = Math.hypot(
        s.at[3 * i]! - s.at[3 * j]!,
        s.at[3 * i + 1]! - s.at[3 * j + 1]!,
        s.at[3 * i + 2]! - s.at[3 * j + 2]!,
      );
      if (d - need < value && s.station[j]! - s.station[i]! > apart) {
        value = d - need;
        nearest = j;
      }
      j += d - need > STEP ? Math.floor((d - need) / STEP) : 1;
    }
    if (nearest < 0) continue;
    const j = nearest;
    const v = [0, 1, 2].map((k) => s.at[3 * i + k]! - s.at[3 * j + k]!);
    const d = Math.max(1e-6, Math.hypot(...v));
    const normal = [(WEIGHT * v[0]!) / d, (WEIGHT * v[1]!) / d, (WEIGHT * v[2]!) / d] as const;
    const offset = rows.add(WEIGHT * value, false, key);
    pushPlace({ link: s.link[i]!, fraction: s.fraction[i]! }, normal, 1);
    pushPlace({ link: s.link[j]!, fraction: s.fraction[j]! }, normal, -1);
    pull(s.runner, rows.array, offset);
  }
}

function aroundRows(s: Samples, { surrounding, shape }: Obstacle, rows: RowBuilder): void {
  const { tubeRadius } = s.runner.resolved;
  const need = tubeRadius + (surrounding.clearance ?? 0) + SPARE;
  if (isTree(shape)) return;
  const { centre, reach, signedDistance } = shape;
  let far = 0;
  for (let k = 0; k < 3; k++) {
    const out = Math.max(s.low[k]! - centre[k]!, centre[k]! - s.high[k]!, 0);
    far += out * out;
  }
  if (far >= (reach + need + NEAR) ** 2) return;
  let key = '';
  for (let i = 0; i < s.count; ) {
    const x = s.at[3 * i]!;
    const y = s.at[3 * i + 1]!;
    const z = s.at[3 * i + 2]!;
    const room = signedDistance(x, y, z) - need;
    if (room < NEAR && s.station[i]! > tubeRadius && s.station[i]! < s.total - tubeRadius) {
      if (key === '') key = `surroundings|${pathOf(s.runner)}|surroundings/${surrounding.id}|`;
      const [gx, gy, gz] = slopeOf(signedDistance, x, y, z);
      const offset = rows.add(WEIGHT * room, false, key);
      push(s, i, [WEIGHT * gx, WEIGHT * gy, WEIGHT * gz], 1, rows, offset);
    }
    i += room - NEAR > STEP ? Math.floor((room - NEAR) / STEP) : 1;
  }
}
