/** Rules between things: tube to tube, tube to surrounding, merge bodies, a tube with itself. All exact (see clearance/). */
import type { Vec3 } from '../../shared/vec3';
import type { MotionPose } from '../gaps/report';
import type { Header, ResolvedRunner } from '../header/resolve';
import { motionOf } from '../motion/motion';
import { LENGTH_TOLERANCE } from '../tolerance';
import type { Obstacle } from './obstacles';
import {
  bodyShape,
  bodyToBody,
  bodyToSurrounding,
  gapToBody,
  gapToItself,
  isWeldedTo,
  type StretchPair,
  stretchGap,
  stretchPairs,
  tubeOf,
  tubeToSurrounding,
} from './pairGaps';
import type { Margin, Problem } from './report';
import { placeOnRunner, type Say, sayIn, whenMoved } from './words';

type Findings = { readonly least: Margin | null; readonly problems: Problem[] };

/** A gap is missed only past rounding; the contract promises 0.05 mm and the searches are far finer. */
export const fails = (margin: number): boolean => margin < -LENGTH_TOLERANCE * 1000;

/** Margins within which the least is sought first, mm: the nearer the limit, the sooner a search can stop. */
const CAPS = [2, 16, 128, Number.POSITIVE_INFINITY];

/** @param find everything that fails, and the least margin where it is below the cap */
function withinCaps(find: (cap: number) => Findings): Findings {
  for (const cap of CAPS) {
    const found = find(cap);
    if (found.least) return found;
  }
  return { least: null, problems: [] };
}

type TubePair = StretchPair & { readonly a: ResolvedRunner; readonly b: ResolvedRunner };

export function checkTubeToTube(header: Header): Findings {
  const pairs = header.runners.flatMap((a, i) =>
    header.runners.slice(i + 1).flatMap((b) => stretchPairs(a, b, header).map((pair) => ({ ...pair, a, b }))),
  );
  pairs.sort((x, y) => x.low - y.low);
  return withinCaps((cap) => tightest(header, pairs, cap));
}

function tightest(header: Header, pairs: readonly TubePair[], cap: number): Findings {
  let least: Margin | null = null;
  const broken = new Map<string, { pair: TubePair; margin: Margin; station: number }>();
  for (const pair of pairs) {
    const { a, b, required } = pair;
    const key = `${a.runner.id}/${b.runner.id}`;
    const open = broken.get(key)?.margin.margin ?? Math.max(0, (least as Margin | null)?.margin ?? cap);
    const gap = stretchGap(pair, open);
    if (!gap) continue;
    const between = [a.runner.id, b.runner.id] as const;
    const margin: Margin = { gap: gap.gap, required, margin: gap.gap - required, between, at: gap.at };
    least = tighter(least, margin);
    if (fails(margin.margin)) broken.set(key, { pair, margin, station: gap.station });
  }
  // Told in the document's order, whatever was found first.
  const places = new Map(header.runners.map((r, i) => [r, i]));
  const rank = ({ a, b }: TubePair): number => places.get(a)! * header.runners.length + places.get(b)!;
  const problems = [...broken.values()]
    .sort((x, y) => rank(x.pair) - rank(y.pair))
    .map((found) => tubesTooNear(found, sayIn(header.design.display)));
  return { least, problems };
}

function tubesTooNear(
  { pair, margin: m, station }: { pair: TubePair; margin: Margin; station: number },
  say: Say,
): Problem {
  const [one, other] = m.between;
  const near = placeOnRunner(pair.a.centerline!, station);
  const message =
    m.gap < 0
      ? `Runners ${one} and ${other} overlap by ${say(-m.gap)} at ${one}'s ${near}: move them ${say(-m.margin)} apart.`
      : `Runners ${one} and ${other} are ${say(m.gap)} apart at ${one}'s ${near}, ${say(-m.margin)} too near: ${say(m.required)} is needed.`;
  return { rule: 'tube-to-tube', where: `runners/${one}`, found: m.gap, allowed: m.required, message, at: m.at };
}

export const checkSurroundings = (header: Header, obstacles: readonly Obstacle[]): Findings =>
  withinCaps((cap) => nearestSurroundings(header, obstacles, cap));

function nearestSurroundings(header: Header, obstacles: readonly Obstacle[], cap: number): Findings {
  const say = sayIn(header.design.display);
  const motion = motionOf(header.design);
  let least: Margin | null = null;
  const problems: Problem[] = [];
  for (const r of header.runners) {
    for (const o of obstacles) {
      const { surrounding } = o;
      const required = surrounding.clearance ?? 0;
      const limit = Math.max(required, (least?.margin ?? cap) + required);
      const gap = tubeToSurrounding(r, o, motion, limit);
      if (!gap) continue;
      const between = [r.runner.id, surrounding.id] as const;
      const margin: Margin = { gap: gap.gap, required, margin: gap.gap - required, between, at: gap.at };
      least = tighter(least, margin);
      if (fails(margin.margin))
        problems.push(tooNearSurrounding(r, surrounding.id, margin, gap.station, say, gap.pose));
    }
  }
  return { least, problems };
}

function tooNearSurrounding(
  r: ResolvedRunner,
  name: string,
  { gap, required, margin, at }: Margin,
  station: number,
  say: Say,
  pose?: MotionPose,
): Problem {
  const place = placeOnRunner(r.centerline!, station);
  const when = whenMoved(pose);
  const message =
    gap < 0
      ? `Runner ${r.runner.id} runs ${say(-gap)} into the ${name} at ${place}${when}: move it ${say(-margin)} away.`
      : `Runner ${r.runner.id} is ${say(-margin)} too close to the ${name}${when}: move ${place} out, or allow ${say(gap)}.`;
  return { rule: 'surroundings', where: `runners/${r.runner.id}`, found: gap, allowed: required, message, at };
}

export const checkMergeBodies = (header: Header, obstacles: readonly Obstacle[]): Findings =>
  withinCaps((cap) => nearestBodies(header, obstacles, cap));

function nearestBodies(header: Header, obstacles: readonly Obstacle[], cap: number): Findings {
  const say = sayIn(header.design.display);
  let least: Margin | null = null;
  const problems: Problem[] = [];
  const motion = motionOf(header.design);
  const note = (merge: string, other: string, name: string, gap: number, at: Vec3, pose?: MotionPose): void => {
    const margin: Margin = { gap, required: 0, margin: gap, between: [merge, other], at };
    least = tighter(least, margin);
    if (!fails(gap)) return;
    const message = `Collector ${merge} reaches ${say(-gap)} into ${name}${whenMoved(pose)}: move one of them.`;
    problems.push({ rule: 'merge-body', where: `merges/${merge}`, found: gap, allowed: 0, message, at });
  };
  const limit = (): number => Math.max(0, least?.gap ?? cap);
  const bodies = [...header.merges.values()];
  for (const [i, resolved] of bodies.entries()) {
    const { merge } = resolved;
    for (const r of header.runners) {
      if (isWeldedTo(r, resolved)) continue;
      const { id } = r.runner;
      const tube = tubeOf(r);
      const gap = tube && gapToBody(tube, resolved, limit());
      if (gap) note(merge.id, id, `runner ${id}`, gap.gap, gap.at);
    }
    for (const o of obstacles) {
      const { id } = o.surrounding;
      const found = bodyToSurrounding(resolved, o, motion, limit());
      if (found) note(merge.id, id, `the ${id}`, found.value, found.at, found.pose);
    }
    for (const other of bodies.slice(i + 1)) {
      const found = bodyToBody(resolved, other, limit());
      if (found) note(merge.id, other.merge.id, `collector ${other.merge.id}`, found.value, bodyShape(resolved).centre);
    }
  }
  return { least, problems };
}

export function checkSelf(header: Header): Problem[] {
  const say = sayIn(header.design.display);
  return header.runners.flatMap((r): Problem[] => {
    const gap = gapToItself(r);
    if (!r.centerline || !gap || !fails(gap.gap)) return [];
    const { id } = r.runner;
    const place = placeOnRunner(r.centerline, gap.station);
    const message = `Runner ${id} runs ${say(-gap.gap)} into itself at ${place}: open the bend, or move the legs apart.`;
    return [{ rule: 'self', where: `runners/${id}`, found: gap.gap, allowed: 0, message, at: gap.at }];
  });
}

const tighter = (a: Margin | null, b: Margin | null): Margin | null => (!a ? b : !b ? a : b.margin < a.margin ? b : a);
