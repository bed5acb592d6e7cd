/**
 * What a held bend, collector, port or body may snap to: the levels and positions of its neighbours, the plane of the
 * bends beside it (a rotation of 0 or 180°), straights parallel to a neighbour's, collector axes, round bend angles.
 * Gathered once, when hold is taken. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Header } from '../header/resolve';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE, RADIANS } from '../tolerance';
import { cross, distance, norm, sub, unit } from '../vector';
import { type Path, pathIn, type Range } from './path';
import type { SnapTarget } from './snap';

/** Bends are set in steps of this on most machines' dials (common practice), radians. */
const ROUND_ANGLE = 5 * RADIANS;

const AXES: readonly { readonly normal: Vec3; readonly says: (what: string) => string; readonly runs: string }[] = [
  { normal: [1, 0, 0], says: (what) => `in line with ${what} along the engine`, runs: 'along the engine' },
  { normal: [0, 1, 0], says: (what) => `as far out as ${what}`, runs: 'straight out of the head' },
  { normal: [0, 0, 1], says: (what) => `level with ${what}`, runs: 'upright' },
];

/** For a bend of a runner. */
export function bendTargets(header: Header, runner: string, bend: number): SnapTarget[] {
  const path = pathIn(header, runner);
  const range = path.bends[bend];
  if (!range) return [];
  const [before, after] = [path.points[range.first - 1]!, path.points[range.last + 1]!];
  const targets = [
    ...planesOfNeighbours(path, range),
    ...levels(header, runner, (b) => b !== bend),
    ...parallels(header, path, before, after),
    ...axesOfMerges(header, null),
  ];
  if (range.first === range.last)
    targets.push({ kind: 'angle', words: '', from: before, to: after, step: ROUND_ANGLE });
  return targets;
}

/** For a collector, port or surrounding: level with bends, ports and other collectors. */
export function placeTargets(header: Header, self: { readonly kind: string; readonly id: string }): SnapTarget[] {
  const isSelf = (kind: string, id: string) => self.kind === kind && self.id === id;
  const out: SnapTarget[] = [];
  for (const { port } of header.ports.values())
    if (!isSelf('port', port.id)) out.push(...planesAt(port.position, `port ${port.id}`));
  for (const { merge } of header.merges.values())
    if (!isSelf('merge', merge.id)) out.push(...planesAt(merge.position, `collector ${merge.id}`));
  return [...out, ...axesOfMerges(header, self.kind === 'merge' ? self.id : null)];
}

const planesAt = (from: Vec3, what: string): SnapTarget[] =>
  AXES.map(({ normal, says }) => ({ kind: 'plane', from, normal, words: says(what) }));

/** With three points of a plane beside it, the held bend's plane is that of the bend before or after. */
function planesOfNeighbours(path: Path, range: Range): SnapTarget[] {
  const { points } = path;
  const p = (i: number) => points[i];
  const [a, b, c, d] = [p(range.first - 2), p(range.first - 1), p(range.last + 1), p(range.last + 2)];
  const out: SnapTarget[] = [];
  const plane = (from: Vec3 | undefined, via: Vec3 | undefined, to: Vec3 | undefined, words: string) => {
    if (!from || !via || !to) return;
    const normal = cross(sub(via, from), sub(to, from));
    if (norm(normal) > ANGLE_TOLERANCE * distance(from, via) * distance(from, to))
      out.push({ kind: 'plane', from: via, normal: unit(normal), words });
  };
  const number = path.bends.findIndex((r) => r.first === range.first) + 1;
  plane(a, b, c, `in one plane with bend ${number - 1}`);
  plane(d, c, b, `in one plane with bend ${number + 1}`);
  return out;
}

/** Levels and positions of this runner's other bends, its neighbours' bends, and its own port. */
function levels(header: Header, runner: string, own: (bend: number) => boolean): SnapTarget[] {
  const order = header.runners.findIndex((r) => r.runner.id === runner);
  const out: SnapTarget[] = [];
  header.runners.forEach((other, i) => {
    if (Math.abs(i - order) > 1 || !other.centerline) return;
    const { bends, points } = pathIn(header, other.runner.id);
    bends.forEach((b, k) => {
      if (i === order && !own(k)) return;
      const name = i === order ? `bend ${k + 1}` : `bend ${k + 1} of ${other.runner.id}`;
      out.push(...planesAt(points[b.first]!, name));
    });
  });
  const start = header.runners[order]!.start.position;
  return [...out, ...planesAt(start, 'its own start')];
}

/** Lines from the points beside the held bend, parallel to an axis or to a neighbour's straight. */
function parallels(header: Header, path: Path, before: Vec3, after: Vec3): SnapTarget[] {
  const order = header.runners.findIndex((r) => r.runner.id === path.runner.id);
  const ways: { way: Vec3; words: string }[] = AXES.map(({ normal, runs }) => ({
    way: normal,
    words: `straight runs ${runs}`,
  }));
  header.runners.forEach((other, i) => {
    if (i === order || Math.abs(i - order) > 1 || !other.centerline) return;
    const { line, straights } = pathIn(header, other.runner.id);
    straights.forEach((s, k) => {
      const way = line.directions[line.source.indexOf(s.first)]!;
      ways.push({ way, words: `parallel to straight ${k + 1} of ${other.runner.id}` });
    });
  });
  const fixed = (p: Vec3) =>
    distance(p, path.points[0]!) > LENGTH_TOLERANCE && distance(p, path.points.at(-1)!) > LENGTH_TOLERANCE;
  return [before, after]
    .filter(fixed)
    .flatMap((from) => ways.map(({ way, words }): SnapTarget => ({ kind: 'line', from, way, words })));
}

const axesOfMerges = (header: Header, but: string | null): SnapTarget[] =>
  [...header.merges.values()]
    .filter(({ merge }) => merge.id !== but)
    .map(({ merge, body }) => ({
      kind: 'line',
      from: body.position,
      way: body.axis,
      words: `on the axis of collector ${merge.id}`,
    }));
