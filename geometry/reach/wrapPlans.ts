/**
 * What of every runner may be wrapped so that tools still reach all that they reach bare and the roll passes everywhere, and what
 * is left bare for it. Collectors are not wrapped. mm along the centerlines.
 */
import type { Meshes } from '../check/meshes';
import type { Header } from '../header/resolve';
import type { WrapPlan } from './report';
import { seen } from './scenes';
import { clipped, joined, type Span, without, wrappedSpans } from './spans';
import { type Cuts, cutsFor, together } from './wrapCut';
import { type Bare, bareByPlace } from './wrapNarrow';

/** A band is some 50 mm wide: what is shorter than half of it between two bare stretches cannot be wrapped (common practice). */
const LEAST_WRAPPED = 25;

/** Empty where the design has no wrap. @param meshes by file name, as for `check` */
export function wrapPlans(header: Header, meshes: Meshes = new Map()): WrapPlan[] {
  const { wrap } = header.design;
  if (!wrap) return [];
  const bare = bareByPlace(header, wrap, meshes);
  let cuts: Cuts = new Map([...bare].map(([id, own]) => [id, joined(own.map((b) => b.span))]));
  for (const s of seen(header, meshes, true)) {
    const more = cutsFor(s, cuts);
    for (const [runner, spans] of more)
      for (const span of spans) bare.get(runner)!.push({ span, why: s.spot.place.kind, of: s.spot.place.id });
    cuts = together(cuts, more);
  }
  return header.runners.flatMap((r): WrapPlan[] => {
    if (!r.centerline) return [];
    const { id } = r.runner;
    return [planOf(id, wrappedSpans(r.runner, r.centerline.length), r.centerline.length, bare.get(id) ?? [])];
  });
}

function planOf(runner: string, wrapped: readonly Span[], length: number, found: readonly Bare[]): WrapPlan {
  const own = found.flatMap((b) => clipped([b.span], length).map((span) => ({ ...b, span })));
  const room = without([[0, length]], joined(own.map((b) => b.span)));
  const possible = room.filter(([a, b]) => b - a >= LEAST_WRAPPED);
  // Too short to wrap: bare for the same reason as what lies beside it.
  const slivers = room
    .filter(([a, b]) => b - a < LEAST_WRAPPED)
    .flatMap((span): Bare[] => {
      const beside = own.find((b) => b.span[1] === span[0] || b.span[0] === span[1]);
      return beside ? [{ ...beside, span }] : [];
    });
  const asDrawn = without(possible, wrapped).map((span): Bare => ({ span, why: 'as-drawn', of: runner }));
  return { runner, wrapped, possible, bare: listed([...own, ...slivers, ...asDrawn]) };
}

/** One reason's stretches joined, in order along the tube. */
function listed(bare: readonly Bare[]): WrapPlan['bare'] {
  const reasons = new Map<string, Bare[]>();
  for (const b of bare) reasons.set(`${b.why}|${b.of}`, [...(reasons.get(`${b.why}|${b.of}`) ?? []), b]);
  return [...reasons.values()]
    .flatMap((group) =>
      joined(group.map((b) => b.span)).map(([from, to]) => ({ from, to, why: group[0]!.why, of: group[0]!.of })),
    )
    .sort((a, b) => a.from - b.from || a.to - b.to);
}
