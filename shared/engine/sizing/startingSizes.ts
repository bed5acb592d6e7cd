/**
 * Starting sizes of a header from textbook formulas, every one with its source, and how far they spread. Lengths count from
 * the valve seat, as a group's length does; diameters are inside. mm.
 */
import { resolveInput, type SizingInput } from './input';
import { collectorLength, outletBore, secondaryBore, secondaryLength } from './joinedSizes';
import { firstPipeLength, primaryBore, wholeLength } from './primarySizes';
import { sizeOf, startFrom } from './spread';
import type { Estimate, Quantity, StartingSize, StartingSizes } from './types';

export type { SizingInput } from './input';
export type { Estimate, Quantity, StartingSize, StartingSizes } from './types';

/** @throws DesignError naming every input that is out of its bounds */
export function startingSizes(input: SizingInput): StartingSizes {
  const from = resolveInput(input);
  const sizes: StartingSize[] = [];
  const leftOut: { name: string; why: string }[] = [];
  /** Answers where to start; null where no formula says anything. */
  const add = (quantity: Quantity, name: string, measured: string, all: readonly Estimate[]): number | null => {
    const estimates = all.filter((e) => e.mm > 0);
    for (const e of all) if (!(e.mm > 0)) leftOut.push({ name: `${name}: ${e.name}`, why: NOTHING_LEFT });
    if (!estimates.some((e) => e.bearing === 'size')) return null;
    const size = sizeOf(quantity, name, measured, estimates);
    sizes.push(size);
    return size.start;
  };

  const bores = primaryBore(from);
  const bore = from.primaryBore ?? startFrom(bores);
  const whole = wholeLength(from, bore);
  const first = from.joinedFirst;
  if (from.portDiameter === null) leftOut.push({ name: 'Primary bore: Port and an eighth', why: 'no port is given' });

  add(
    'primaryLength',
    'Primary length',
    first === null ? 'valve seat to collector' : 'valve seat to the first join',
    first === null ? whole : firstPipeLength(from),
  );
  add('primaryBore', 'Primary bore', 'inside diameter', bores);
  let [entering, inside] = [from.cylinders, bore];
  if (first !== null) {
    add('secondaryLength', 'Secondary length', 'first join to collector', secondaryLength(from, startFrom(whole)));
    inside = add('secondaryBore', 'Secondary bore', 'inside diameter', secondaryBore(first, bore))!;
    entering = from.cylinders / first;
  }
  if (entering > 1) {
    const outlet = add('outletBore', 'Collector outlet', 'inside diameter', outletBore(from, entering, inside))!;
    add('collectorLength', 'Collector length', 'inlets to outlet', collectorLength(from, entering, inside, outlet));
  } else leftOut.push({ name: 'Collector', why: 'one pipe alone has nothing to join' });
  return { sizes, leftOut };
}

const NOTHING_LEFT = 'it comes out at nothing or less for these inputs';
