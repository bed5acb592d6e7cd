/** Which cylinders there are, in which order and at which crank angles they fire. */
import { describe } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';
import { usualEngine } from '../../../../shared/engine/usualEngines';
import { assume, type Notes, refuse, told } from './notes';

export type Firing = {
  readonly cylinders: readonly number[];
  readonly firingOrder: readonly number[];
  /** Crank degrees, in the order of `cylinders`. */
  readonly fires: readonly number[];
};

const CYCLE = 720;
const sorted = (numbers: Iterable<number>): number[] => [...new Set(numbers)].sort((a, b) => a - b);
const upTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);

/** null where there is nothing to go by, which is refused. */
export function firingOf(design: Design, notes: Notes): Firing | null {
  const cylinders = cylindersOf(design, notes);
  if (!cylinders) return null;
  const firingOrder = orderOf(design, cylinders, notes);
  const angles = anglesOf(design, firingOrder, notes);
  if (!angles) return null;
  return { cylinders, firingOrder, fires: cylinders.map((cylinder) => angles[firingOrder.indexOf(cylinder)]!) };
}

function cylindersOf({ engine = {}, ports }: Design, notes: Notes): readonly number[] | null {
  const { cylinders, firingOrder, banks } = engine;
  if (cylinders !== undefined) return upTo(cylinders);
  if (firingOrder && firingOrder.length > 0) return sorted(firingOrder);
  const named = banks?.flat() ?? [];
  const [from, numbers] = named.length > 0 ? ['banks', named] : ['ports', ports.map((port) => port.cylinder)];
  const found = sorted(numbers);
  const path = 'engine/cylinders';
  const allowed = 'how many cylinders the engine has';
  if (found.length === 0) {
    refuse(notes, path, 'nothing', allowed);
    return null;
  }
  // Such as one bank's ports: how many the other bank has is not ours to guess.
  if (found.at(-1) !== found.length) {
    refuse(notes, path, `nothing, and ${from} with cylinders ${found.join(', ')} alone`, allowed);
    return null;
  }
  assume(notes, path, 'Cylinders', String(found.length), `those that the ${from} name`);
  return found;
}

function orderOf({ engine = {} }: Design, cylinders: readonly number[], notes: Notes): readonly number[] {
  if (engine.firingOrder && engine.firingOrder.length > 0) return engine.firingOrder;
  if (cylinders.length === 1) return cylinders;
  const count = engine.banks?.length ?? (cylinders.length < 8 ? 1 : 2);
  const usual = usualEngine(cylinders.length, count);
  const order = usual?.firingOrder ?? cylinders;
  const banks = usual?.banks.map((bank) => bank.join('-')).join(' | ');
  const why = usual
    ? `usual where ${count === 1 ? 'the cylinders stand in line' : `the banks are numbered ${banks}`}`
    : 'the order of their numbers: none is usual for this number of cylinders and banks';
  assume(notes, 'engine/firingOrder', 'Firing order', order.join('-'), why);
  return order;
}

function anglesOf({ engine = {} }: Design, order: readonly number[], notes: Notes): readonly number[] | null {
  const path = 'engine/firingAngles';
  const { firingAngles } = engine;
  if (firingAngles) {
    if (firingAngles.length === order.length) return firingAngles;
    refuse(notes, path, describe(firingAngles), `${order.length}, one for each cylinder of ${order.join('-')}`);
    return null;
  }
  const every = CYCLE / order.length;
  const doubt = (engine.banks?.length ?? 1) > 1 && order.length < 8 ? '; a V with few cylinders may not' : '';
  if (order.length > 1)
    assume(notes, path, 'Firing angles', `one every ${told(every)}°`, `most engines fire evenly${doubt}`);
  return order.map((_, i) => i * every);
}
