/**
 * Which legs the bends of a runner keep: over the whole runner by dynamic programming, since a leg kept ahead of a bend is not to
 * be had behind it. Fewest pieces, then joints clear of bends, then least bar, then most room for the torch.
 */
import type { Legs } from './stock';
import { type Limits, nearness, type Straight, type StraightCut, waysToMake } from './straight';

/** What is made little of, the first first. */
type Cost = readonly [pieces: number, nearness: number, bar: number, noTorch: number, offMiddle: number];
const NOTHING: Cost = [0, 0, 0, 0, 0];
/** Costs nearer than this tie: a micrometre. */
const TIE = 1e-6;

type Choice = { readonly cost: Cost; readonly cuts: readonly StraightCut[] };

/** One straight more than bends: all but what the bends' legs decide. */
export type Given = Omit<Straight, 'before' | 'behind'>;

/**
 * @param ways of each bend, the legs that it could keep
 * @param torch degrees round the tube where there is no room, at a joint in a straight
 * @returns one cut a straight
 */
export function chooseCuts(
  straights: readonly Given[],
  ways: readonly (readonly Legs[])[],
  limits: Limits,
  torch: (straight: number, joint: number) => number,
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

function bestOf(straight: Straight, limits: Limits, torch: (joint: number) => number) {
  const made = waysToMake(straight, limits).map((cut) => {
    const near = cut.joints.reduce((all, joint) => all + nearness(straight, joint, limits.setback), cut.lost ** 2);
    return { cut, cost: [cut.bar > 0 ? 1 : 0, near, cut.bar, 0, 0] as Cost };
  });
  const [first] = [...made].sort((a, b) => compare(a.cost, b.cost));
  // The torch is asked only of those that all else leaves.
  return least(
    made
      .filter(({ cost }) => compare(cost, first!.cost) === 0)
      .map(({ cut, cost: [pieces, near, bar] }) => {
        const off = cut.joints.reduce((all, joint) => all + Math.abs(joint - straight.length / 2), 0);
        const noTorch = cut.joints.reduce((all, joint) => all + torch(joint), 0);
        return { cut, cost: [pieces, near, bar, noTorch, off] as Cost };
      }),
  );
}

const sum = (a: Cost, b: Cost): Cost => [a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3], a[4] + b[4]];

function compare(a: Cost, b: Cost): number {
  for (let k = 0; k < a.length; k++) if (Math.abs(a[k]! - b[k]!) > TIE) return a[k]! - b[k]!;
  return 0;
}

const least = <T extends { readonly cost: Cost }>(list: readonly T[]): T =>
  list.reduce((best, one) => (compare(one.cost, best.cost) < 0 ? one : best));
