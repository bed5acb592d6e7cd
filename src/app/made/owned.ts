/**
 * Whose the made parts are, and whether they are still what the header now drawn would have: an owner that was changed is
 * drawn by its quick picture until its parts are made anew. One that only moved takes its parts along.
 */
import {
  type Header,
  type PartOwner,
  type Pose,
  type ResolvedMerge,
  type ResolvedPort,
  stepDepthAt,
  tubeLine,
} from '../../../geometry';
import { remembered } from '../../../shared/remember';
import type { ShownPart } from './shape';

/** As in `viewState`: `merge/m1`. */
export type OwnerKey = `${PartOwner['kind']}/${string}`;
export const ownerKey = ({ kind, id }: PartOwner): OwnerKey => `${kind}/${id}`;

export type Owned = {
  readonly of: PartOwner;
  /** The very same for as long as they are. */
  readonly parts: readonly ShownPart[];
  /** Where their owner stood when they were made and where it stands now; null for what does not ride along. */
  readonly ride: { readonly from: Pose; readonly to: Pose } | null;
};

export const byOwner = remembered((parts: readonly ShownPart[]): ReadonlyMap<OwnerKey, readonly ShownPart[]> => {
  const groups = new Map<OwnerKey, ShownPart[]>();
  for (const part of parts) {
    const key = ownerKey(part.of);
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return groups;
});

/** The parts that the header would still have, by owner. */
export function stillOwned(
  parts: readonly ShownPart[],
  then: Header | null,
  now: Header,
): ReadonlyMap<OwnerKey, Owned> {
  const owned = new Map<OwnerKey, Owned>();
  if (!then) return owned;
  for (const [key, group] of byOwner(parts)) {
    const { of } = group[0]!;
    const holds = HOLDS[of.kind](of.id, then, now);
    if (holds) owned.set(key, { of, parts: group, ride: holds === true ? null : holds });
  }
  return owned;
}

type Holds = (id: string, then: Header, now: Header) => Owned['ride'] | boolean;

const HOLDS: Record<PartOwner['kind'], Holds> = {
  merge(id, then, now) {
    const [a, b] = [then.merges.get(id), now.merges.get(id)];
    if (!a || !b || (a.merge !== b.merge && build(a) !== build(b)) || widths(a) !== widths(b)) return false;
    if (isFollowed(then, id) !== isFollowed(now, id)) return false;
    return entering(then, id) === entering(now, id) && { from: a.outlet, to: b.outlet };
  },
  port(id, then, now) {
    const [a, b] = [then.ports.get(id), now.ports.get(id)];
    if (!a || !b || (a.port !== b.port && formed(a) !== formed(b))) return false;
    if (leaving(then, [id]) !== leaving(now, [id]) || stepDepthAt(then, id) !== stepDepthAt(now, id)) return false;
    return { from: a.pose, to: b.pose };
  },
  flange(id, then, now) {
    const [a, b] = [then, now].map((header) => header.design.flanges?.find((f) => f.id === id));
    if (!a || !b || a !== b || leaving(then, a.ports) !== leaving(now, a.ports)) return false;
    return a.ports.every((port) => then.ports.get(port)?.port === now.ports.get(port)?.port);
  },
  runner(id, then, now) {
    const [a, b] = [then, now].map((header) => header.runners.find((r) => r.runner.id === id));
    if (!a || !b || a.tube !== b.tube || a.runner !== b.runner) return false;
    return tubeLine(then, a)?.length === tubeLine(now, b)?.length;
  },
};

/** All that a collector's pieces follow from, but for where it stands. */
const build = remembered(({ merge }: ResolvedMerge): string => {
  const { position: _, axis: __, up: ___, placement: ____, ...rest } = merge;
  return JSON.stringify(rest);
});
const widths = ({ pitch, inletOutsideDiameter, wall, material }: ResolvedMerge): string =>
  [pitch, inletOutsideDiameter, wall, material].join();

const formed = remembered(({ port }: ResolvedPort): string => {
  const { position: _, direction: __, up: ___, ...rest } = port;
  return JSON.stringify(rest);
});

const tubeWords = ({ tube }: Header['runners'][number]): string =>
  `${tube.outsideDiameter} ${tube.wall} ${tube.material}`;

const entering = ({ runners }: Header, merge: string): string =>
  runners
    .filter(({ runner }) => runner.to.merge === merge)
    .map((r) => `${r.runner.to.inlet} ${tubeWords(r)}`)
    .join();

/** What nothing leaves ends in a joint. */
const isFollowed = ({ runners }: Header, merge: string): boolean =>
  runners.some(({ runner: { from } }) => 'merge' in from && from.merge === merge);

const leaving = ({ runners }: Header, ports: readonly string[]): string =>
  runners
    .filter(({ runner: { from } }) => 'port' in from && ports.includes(from.port))
    .map((r) => `${(r.runner.from as { port: string }).port} ${tubeWords(r)}`)
    .join();
