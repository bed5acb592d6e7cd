/**
 * How far each part stands from its place while the header is shown taken apart: what lies at the head moves back along the
 * ports, stubs move out from their collector's axis, and what follows them moves down the flow, one after the other. Tubes from
 * the ports stay; what hangs on a collector moves with its end. mm, in the design's frame.
 */
import {
  add,
  addScaled,
  dot,
  type Header,
  type PartKind,
  type ResolvedMerge,
  reject,
  scale,
  sub,
  unit,
} from '../../../../geometry';
import { rememberedOfTwo } from '../../../../shared/remember';
import type { Vec3 } from '../../../../shared/vec3';
import type { ShownPart } from '../../made/shape';
import { middleOfPart } from './joinShapes';
import { plates } from './plates';

export type Exploded = {
  /** By part id; what is not named stays. */
  readonly parts: ReadonlyMap<string, Vec3>;
  readonly runners: ReadonlyMap<string, Vec3>;
  /** How far a collector as a whole is carried by what it hangs on. */
  readonly merges: ReadonlyMap<string, Vec3>;
  /** What the flange leaves, by plate: the gasket, then the head. */
  readonly plates: ReadonlyMap<string, { readonly flange: Vec3; readonly gasket: Vec3; readonly head: Vec3 }>;
};

const NOWHERE: Vec3 = [0, 0, 0];
export const ASSEMBLED: Exploded = { parts: new Map(), runners: new Map(), merges: new Map(), plates: new Map() };

/** Back along the ports: the flange, and as shares of that the gasket and the head, mm. */
const FLANGE_BACK = 64;
const GASKET_SHARE = 1.45;
const HEAD_SHARE = 2.1;
/** As shares of the radius of the collector's body: a stub outward, and each kind from the one before it. */
const STUB_OUT = 0.9;
const STUB_ALONG = 0.55;
const NEXT_ALONG = 1.15;
/** In the order in which they follow one another down the flow. */
const ALONG: readonly PartKind[] = ['filler', 'plate', 'cone', 'outlet', 'joint'];

/** @param share of the way apart, 0 to 1 */
export function explodedBy(header: Header, parts: readonly ShownPart[], share: number): Exploded {
  if (share === 0) return ASSEMBLED;
  const whole = fullyExploded(header, parts);
  const shrunk = <K>(map: ReadonlyMap<K, Vec3>) => new Map([...map].map(([k, v]) => [k, scale(v, share)]));
  return {
    parts: shrunk(whole.parts),
    runners: shrunk(whole.runners),
    merges: shrunk(whole.merges),
    plates: new Map(
      [...whole.plates].map(([id, { flange, gasket, head }]) => [
        id,
        { flange: scale(flange, share), gasket: scale(gasket, share), head: scale(head, share) },
      ]),
    ),
  };
}

const fullyExploded = rememberedOfTwo((header: Header, shown: readonly ShownPart[]): Exploded => {
  const parts = new Map<string, Vec3>();
  const plateWays: Map<string, { flange: Vec3; gasket: Vec3; head: Vec3 }> = new Map();
  for (const plate of plates(header)) {
    const back = (share: number) => scale(plate.normal, -FLANGE_BACK * share);
    plateWays.set(plate.id, { flange: back(1), gasket: back(GASKET_SHARE), head: back(HEAD_SHARE) });
  }
  for (const { id, of, kind } of shown) if (kind === 'flange') parts.set(id, plateWays.get(of.id)?.flange ?? NOWHERE);

  const { runners, merges } = carried(header, shown, parts);
  return { parts, runners, merges, plates: plateWays };
});

/** Collectors after one another: each is carried by its runners, and carries those that leave it. */
function carried(header: Header, shown: readonly ShownPart[], parts: Map<string, Vec3>) {
  const runners = new Map<string, Vec3>();
  const merges = new Map<string, Vec3>();
  const left = new Set(header.merges.keys());
  const entering = (id: string) => header.runners.filter(({ runner }) => runner.to.merge === id);
  const isReady = (id: string) =>
    entering(id).every(({ runner: { from } }) => !('merge' in from) || !left.has(from.merge));
  while (left.size > 0) {
    const id = [...left].find(isReady) ?? [...left][0]!;
    left.delete(id);
    const merge = header.merges.get(id)!;
    const ways = entering(id).map(({ runner }) => runners.get(runner.id) ?? NOWHERE);
    const base = ways.length > 0 ? scale(ways.reduce(add), 1 / ways.length) : NOWHERE;
    if (base.some((x) => x !== 0)) merges.set(id, base);
    const end = spreadCollector(
      merge,
      shown.filter(({ of }) => of.kind === 'merge' && of.id === id),
      base,
      parts,
    );
    for (const { runner } of header.runners)
      if ('merge' in runner.from && runner.from.merge === id && end.some((x) => x !== 0)) runners.set(runner.id, end);
  }
  return { runners, merges };
}

/** @returns how far what hangs on its outlet is carried */
function spreadCollector(
  { body, outlet }: ResolvedMerge,
  own: readonly ShownPart[],
  base: Vec3,
  parts: Map<string, Vec3>,
): Vec3 {
  if (own.length === 0) return base;
  const radius = body.startRadius;
  const kinds = ALONG.filter((kind) => own.some((part) => part.kind === kind));
  for (const part of own) {
    const rank = kinds.indexOf(part.kind);
    if (rank >= 0) {
      parts.set(part.id, addScaled(base, outlet.direction, (STUB_ALONG + (rank + 1) * NEXT_ALONG) * radius));
      continue;
    }
    const out = reject(sub(middleOfPart(part), body.position), outlet.direction);
    const way = dot(out, out) > 1 ? scale(unit(out), STUB_OUT * radius) : NOWHERE;
    parts.set(part.id, addScaled(add(base, way), outlet.direction, STUB_ALONG * radius));
  }
  return addScaled(base, outlet.direction, (STUB_ALONG + (kinds.length + 1) * NEXT_ALONG) * radius);
}
