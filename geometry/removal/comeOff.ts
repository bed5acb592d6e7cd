/**
 * A header taken off piece by piece: whichever piece comes off with the others in place goes first, then the next, until none is
 * left or none comes. Surroundings and the pieces still in place are what is in the way, but not the ground: for a way out below
 * the vehicle is raised. At rest, bare and cold. mm.
 */

import type { Vec3 } from '../../shared/vec3';
import type { Meshes } from '../check/meshes';
import { obstaclesOf } from '../check/obstacles';
import { calledA } from '../check/words';
import type { Header } from '../header/resolve';
import { scale } from '../vector';
import { type Body, bodyOf } from './body';
import { ROUGH } from './gap';
import { type Left, leaveBay } from './leave';
import { askedAt, type Counter, moved, roomAlong } from './motion';
import { type Assembly, assemblyOf, type Loose, type Members } from './pieces';
import { AT_REST } from './pose';
import type { RemovalPose } from './report';
import { heldBy, ROOM, type Slide, slideOff } from './slide';
import { mergeSolid, plateSolids, tubeSolids } from './solids';
import { isGround, type Standing, standingOf, standingPart } from './space';

export type Taken = {
  readonly members: Members;
  readonly slide: Slide;
  /** Null where it does not slide. */
  readonly left: Left | null;
  readonly path: readonly RemovalPose[];
  readonly room: { readonly gap: number; readonly by: string } | null;
  /** Its way leads through the ground, as it is with the vehicle standing on it. */
  readonly raised: boolean;
};

export type Undone = {
  readonly assembly: Assembly;
  /** One for each piece of the assembly. */
  readonly pieces: readonly Taken[];
  /** Those that came off, in turn. */
  readonly order: readonly number[];
};

export type Wish = { readonly seed: number; readonly budget: number };

/** Of surfaces that already touch after the first move, so much may be lost before that counts as meeting, mm. */
const TOUCHING = 0.1;

export type Bay = {
  readonly header: Header;
  readonly around: readonly Standing[];
  readonly ground: readonly Standing[];
  readonly missing: readonly string[];
  standing(kind: 'runner' | 'merge' | 'flange', id: string, runners: readonly string[]): Standing | null;
};

export function bayOf(header: Header, meshes: Meshes): Bay {
  const { obstacles, missing } = obstaclesOf(header, meshes);
  const known = new Map<string, Standing | null>();
  return {
    header,
    around: obstacles.filter((o) => !isGround(o.surrounding)).map(standingOf),
    ground: obstacles.filter((o) => isGround(o.surrounding)).map(standingOf),
    missing: missing.filter((m) => !isGround(m)).map((m) => m.file),
    standing(kind, id, runners) {
      const key = `${kind} ${id} ${kind === 'flange' ? runners.join() : ''}`;
      const kept = known.get(key);
      if (kept !== undefined) return kept;
      const none = { runners: [], merges: [], flanges: [] };
      const members = { ...none, [`${kind}s`]: [id] };
      const solids =
        kind === 'flange'
          ? plateSolids(header, id, runners)
          : kind === 'merge'
            ? [mergeSolid(header.merges.get(id)!)]
            : tubeSolids(header.runners.find((r) => r.runner.id === id)!);
      const body = bodyOf(header, members, null, runners);
      const made = body && standingPart(id, solids, body);
      known.set(key, made);
      return made;
    },
  };
}

/** @param roomWanted whether the least room along each path is told too, which takes as long again */
export function comeOff(bay: Bay, loose: readonly Loose[], wish: Wish, roomWanted: boolean): Undone {
  const assembly = assemblyOf(bay.header, loose);
  const { pieces } = assembly;
  const there = new Set(pieces.keys());
  const taken: Taken[] = [];
  const order: number[] = [];
  for (let again = true; again && there.size > 0; ) {
    again = false;
    for (const k of [...there]) {
      const found = takeOff(bay, assembly, k, there, wish, roomWanted);
      taken[k] = found;
      if (!found.left?.ok) continue;
      there.delete(k);
      order.push(k);
      again = true;
    }
  }
  return { assembly, pieces: taken, order };
}

function takeOff(
  bay: Bay,
  { pieces, links }: Assembly,
  k: number,
  there: ReadonlySet<number>,
  { seed, budget }: Wish,
  roomWanted: boolean,
): Taken {
  const { header } = bay;
  const members = pieces[k]!;
  const others = [...there].filter((o) => o !== k).flatMap((o) => standingOfPiece(bay, pieces[o]!));
  const standing = [...bay.around, ...others];
  const counter: Counter = { left: budget };
  const held = heldBy(
    links,
    k,
    (o) => o !== k && there.has(o),
    (o) => nameOf(pieces[o]!),
  );
  const slide = slideOff(header, members, held, standing, counter);
  if (!slide.ok) return { members, slide, left: null, path: [AT_REST], room: null, raised: false };
  const body = bodyOf(header, members)!;
  const asked = askedAt(body, slide.pose, standing, ROOM, -TOUCHING, ROUGH);
  const first: Vec3[] = slide.axis ? [slide.axis] : [];
  for (const m of members.merges) {
    const { axis } = header.merges.get(m)!.body;
    first.push(axis, scale(axis, -1));
  }
  const left = leaveBay(body, slide.pose, asked, first, counter, seed);
  const path = slide.axis ? [AT_REST, slide.pose] : [AT_REST];
  if (left.ok) path.push(...left.path.slice(1));
  const room = roomWanted ? roomOf(bay, members, slide, path, standing) : null;
  const raised = left.ok && meets(body, path, bay.ground);
  return { members, slide, left, path, room, raised };
}

/** Measured in so many places at most; far more than any path needs. */
const GROUND_BUDGET = 20_000;

function meets(body: Body, path: readonly RemovalPose[], ground: readonly Standing[]): boolean {
  const asked = askedAt(body, AT_REST, ground, ROOM);
  const counter: Counter = { left: GROUND_BUDGET };
  return path.some((to, i) => i > 0 && moved(body, path[i - 1]!, to, asked, counter).share < 1);
}

/** Along the slide a plate counts as its outer face, as it did when it was checked. */
function roomOf(bay: Bay, members: Members, slide: Slide, path: readonly RemovalPose[], standing: readonly Standing[]) {
  const sliding = slide.axis ? roomAlong(bodyOf(bay.header, members, slide.axis)!, path.slice(0, 2), standing) : null;
  const leaving = roomAlong(bodyOf(bay.header, members)!, slide.axis ? path.slice(1) : path, standing);
  if (!sliding || !leaving) return sliding ?? leaving;
  return leaving.gap < sliding.gap ? leaving : sliding;
}

const standingOfPiece = (bay: Bay, { runners, merges, flanges }: Members): Standing[] =>
  [
    ...runners.map((id) => bay.standing('runner', id, runners)),
    ...merges.map((id) => bay.standing('merge', id, runners)),
    ...flanges.map((id) => bay.standing('flange', id, runners)),
  ].filter((s): s is Standing => s !== null);

/** Short, for words. */
export function nameOf({ runners, merges }: Members): string {
  const named = [
    ...(runners.length > 0 ? [`${runners.length > 1 ? 'runners' : 'runner'} ${listed(runners)}`] : []),
    ...(merges.length > 0
      ? [merges.length > 1 ? `collectors ${listed(merges)}` : calledA('collector', merges[0]!)]
      : []),
  ];
  return named.join(' with ');
}

export const listed = (ids: readonly string[]): string =>
  ids.length < 2 ? ids.join('') : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
