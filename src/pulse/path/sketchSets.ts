/** How a sketch's cylinders come together: which end in one collector, and which of them join first, by the firing order. */
import { insist, type Refusal } from '../../../shared/design/refusal';
import type { Design, HeaderSketch } from '../../../shared/design/types';
import { collectorSets } from '../../../shared/engine/collectorSets';
import { bestSets } from '../../../shared/engine/firingOrder';
import { joinedFirst } from '../../../shared/engine/form';
import { firingOf } from '../engine/setup/cylinders';
import type { Notes } from '../engine/setup/notes';
import { banksOf } from './engineOf';

export type SketchSet = {
  readonly cylinders: readonly number[];
  /** Those that join before the collector; empty where all go straight to it. */
  readonly first: readonly (readonly number[])[];
};

/**
 * One collector a bank, as for a new header. Those join first that fire farthest apart; of several ways as good, the one whose cylinders
 * stand nearest together along the bank.
 * @throws DesignError where the arrangement does not part the cylinders, or the firing order leaves some out
 */
export function sketchSets({ arrangement }: Pick<HeaderSketch, 'arrangement'>, design: Design): SketchSet[] {
  const sets = collectorSets(banksOf(design), arrangement);
  const size = joinedFirst(arrangement);
  if (size === null) return sets.map((cylinders) => ({ cylinders, first: [] }));
  insist(arrangementProblems(sets, size));
  const notes: Notes = { problems: [], assumed: [] };
  // What is usual is taken, and told by whoever reads the engine.
  const order = firingOf(design, notes)?.firingOrder;
  insist([...notes.problems, ...orderProblems(sets, order)]);
  return sets.map((cylinders) => {
    const ways = bestSets(order!, cylinders, size);
    const way = [...ways].sort((a, b) => span(cylinders, a) - span(cylinders, b))[0]!;
    return { cylinders, first: way.map((set) => [...set].sort((a, b) => a - b)) };
  });
}

function arrangementProblems(sets: readonly (readonly number[])[], size: 2 | 3): Refusal[] {
  const uneven = sets.find((set) => set.length % size !== 0 || set.length === size);
  if (!uneven) return [];
  const words = size === 2 ? 'pairs' : 'threes';
  return [
    {
      path: 'exhaust/sketch/arrangement',
      found: `${words} of the ${uneven.length} cylinders to one collector`,
      allowed: `"all-into-one", or cylinders that come to at least ${2 * size} in ${words}`,
    },
  ];
}

function orderProblems(sets: readonly (readonly number[])[], order: readonly number[] = []): Refusal[] {
  const missing = sets.flat().find((c) => !order.includes(c));
  if (missing === undefined) return [];
  const found = order.length === 0 ? 'nothing' : `${order.join('-')}, without cylinder ${missing}`;
  return [{ path: 'engine/firingOrder', found, allowed: 'all cylinders, each once: it says which join first' }];
}

/** How far apart those that join stand along the bank, in all. */
function span(bank: readonly number[], way: readonly (readonly number[])[]): number {
  return way.reduce((sum, set) => {
    const places = set.map((c) => bank.indexOf(c));
    return sum + Math.max(...places) - Math.min(...places);
  }, 0);
}
