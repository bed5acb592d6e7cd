/**
 * Which cylinders come together first on the way to each collector, from the firing order: those whose pulses are
 * farthest apart, 360° where the order has such pairs. Crank degrees.
 */
import { bestSets, leastApart } from '../../shared/engine/firingOrder';
import { type EngineForm, joinedFirst } from '../../shared/engine/form';

/** Cylinders that one first merge joins. */
export type JoinedFirst = {
  readonly merge: string;
  readonly collector: string;
  readonly cylinders: readonly number[];
  /** Between the two of them that fire nearest to each other; 360 is the most that a pair can have. */
  readonly apart: number;
};

export type Joining = {
  readonly collector: string;
  /** Empty where all cylinders go straight to the collector. */
  readonly first: readonly JoinedFirst[];
  readonly cylinders: readonly number[];
  /** Ways to join them that are as good by the firing order; the one whose cylinders stand nearest together is taken. */
  readonly equallyGood: number;
};

/** Expects a form without problems. */
export function joiningOf(form: EngineForm): Joining[] {
  const size = joinedFirst(form.arrangement);
  return form.collectors.map(({ cylinders }, i): Joining => {
    const collector = form.collectors.length === 1 ? 'collector' : `collector ${i + 1}`;
    if (size === null) return { collector, first: [], cylinders, equallyGood: 1 };
    const ways = bestSets(form.firingOrder, cylinders, size);
    const way = [...ways].sort((a, b) => spanOf(form, a) - spanOf(form, b))[0]!;
    const first = way.map((set): JoinedFirst => {
      const inOrder = [...set].sort((a, b) => a - b);
      return {
        merge: `merge ${inOrder.join('-')}`,
        collector,
        cylinders: inOrder,
        apart: leastApart(form.firingOrder, set),
      };
    });
    return { collector, first, cylinders, equallyGood: ways.length };
  });
}

/** How far along their banks the cylinders that are joined stand from each other, in all. */
function spanOf({ banks }: EngineForm, way: readonly (readonly number[])[]): number {
  const place = new Map(banks.flatMap((bank) => bank.cylinders.map((c, i) => [c, bank.firstPort[0] + i * bank.pitch])));
  return way.reduce((sum, set) => {
    const along = set.map((c) => place.get(c)!);
    return sum + Math.max(...along) - Math.min(...along);
  }, 0);
}
