/**
 * Which legs the bends of a runner keep: over the whole runner by dynamic programming, since a leg kept ahead of a bend is not to
 * be had behind it. Fewest pieces, then joints clear of bends, then least bar, then most room for the torch: with this tube
 * alone, then with all the others there.
 */
import type { TorchReach } from '../../../../geometry';
import type { Legs } from './stock';
import { type Limits, nearness, type Straight, type StraightCut, sliver, waysToMake } from './straight';

/** What is made little of, the first first. */
type Cost = readonly [pieces: number, near: number, bar: number, alone: number, inPlace: number, offMiddle: number];
const NOTHING: Cost = [0, 0, 0, 0, 0, 0];
/** Costs nearer than this tie: a micrometre. */
const TIE = 1e-6;

/** Degrees round the tube where a torch has room. */
type Torch = Pick<TorchReach, 'free' | 'freeInPlace'>;

type Choice = { readonly cost: Cost; readonly cuts: readonly StraightCut[] };

/** One straight more than bends: all but what the bends' legs decide. */
export type Given = Omit<Straight, 'before' | 'behind'>;

/**
 * @param ways of each bend, the legs that it could keep
 * @param torch at a joint in a straight
 * @returns one cut a straight
 */
export function chooseCuts(
  straights: readonly Given[],
  ways: readonly (readonly Legs[])[],
  limits: Limits,
  torch: (straight: number, joint: number) => Torch,
): readonly StraightCut[] {
  let reached: readonly Choice[] = [{ cost: NOTHING, cuts: [] }];
  let from: readonly (number | null)[] = [null];
  for (const [i, given] of straights.entries()) {
    const onto: readonly (Legs | null)[] = ways[i] ?? [null];
    reached = onto.map((legs) =>
      least(
        reached.map((choice, k) => {
          const straight = { ...given, before: from[k]!, behind: legs ? legs[0] : null };
          const made = bestOf(straight, limits, (joint) => torch(i, joint));
          return { cost: sum(choice.cost, made.cost), cuts: [...choice.cuts, made.cut] };
        }),
      ),
    );
    from = onto.map((legs) => (legs ? legs[1] : null));
  }
  return least(reached).cuts;
}

function bestOf(straight: Straight, limits: Limits, torch: (joint: number) => Torch) {
  const made = waysToMake(straight, limits).map((cut) => {
    const near = cut.joints.reduce(
      (all, joint) => all + nearness(straight, joint, limits.setback),
      cut.lost ** 2 + sliver(cut, limits),
    );
    return { cut, cost: [cut.bar > 0 ? 1 : 0, near, cut.bar, 0, 0, 0] as Cost };
  });
  const [first] = [...made].sort((a, b) => compare(a.cost, b.cost));
  // The torch is asked only of those that all else leaves.
  return least(
    made
      .filter(({ cost }) => compare(cost, first!.cost) === 0)
      .map(({ cut, cost: [pieces, near, bar] }) => {
        const off = cut.joints.reduce((all, joint) => all + Math.abs(joint - straight.length / 2), 0);
        const alone = cut.joints.reduce((all, joint) => all + 360 - torch(joint).free, 0);
        const inPlace = cut.joints.reduce((all, joint) => all + 360 - torch(joint).freeInPlace, 0);
        return { cut, cost: [pieces, near, bar, alone, inPlace, off] as Cost };
      }),
  );
}

const sum = (a: Cost, b: Cost): Cost => a.map((part, k) => part + b[k]!) as unknown as Cost;

function compare(a: Cost, b: Cost): number {
  for (let k = 0; k < a.length; k++) if (Math.abs(a[k]! - b[k]!) > TIE) return a[k]! - b[k]!;
  return 0;
}

const least = <T extends { readonly cost: Cost }>(list: readonly T[]): T =>
  list.reduce((best, one) => (compare(one.cost, best.cost) < 0 ? one : best));
