/**
 * Where wrap must be left off for one place, so that a tool still works: of all tools and stands that work bare, those for which
 * least is left off. mm along the centerlines.
 */
import { barsFree, type Scene, stanceOf, stancesAmong, takenBy, toBar } from './judge';
import type { Near } from './local';
import type { Seen } from './scenes';
import { shadowsOf, turned } from './shadows';
import { isIn, joined, type Span } from './spans';
import { STAND, standsOf } from './swing';
import type { Way } from './ways';

/** By runner. */
export type Cuts = ReadonlyMap<string, readonly Span[]>;

/** Between two balls of a tube. */
const STEP = 2;
/** Swings are tried from every so many stands. */
const STRIDE = 4;
/** As many kinds of tools are to work as work bare, but no more than make a place reachable beyond doubt. */
const ENOUGH = 2;

/**
 * @param s seen with all runners wrapped whole
 * @param cuts what is left bare already
 * @param enough so many kinds of tools are to work, or as many as work bare
 * @returns what more must be left bare
 */
export function cutsFor(s: Seen, cuts: Cuts, enough = ENOUGH): Map<string, Span[]> {
  let now = cuts;
  const more = new Map<string, Span[]>();
  const kinds = [...new Set(s.spot.ways.map(({ way }) => way.kind))].map((kind) =>
    s.spot.ways
      .filter(({ way }) => way.kind === kind)
      .map(({ way, fixed }) => ({ way, fixed, scene: s.sceneOf(fixed) })),
  );
  const bare = kinds.filter((ways) => ways.some(({ way, scene }) => stanceOf(scene, way, false) !== null));
  const wanted = Math.min(enough, bare.length);
  for (;;) {
    const near = bareWhere(s.near, now);
    const open = bare.filter((ways) => !ways.some(({ way, scene }) => stanceOf({ ...scene, near }, way, true)));
    if (bare.length - open.length >= wanted) return more;
    const options = open.flatMap((ways) => ways.flatMap(({ way, scene }) => leastFor({ ...scene, near }, way) ?? []));
    const best = options.reduce<Option | null>((a, b) => (!a || b.cost < a.cost ? b : a), null);
    if (!best) return more;
    for (const [runner, spans] of best.spans) more.set(runner, joined([...(more.get(runner) ?? []), ...spans]));
    now = together(now, best.spans);
  }
}

export const together = (a: Cuts, b: Cuts): Cuts =>
  new Map(
    [...new Set([...a.keys(), ...b.keys()])].map((id) => [id, joined([...(a.get(id) ?? []), ...(b.get(id) ?? [])])]),
  );

function bareWhere(near: Near, cuts: Cuts): Near {
  const own = near.clouds.map((c) => cuts.get(c.runner) ?? []);
  const wrapped = near.wrapped.map((r, i) => (isIn(own[near.cloud[i]!]!, near.station[i]!) ? near.bare[i]! : r));
  return { ...near, wrapped };
}

type Option = { readonly cost: number; readonly spans: Map<string, Span[]> };

/** The balls whose wrap would be in the way, for the stand where they are fewest; null where it does not work even bare. */
function leastFor(scene: Scene, way: Way): Option | null {
  if (way.unfit !== null || !barsFree(scene, way.bars, false, 0)) return null;
  const { near, room } = scene;
  const alone = ballsOf(near, (rho, z, ball) => way.bars.some((bar) => toBar(bar, rho, z) < ball + room));
  if (way.arms.length === 0) return optionOf(near, alone);
  const taken = takenBy(scene, way.arms, false, 0, 'arms');
  const barred = way.approach.length > 0 ? takenBy(scene, way.approach, false, 0, 'approach') : null;
  const swept = shadowsOf(near, way.arms, room, true);
  const put = shadowsOf(near, way.approach, room, true);
  const need = standsOf(way.swing);
  let best: readonly number[] | null = null;
  let least = Number.POSITIVE_INFINITY;
  const half = ((need - 1) / 2) * STAND;
  for (const { first, stand } of stancesAmong(taken, barred, need, STRIDE)) {
    const found = [...alone];
    for (const one of swept) if (turned(one.theta, first * STAND + half) <= one.half + half) found.push(one.ball);
    for (const one of put) if (turned(one.theta, stand * STAND) <= one.half) found.push(one.ball);
    const cost = costOf(near, found);
    if (cost < least) [least, best] = [cost, found];
  }
  return best && optionOf(near, best);
}

/** Balls that are bigger wrapped than bare, and then in the way. */
function ballsOf(near: Near, inTheWay: (rho: number, z: number, ball: number) => boolean): number[] {
  const found: number[] = [];
  for (let i = 0; i < near.count; i++)
    if (near.wrapped[i]! > near.bare[i]! && inTheWay(near.rho[i]!, near.z[i]!, near.wrapped[i]!)) found.push(i);
  return found;
}

const binOf = (near: Near, i: number): number => near.cloud[i]! * 1e6 + Math.round(near.station[i]! / STEP);

const costOf = (near: Near, balls: readonly number[]): number => new Set(balls.map((i) => binOf(near, i))).size * STEP;

/** Whole millimetres, so that they can be measured off: outward. */
function optionOf(near: Near, balls: readonly number[]): Option {
  const spans = new Map<string, Span[]>();
  for (const i of balls) {
    const { runner } = near.clouds[near.cloud[i]!]!;
    const s = near.station[i]!;
    const own = spans.get(runner) ?? [];
    own.push([Math.floor(s - STEP), Math.ceil(s + STEP)]);
    spans.set(runner, own);
  }
  return {
    cost: costOf(near, balls),
    spans: new Map([...spans].map(([id, own]) => [id, joined(own)])),
  };
}
