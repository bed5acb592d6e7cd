/**
 * Whether the header comes off its studs and out of the bay: for each piece that is welded together the way, or where it stops and
 * by what, and then which joint to leave loose. The same asks get the same answer. mm; at rest, bare and cold.
 */
import type { Meshes } from '../check/meshes';
import { type Say, sayIn } from '../check/words';
import type { Header } from '../header/resolve';
import { bayOf, comeOff, listed, nameOf, type Taken } from './comeOff';
import { jointAdvice } from './joints';
import type { RemovalPiece, RemovalReport } from './report';
import { stoppedWords, wayWords } from './words';

export type RemovalOptions = {
  /** Of the chance by which ways are sought; the same seed gives the same answer. */
  readonly seed?: number;
  /** Places that are measured for one piece, at most; joints are tried with a part of it. Default 14 000. */
  readonly budget?: number;
};

const BUDGET = 14_000;
const JOINT_SHARE = 0.2;

/** Empty where nothing is laid. @param meshes by file name; a piece's message says which are absent here and were left out */
export function removalReport(
  header: Header,
  meshes: Meshes,
  { seed = 1, budget = BUDGET }: RemovalOptions = {},
): RemovalReport {
  if (!header.runners.some((r) => r.centerline)) return { pieces: [], joints: [] };
  const say = sayIn(header.design.display);
  const bay = bayOf(header, meshes);
  const undone = comeOff(bay, [], { seed, budget }, true);
  const aside = asideWords(header, bay.missing);
  const single = undone.pieces.length === 1;
  const off = undone.order.length === undone.pieces.length;
  const wish = { seed, budget: Math.ceil(JOINT_SHARE * budget) };
  const joints = off ? [] : jointAdvice(bay, wish, say);
  const remedy = off || joints.some((j) => j.helps) ? '' : NO_JOINT_HELPS;
  return { pieces: undone.pieces.map((p) => pieceOf(p, single, { aside, remedy }, say)), joints };
}

const NO_JOINT_HELPS =
  ' No joint left loose that was tried helps: move what is in the way or take it off first, or lay the runners further from it.';

type After = { readonly aside: string; readonly remedy: string };

function pieceOf(taken: Taken, single: boolean, { aside, remedy }: After, say: Say): RemovalPiece {
  const { members, slide, left, path, room, raised } = taken;
  const name = single ? 'The header' : `The piece of ${nameOf(members)}`;
  const stopped = !slide.ok
    ? { by: slide.by, after: slide.after, at: slide.at }
    : left && !left.ok
      ? { by: left.stop.by, after: left.after, at: left.stop.at }
      : null;
  const drawn =
    slide.ok && slide.axis ? `${members.flanges.length > 0 ? 'slides' : 'is drawn'} off by ${say(slide.far)} and ` : '';
  const beside = room ? ` The least room is ${say(room.gap)}, beside ${room.by}.` : '';
  const message = stopped
    ? `${name} ${stoppedWords(taken, say)}.${remedy}${aside}`
    : `${name} ${drawn}leaves ${wayWords(taken)}.${beside}${aside}`;
  const leaves = left?.ok ?? false;
  return { ...members, slides: slide.ok, leaves, path, room, ...(raised && { raised }), stopped, message };
}

/** What was not looked at must not be taken for free. */
function asideWords(header: Header, missing: readonly string[]): string {
  const bare = header.runners.filter((r) => !r.centerline).map((r) => r.runner.id);
  return [
    ...(bare.length > 0 ? [` Not laid yet, and left out: ${listed(bare)}.`] : []),
    ...(missing.length > 0 ? [` Not measured against ${listed(missing)}, which has not been read.`] : []),
  ].join('');
}
