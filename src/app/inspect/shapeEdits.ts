/**
 * Numbers of a runner's shape, typed: each is asked of the hand, as a pull in the 3D view would be, so that the header
 * follows and what cannot be is said. mm and degrees.
 */
import { type BendNumber, type Held, movePoint, pathOf, radiiOf, setBendNumber } from '../../../geometry';
import { checked } from '../../../shared/design/edit';
import type { Design, Runner } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
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

/** Asks the hand for a design in which one runner's points are moved. @returns why not, or null */
export function askForShape(id: string, make: (design: Design) => Design, label: string): string | null {
  const { settled } = documents.store.getState();
  if (!settled) return 'Open a design first.';
  const before = settled.runners.find((runner) => runner.id === id);
  if (!before?.points) return `${id} is not laid yet.`;
  if (before.locked) return `${id} is locked: unlock it first.`;
  const asked = make(settled);
  if (asked === settled) return NOTHING_NEAR;
  const edited = checked(asked);
  if (!edited.ok) return refusalWords(edited.refusal);
  const after = asked.runners.find((runner) => runner.id === id)!;
  const held: Held = { kind: 'points', runner: id, points: heldPoints(before, after) };
  const gesture = takeHold(held);
  if (!gesture) return 'The design cannot be changed just now.';
  gesture.ask(asked);
  // What stopped it is known when the last answer is in; it is forgotten when the hand lets go.
  let stopped: readonly string[] = [];
  const forget = useHand.subscribe(({ resistance }) => {
    if (resistance) stopped = resistance.rules;
  });
  void gesture.commitWhenAnswered(label).then(() => {
    forget();
    if (stopped.length > 0) tell('That is as near as it can come', `Stopped by ${stopped.slice(0, 2).join(', and ')}.`);
  });
  return null;
}

export const setRow = (id: string, row: BendNumber, value: number, label: string): string | null =>
  askForShape(id, (design) => setBendNumber(design, id, row, value), label);

/** The radius of one bend as the bender sees it, all of its points alike. @returns why not, or null */
export const setBendRadius = (id: string, bend: number, radius: number, label: string): string | null =>
  applyEdit((design) => {
    const range = pathOf(design, id).bends[bend];
    const points = range ? Array.from({ length: range.last - range.first + 1 }, (_, k) => range.first + k) : [];
    return checked(withRadii(design, id, points, radius));
  }, label);

/** Moves one point along one axis, as far as its end lets it. */
export const setCoordinate = (
  id: string,
  index: number,
  axis: 0 | 1 | 2,
  value: number,
  label: string,
): string | null =>
  askForShape(
    id,
    (design) => {
      const point = design.runners.find((runner) => runner.id === id)!.points![index]!;
      return movePoint(design, id, index, point.map((x, k) => (k === axis ? value : x)) as unknown as Vec3);
    },
    label,
  );

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
