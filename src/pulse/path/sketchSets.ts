/** How a sketch's cylinders come together: which end in one collector, and which of them join first, by the firing order. */
import { insist, type Refusal } from '../../../shared/design/refusal';
import type { Design, HeaderSketch } from '../../../shared/design/types';
import { collectorSets } from '../../../shared/engine/collectorSets';
import { bestSets } from '../../../shared/engine/firingOrder';
import { joinedFirst } from '../../../shared/engine/form';
import { banksOf } from './engineOf';

export type SketchSet = {
  readonly cylinders: readonly number[];
  /** Those that join before the collector; empty where all go straight to it. */
  readonly first: readonly (readonly number[])[];
};

/**
 * One collector a bank, as for a new header. Those join first that fire farthest apart; of several ways as good, the one whose cylinders
 * stand nearest together along the bank.
 * @throws DesignError where the arrangement does not part the cylinders, or the firing order that it needs is not given
 */
export function sketchSets({ arrangement }: Pick<HeaderSketch, 'arrangement'>, design: Design): SketchSet[] {
  const sets = collectorSets(banksOf(design), arrangement);
  const size = joinedFirst(arrangement);
  if (size === null) return sets.map((cylinders) => ({ cylinders, first: [] }));
  const order = design.engine?.firingOrder;
  insist(problems(sets, size, order));
  return sets.map((cylinders) => {
    const ways = bestSets(order!, cylinders, size);
    const way = [...ways].sort((a, b) => span(cylinders, a) - span(cylinders, b))[0]!;
    return { cylinders, first: way.map((set) => [...set].sort((a, b) => a - b)) };
  });
}

function problems(sets: readonly (readonly number[])[], size: 2 | 3, order: readonly number[] | undefined): Refusal[] {
  const uneven = sets.find((set) => set.length % size !== 0 || set.length === size);
  if (uneven)
    return [
      {
        path: 'exhaust/sketch/arrangement',
        found: `${size === 2 ? 'pairs' : 'threes'} of the ${uneven.length} cylinders to one collector`,
        allowed: `"all-into-one", or cylinders that come to at least ${2 * size} in ${size === 2 ? 'pairs' : 'threes'}`,
      },
    ];
  if (!order)
    return [
      {
        path: 'engine/firingOrder',
        found: 'nothing',
        allowed: 'the order in which the cylinders fire: it says which join first',
      },
    ];
  const missing = sets.flat().find((c) => !order.includes(c));
  return missing === undefined
    ? []
    : [
        {
          path: 'engine/firingOrder',
          found: `${order.join('-')}, without cylinder ${missing}`,
          allowed: 'all cylinders, each once',
        },
      ];
}

/** How far apart those that join stand along the bank, in all. */
function span(bank: readonly number[], way: readonly (readonly number[])[]): number {
  return way.reduce((sum, set) => {
    const places = set.map((c) => bank.indexOf(c));
    return sum + Math.max(...places) - Math.min(...places);
  }, 0);
}
