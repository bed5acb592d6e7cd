/**
 * What of a header is welded together, and how the pieces hold to each other: by slip joints, drawn apart along an axis, or by
 * flanges and clamps, which only keep a piece from being pushed into the next. mm, unit vectors.
 */
import type { Flange } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Header } from '../header/resolve';
import { distance } from '../vector';

export type Members = {
  readonly runners: readonly string[];
  readonly merges: readonly string[];
  readonly flanges: readonly string[];
};

export type Link = {
  /** Along the flow, from the piece that gives to the one that takes. */
  readonly axis: Vec3;
  readonly upstream: number;
  readonly downstream: number;
  /** How far the two must be drawn apart, mm; 0 for a flange. */
  readonly overlap: number;
};

export type Assembly = { readonly pieces: readonly Members[]; readonly links: readonly Link[] };

/** A joint that is left loose, beside those the design has. */
export type Loose = {
  readonly at: 'inlets' | 'outlet' | 'end';
  /** A collector, or for `end` a runner. */
  readonly id: string;
  readonly joint: 'slip' | 'flange';
};

/** Tube in tube, of the outside diameter, and never less: common practice, from memory. */
const OVERLAP = 1;
const LEAST_OVERLAP = 38;
export const overlapOf = (outsideDiameter: number): number => Math.max(LEAST_OVERLAP, OVERLAP * outsideDiameter);

/** A collector whose outlet is made to come off ends its piece. */
const PARTS = new Set(['slip', 'band-clamp', 'flange', 'flexible']);

export function assemblyOf(header: Header, loose: readonly Loose[]): Assembly {
  const runners = header.runners.filter((r) => r.centerline);
  const { find, join } = unions();
  const isLoose = (at: Loose['at'], id: string): Loose | undefined => loose.find((l) => l.at === at && l.id === id);
  const links: { up: string; down: string; axis: Vec3; overlap: number }[] = [];
  const part = (up: string, down: string, axis: Vec3, joint: string, diameter: number): void => {
    if (joint !== 'flexible') links.push({ up, down, axis, overlap: joint === 'slip' ? overlapOf(diameter) : 0 });
  };
  for (const { runner, end, tube, start } of runners) {
    const own = `r:${runner.id}`;
    const inlet = isLoose('end', runner.id) ?? isLoose('inlets', runner.to.merge);
    if (inlet && end) part(own, `m:${runner.to.merge}`, end.direction, inlet.joint, tube.outsideDiameter);
    else join(own, `m:${runner.to.merge}`);
    if (!('merge' in runner.from)) continue;
    const { merge } = header.merges.get(runner.from.merge)!;
    const joint = isLoose('outlet', merge.id)?.joint ?? merge.outletJoint ?? 'weld';
    if (PARTS.has(joint)) part(`m:${merge.id}`, own, start.direction, joint, tube.outsideDiameter);
    else join(own, `m:${merge.id}`);
  }
  for (const flange of header.design.flanges ?? []) {
    if (flange.plates === 'separate') continue;
    const own = startingFrom(header, flange);
    for (const id of own.slice(1)) join(`r:${own[0]!}`, `r:${id}`);
  }
  const roots = new Map<string, number>();
  const pieces: { runners: string[]; merges: string[]; flanges: string[] }[] = [];
  const pieceOf = (key: string): number => {
    const root = find(key);
    let index = roots.get(root);
    if (index === undefined) {
      index = pieces.push({ runners: [], merges: [], flanges: [] }) - 1;
      roots.set(root, index);
    }
    return index;
  };
  for (const { runner } of runners) pieces[pieceOf(`r:${runner.id}`)]!.runners.push(runner.id);
  for (const id of header.merges.keys()) pieces[pieceOf(`m:${id}`)]!.merges.push(id);
  for (const flange of header.design.flanges ?? []) {
    const own = startingFrom(header, flange);
    for (const k of new Set(own.map((id) => pieceOf(`r:${id}`)))) pieces[k]!.flanges.push(flange.id);
  }
  return {
    pieces,
    links: links
      .map(({ up, down, axis, overlap }) => ({ upstream: pieceOf(up), downstream: pieceOf(down), axis, overlap }))
      .filter((l) => l.upstream !== l.downstream),
  };
}

/** Runners that are laid and start from a port of the flange. */
const startingFrom = (header: Header, flange: Flange): string[] =>
  header.runners.flatMap(({ runner: { id, from }, centerline }) =>
    centerline && 'port' in from && flange.ports.includes(from.port) ? [id] : [],
  );

function unions(): { find(key: string): string; join(a: string, b: string): void } {
  const parent = new Map<string, string>();
  const find = (key: string): string => {
    const above = parent.get(key);
    return above === undefined ? key : find(above);
  };
  return {
    find,
    join(a, b) {
      const [one, other] = [find(a), find(b)];
      if (one !== other) parent.set(other, one);
    },
  };
}

/** Whether two ways are the same to within what a slip joint gives. */
export const sameWay = (a: Vec3, b: Vec3): boolean => distance(a, b) < SLIP_LEAN;
/** A slip joint can be worked off though drawn 2° askew: common practice, from memory. As a chord. */
const SLIP_LEAN = 0.035;
