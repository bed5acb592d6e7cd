/**
 * Numbers of a runner's shape, typed: each is asked of the hand, as a pull in the 3D view would be, so that the header
 * follows and what cannot be is said. mm and degrees.
 */
import {
  type BendNumber,
  bendNumber,
  type Held,
  movePoint,
  pathOf,
  radiiOf,
  setBendNumber,
  withAxis,
} from '../../../geometry';
import { checked } from '../../../shared/design/edit';
import type { Design, Runner } from '../../../shared/design/types';
import { documents } from '../document';
import { takeHold, useHand } from '../hand/hand';
import { tell } from '../notices';
import { applyEdit, refusalWords } from './applyEdit';

/** Interior points that differ, and those beside them that the number rests on. */
export function heldPoints(before: Runner, after: Runner): number[] {
  const [from, to] = [before.points ?? [], after.points ?? []];
  if (from.length !== to.length) return to.slice(1, -1).map((_, i) => i + 1);
  return to.flatMap((p, i) => (i > 0 && i < to.length - 1 && p.some((x, k) => x !== from[i]![k]) ? [i] : []));
}

const NOTHING_NEAR =
  'Nothing near gives that: the bends beside it are held by the port or the collector. Move a bend in the picture, or add one.';

type Asked = {
  readonly runner: string;
  /** What to ask for; `extra` is added to the number typed, as what follows takes some of it back. */
  make(from: Design, extra: number): Design;
  /** How often to ask: a point is held where it is put, other numbers rest on points that may follow. */
  readonly most: number;
  /** What keeps it from being had where no rule does. */
  readonly otherwise: string;
  /** By how much a design misses what was typed, in the number's own unit. */
  miss(design: Design): number;
  readonly label: string;
};

/** A hundredth of a mm or degree is what the tables show. */
const SHOWN = 0.005;
/** Each ask closes most of what the last one missed. */
const MOST_ASKS = 12;
/** Asking for so many times the change beyond what was typed is wild. */
const FARTHEST = 4;
/** Asking for a degree more brings less than this: a rule stands in the way. */
const FLAT = 0.02;

type Answered = { readonly extra: number; readonly off: number };

/**
 * The secant method on answers: each ask is the last one corrected by what it missed. Keeps the best answer, which is
 * nothing (null) as long as none comes nearer than where it all began.
 * @param away by how much the number is missed before anything is asked
 */
function startSearch(away: number, most: number) {
  const answers: Answered[] = [];
  let extra = 0;
  let best: { readonly design: Design | null; readonly off: number } = { design: null, off: away };
  return {
    get best() {
      return best;
    },
    /** @returns what to add to the number next; null: enough */
    answered(design: Design, off: number): number | null {
      if (Math.abs(off) < Math.abs(best.off) - SHOWN) best = { design, off };
      answers.push({ extra, off });
      if (Math.abs(off) < SHOWN) best = { design, off };
      if (Math.abs(off) < SHOWN || answers.length >= most) return null;
      const wish = nextExtra(answers);
      extra = Math.min(Math.max(wish, -FARTHEST * Math.abs(away)), FARTHEST * Math.abs(away));
      return Number.isFinite(wish) ? extra : null;
    },
  };
}

/** What stops the number makes the answers flat, and the search ends. */
function nextExtra(answers: readonly Answered[]): number {
  const [before, now] = [answers.at(-2), answers.at(-1)!];
  if (!before) return now.extra + now.off;
  const slope = (before.off - now.off) / (now.extra - before.extra);
  return Math.abs(slope) > FLAT ? now.extra + now.off / slope : Number.NaN;
}

/** Asks the hand until the tables read what was typed, or something stops it. @returns why not, or null */
function askHand({ runner: id, make, most, otherwise, miss, label }: Asked): string | null {
  const { settled } = documents.store.getState();
  if (!settled) return 'Open a design first.';
  const before = settled.runners.find((runner) => runner.id === id);
  if (!before?.points) return `${id} is not laid yet.`;
  if (before.locked) return `${id} is locked: unlock it first.`;
  const first = make(settled, 0);
  if (first === settled) return NOTHING_NEAR;
  const edited = checked(first);
  if (!edited.ok) return refusalWords(edited.refusal);
  const after = first.runners.find((runner) => runner.id === id)!;
  const held: Held = { kind: 'points', runner: id, points: heldPoints(before, after) };
  const gesture = takeHold(held);
  if (!gesture) return 'The design cannot be changed just now.';

  const search = startSearch(miss(settled), most);
  const stop = useHand.subscribe(({ held: still, resistance, coming }) => {
    // Something else ended the gesture.
    if (still !== held) return stop();
    if (coming) return;
    const { design } = documents.store.getState();
    const extra = search.answered(design!, miss(design!));
    const next = extra === null ? gesture.from : make(gesture.from, extra);
    if (next !== gesture.from) return gesture.ask(next);
    stop();
    const { best } = search;
    queueMicrotask(() => {
      if (best.design === design) gesture.commit(label);
      else {
        gesture.bail();
        // An answer that holds already; asked for again, the hand might come by another way to another one.
        if (best.design) documents.apply(best.design, label);
      }
    });
    if (Math.abs(best.off) < SHOWN) return;
    const why = resistance ? `Stopped by ${resistance.rules.slice(0, 2).join(', and ')}.` : otherwise;
    tell(best.design ? 'That is as near as it can come' : 'That cannot be had here', why);
  });
  gesture.ask(first);
  return null;
}

/** Sets a number of a runner's bend table, as far as it can be had. @returns why not, or null */
export function setRow(id: string, number: BendNumber, value: number, label: string): string | null {
  const turns = number.what === 'clocking' || number.what === 'rotation';
  return askHand({
    runner: id,
    most: MOST_ASKS,
    otherwise: 'What follows it takes it back: move a bend in the picture, or unlock a runner.',
    make: (from, extra) => setBendNumber(from, id, number, value + extra),
    miss(design) {
      const off = value - (bendNumber(design, id, number) ?? value);
      return turns ? off - 360 * Math.round(off / 360) : off;
    },
    label,
  });
}

/** The radius of one bend as the bender sees it, all of its points alike. @returns why not, or null */
export const setBendRadius = (id: string, bend: number, radius: number, label: string): string | null =>
  applyEdit((design) => {
    const range = pathOf(design, id).bends[bend];
    const points = range ? Array.from({ length: range.last - range.first + 1 }, (_, k) => range.first + k) : [];
    return checked(withRadii(design, id, points, radius));
  }, label);

/** Moves one point along one axis, as far as its end lets it. @returns why not, or null */
export const setCoordinate = (
  id: string,
  index: number,
  axis: 0 | 1 | 2,
  value: number,
  label: string,
): string | null => {
  const pointOf = (design: Design) => design.runners.find((runner) => runner.id === id)!.points![index]!;
  return askHand({
    runner: id,
    most: 1,
    otherwise: 'The first and the last bend ride on the line of their port or collector.',
    make: (from, extra) => movePoint(from, id, index, withAxis(pointOf(from), axis, value + extra)),
    miss: (design) => value - pointOf(design)[axis],
    label,
  });
};

/** A radius of its own for some of a runner's points; where all are the tooling's again, the runner has none of its own. */
export function withRadii(design: Design, id: string, points: readonly number[], radius: number | undefined): Design {
  const index = design.runners.findIndex((runner) => runner.id === id);
  const { radii: _, ...runner } = design.runners[index]!;
  const tooling = design.tooling[runner.tube]!;
  const before = radiiOf(design.runners[index]!, runner.points ?? [], tooling);
  const radii = before.map((r, i) => (points.includes(i + 1) ? (radius ?? tooling.centerlineRadius) : r));
  const own = radii.some((r) => r !== tooling.centerlineRadius);
  const next: Runner = own ? { ...runner, radii } : runner;
  return { ...design, runners: design.runners.map((r, i) => (i === index ? next : r)) };
}
