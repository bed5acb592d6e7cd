/**
 * What a bender is set to so that the asked angle is left once the tube has sprung back, and the other way, from the user's
 * test bends. Degrees. One test bend: in proportion, since an elastic moment undoes the same share of every angle. Several:
 * straight lines between them, in proportion below the first, straight on beyond the last; never less than the angle itself.
 */
import type { Bender } from '../../../../shared/design/types';

type TestBends = NonNullable<Bender['testBends']>;
type Knot = { readonly set: number; readonly measured: number; readonly count: number };

export type Springback = {
  /** Rising; the inverse of `left`. */
  readonly set: (angle: number) => number;
  /** What is left of a bend that was set so far. */
  readonly left: (set: number) => number;
  /** Test bends set farther that measured no more: each with the one before it. Both count as their mean. */
  readonly contradictions: readonly (readonly [TestBends[number], TestBends[number]])[];
};

export function springback(testBends: TestBends = []): Springback {
  const bends = repeatsAsOne(testBends);
  const contradictions = bends.flatMap((bend, i) => {
    const before = bends[i - 1];
    return before && bend.measured <= before.measured ? [[pair(before), pair(bend)] as const] : [];
  });
  const [first, ...others] = rising(bends);
  const knots = [{ set: 0, measured: 0, count: 0 }, first ?? { set: 1, measured: 1, count: 0 }, ...others];
  return {
    set: (angle) => Math.max(angle, along(knots, 'measured', 'set', angle)),
    left: (set) => Math.min(set, along(knots, 'set', 'measured', set)),
    contradictions,
  };
}

const pair = ({ set, measured }: Knot): TestBends[number] => [set, measured];

/** Sorted by what was set; one that was made several times counts once, by its mean. */
function repeatsAsOne(testBends: TestBends): Knot[] {
  const sorted = testBends.map(([set, measured]): Knot => ({ set, measured, count: 1 })).sort((a, b) => a.set - b.set);
  const found: Knot[] = [];
  for (const bend of sorted) {
    const last = found.at(-1);
    if (last?.set === bend.set) found[found.length - 1] = mean(last, bend);
    else found.push(bend);
  }
  return found;
}

/** Neighbours that contradict each other become their mean, until none do. */
function rising(bends: readonly Knot[]): Knot[] {
  const found: Knot[] = [];
  for (let bend of bends) {
    for (let last = found.at(-1); last && bend.measured <= last.measured; last = found.at(-1)) {
      bend = mean(last, bend);
      found.pop();
    }
    found.push(bend);
  }
  return found;
}

function mean(a: Knot, b: Knot): Knot {
  const count = a.count + b.count;
  const of = (key: 'set' | 'measured'): number => (a[key] * a.count + b[key] * b.count) / count;
  return { set: of('set'), measured: of('measured'), count };
}

function along(knots: readonly Knot[], from: 'set' | 'measured', to: 'set' | 'measured', at: number): number {
  const beyond = knots.findIndex((knot, i) => i > 0 && at <= knot[from]);
  const end = beyond > 0 ? beyond : knots.length - 1;
  const [a, b] = [knots[end - 1]!, knots[end]!];
  return a[to] + ((at - a[from]) * (b[to] - a[to])) / (b[from] - a[from]);
}
