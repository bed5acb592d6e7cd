/**
 * Whether tools reach every fastener and service point, bare and wrapped: each kind of tool is tried in all its lengths and at all
 * stands. Surroundings may be touched; between anything and a tool some working clearance stays. mm, design frame.
 */
import type { Meshes } from '../check/meshes';
import { obstaclesOf } from '../check/obstacles';
import type { Header } from '../header/resolve';
import { type Culprit, culprits, lackOf, type Stance, stanceOf } from './judge';
import { outOf, type Place } from './place';
import type { AccessEntry, AccessReport, Reach, ToolSolid, ToolTry } from './report';
import { type Seen, type Spot, seen } from './scenes';
import { STAND } from './swing';
import type { Way } from './ways';
import { messageFor } from './words';
import { type Cuts, cutsFor } from './wrapCut';
import { wrapPlans } from './wrapPlans';

/** One kind of tool at one place, with what the words need. */
export type Tried = ToolTry & {
  readonly way: Way;
  /** How much is in its way, wrapped where it works bare; 0 where it works. */
  readonly lack: number;
  readonly culprits: readonly Culprit[];
};

/** @param meshes by file name, as for `check` */
export function accessReport(header: Header, meshes: Meshes = new Map()): AccessReport {
  const unread = [...new Set(obstaclesOf(header, meshes).missing.map(({ file }) => file))];
  return {
    entries: accessEntries(header, meshes),
    ...(unread.length > 0 && { unread }),
    wrap: wrapPlans(header, meshes),
  };
}

/** Without the wrap's plans, where nobody asks for them. */
export function accessEntries(header: Header, meshes: Meshes): AccessEntry[] {
  let whole: Seen[] | null = null;
  return seen(header, meshes).map((s, i) =>
    entryOf(header, s, () => {
      whole ??= seen(header, meshes, true);
      return cutsFor(whole[i]!, NO_CUTS, 1);
    }),
  );
}

const NO_CUTS: Cuts = new Map();

/** @param bare what must be left bare for one tool to work */
function entryOf(header: Header, s: Seen, bare: () => Cuts): AccessEntry {
  const { place } = s.spot;
  const tries = triesAt(s);
  const reach = reachOf(tries);
  const best = bestOf(tries);
  return {
    id: place.id,
    kind: place.kind,
    where: place.where,
    at: place.axes.origin,
    reach,
    best: best && plain(best),
    tries: tries.map(plain),
    by: reach === 'reachable' ? [] : stoppedBy(tries, reach),
    message: messageFor(header, place, reach, tries, best, bare),
  };
}

const plain = ({ name, kind, bare, wrapped, by, solids }: Tried): ToolTry => ({
  name,
  kind,
  bare,
  wrapped,
  by,
  solids,
});

export function reachOf(tries: readonly Pick<ToolTry, 'bare' | 'wrapped'>[]): Reach {
  const wrapped = tries.filter((t) => t.wrapped).length;
  if (wrapped >= 2 || (wrapped === 1 && tries.length === 1)) return 'reachable';
  if (wrapped === 1) return 'one-tool';
  return tries.some((t) => t.bare) ? 'before-wrapping' : 'blocked';
}

const rank = (t: Tried): number => (t.wrapped ? 0 : t.bare ? 1 : 2);

export const bestOf = (tries: readonly Tried[]): Tried | null =>
  tries.reduce<Tried | null>(
    (a, b) => (!a || rank(b) < rank(a) || (rank(b) === rank(a) && b.lack < a.lack) ? b : a),
    null,
  );

function stoppedBy(tries: readonly Tried[], reach: Reach): string[] {
  const stopped = tries.filter((t) => !t.wrapped && (reach !== 'before-wrapping' || t.bare));
  return [...new Set([...stopped].sort((a, b) => a.lack - b.lack).flatMap((t) => t.by))];
}

type KeptTries = { readonly met: readonly unknown[]; readonly tries: readonly Tried[] };
const keptTries = new WeakMap<Spot, KeptTries>();

/** One for each kind: the way that works, else the one that lacks least. The last answer stays while the tubes here do. */
export function triesAt(s: Seen): readonly Tried[] {
  const { met } = s.near;
  const kept = keptTries.get(s.spot);
  if (kept && kept.met.length === met.length && kept.met.every((c, i) => c === met[i])) return kept.tries;
  const tries = tryAll(s);
  keptTries.set(s.spot, { met, tries });
  return tries;
}

function tryAll(s: Seen): Tried[] {
  const kinds = [...new Set(s.spot.ways.map(({ way }) => way.kind))];
  return kinds.map((kind) => tryKind(s, kind));
}

function tryKind(s: Seen, kind: Way['kind']): Tried {
  const { place } = s.spot;
  const own = s.spot.ways.filter(({ way }) => way.kind === kind).map((w) => ({ ...w, scene: s.sceneOf(w.fixed) }));
  for (const { way, scene } of own) {
    const stance = stanceOf(scene, way, true);
    if (stance) return { ...shown(place, way, stance, true, true), lack: 0, culprits: [], by: [], way };
  }
  const bare = own.filter(({ way, scene }) => stanceOf(scene, way, false) !== null);
  let best: Tried | null = null;
  for (const { way, scene } of bare.length > 0 ? bare : own) {
    const isBare = bare.length > 0;
    const { lack, stance } = lackOf(scene, way, isBare, best?.lack);
    if (best && (stance === null || lack >= best.lack)) continue;
    const blamed = way.unfit === null ? culprits(scene, way, stance, isBare) : [];
    best = {
      ...shown(place, way, stance, isBare, false),
      lack,
      culprits: blamed,
      by: blamed.map((c) => c.id),
      way,
    };
  }
  return best!;
}

const shown = (place: Place, way: Way, stance: Stance | null, bare: boolean, wrapped: boolean) => ({
  name: way.name,
  kind: way.kind,
  bare,
  wrapped,
  solids: solidsAt(place, way, stance?.stand ?? 0),
});

/** The tool at rest, in the design's frame. */
export function solidsAt({ axes }: Place, way: Way, stand: number): ToolSolid[] {
  const [c, s] = [Math.cos(stand * STAND), Math.sin(stand * STAND)];
  return [
    ...way.rest.map(
      (b): ToolSolid => ({
        shape: 'cylinder',
        a: outOf(axes, [0, 0, b.from]),
        b: outOf(axes, [0, 0, b.to]),
        radius: b.radius,
      }),
    ),
    ...way.arms.map((arm): ToolSolid => {
      const level = arm.length * Math.cos(arm.rise);
      const up = arm.height + arm.length * Math.sin(arm.rise);
      return {
        shape: 'capsule',
        a: outOf(axes, [0, 0, arm.height]),
        b: outOf(axes, [level * c, level * s, up]),
        radius: arm.radius,
      };
    }),
  ];
}
