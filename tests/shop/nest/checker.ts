/**
 * Whether a cutting plan can be sawn, said by someone who knows nothing of how it was found: each piece once and of its length,
 * nothing over anything, kerf and trim kept, legs long enough, no more from the shelf than lies there. Faults in words.
 */
import type { BarProblem } from '../../../src/shop/nest/bars';
import type { BendProblem } from '../../../src/shop/nest/bends';
import type { Cuts } from '../../../src/shop/nest/cutAll';

const NIL = 1e-5;

type Stock = { readonly id: string; readonly count: number; readonly buy: boolean };

function countsFaults(ids: readonly string[], stock: readonly Stock[], { used, over }: Cuts): string[] {
  const faults: string[] = [];
  const had = [...used.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)), ...over].sort();
  if (had.join() !== [...ids].sort().join()) faults.push(`pieces ${had.join()} instead of ${ids.join()}`);
  for (const { id, count, buy } of stock) {
    const of = used.filter((u) => u.stock === id);
    if (of.filter((u) => u.source === 'shelf').length > count) faults.push(`more of ${id} than on the shelf`);
    if (!buy && of.some((u) => u.source === 'bought')) faults.push(`${id} cannot be bought`);
    if (new Set(of.map((u) => u.number)).size !== of.length) faults.push(`numbers of ${id} repeat`);
  }
  for (const u of used) {
    if (!stock.some(({ id }) => id === u.stock)) faults.push(`${u.stock} is no stock`);
    if (u.cuts.length === 0) faults.push(`${u.stock} is taken for nothing`);
  }
  return faults;
}

export function barFaults({ pieces, stock, kerf, endTrim }: BarProblem, plan: Cuts): string[] {
  const ids = pieces.map(({ id }) => id);
  const faults = countsFaults(ids, stock, plan);
  for (const { stock: id, cuts, left } of plan.used) {
    const { length } = stock.find((s) => s.id === id)!;
    let free = endTrim;
    for (const { piece, from, to } of [...cuts].sort((a, b) => a.from - b.from)) {
      if (Math.abs(to - from - pieces.find((p) => p.id === piece)!.length) > NIL)
        faults.push(`${piece} is not its length`);
      if (from < free - NIL) faults.push(`${piece} begins at ${from}, before ${free}`);
      free = to + kerf;
    }
    if (free - kerf > length - endTrim + NIL) faults.push(`${id} is cut to ${free - kerf} of ${length}`);
    if (Math.abs(left - Math.max(0, length - free)) > NIL)
      faults.push(`${left} left of ${id} instead of ${length - free}`);
  }
  return faults;
}

export function bendFaults({ pieces, stock, radius, kerf }: BendProblem, plan: Cuts): string[] {
  const ids = pieces.map(({ id }) => id);
  const faults = countsFaults(ids, stock, plan);
  const lost = (kerf / radius) * (180 / Math.PI);
  for (const { stock: id, cuts, left } of plan.used) {
    const bend = stock.find((s) => s.id === id)!;
    const sorted = [...cuts].sort((a, b) => a.from - b.from);
    let free = 0;
    for (const [i, { piece, from, to, legs = [0, 0], reversed }] of sorted.entries()) {
      const wanted = pieces.find((p) => p.id === piece)!;
      const whole = sorted.length === 1 && Math.abs(wanted.angle - bend.angle) <= 0.05;
      if (Math.abs(to - from - wanted.angle) > (whole ? 0.05 : NIL)) faults.push(`${piece} is not its angle`);
      if (from < free - NIL) faults.push(`${piece} begins at ${from}, before ${free}`);
      free = to + lost;
      const asNeeded = reversed ? [...wanted.legs].reverse() : wanted.legs;
      if (legs.some((leg, end) => Math.abs(leg - asNeeded[end]!) > 0.01 + NIL))
        faults.push(`${piece} has legs ${legs}`);
      if (legs.some((leg, end) => leg > bend.legs[end]! + NIL)) faults.push(`${piece} has more leg than ${id}`);
      if (legs[0] > 0 && (i > 0 || Math.abs(from) > NIL)) faults.push(`${piece} keeps the first leg from the middle`);
      if (legs[1] > 0 && (i < sorted.length - 1 || Math.abs(to - bend.angle) > NIL))
        faults.push(`${piece} keeps the second leg from the middle`);
    }
    if (free - lost > bend.angle + NIL) faults.push(`${id} is cut to ${free - lost} of ${bend.angle}`);
    const rest = bend.angle - cuts.reduce((sum, { from, to }) => sum + to - from + lost, 0);
    if (Math.abs(left - Math.max(0, rest)) > NIL) faults.push(`${left} left of ${id} instead of ${rest}`);
  }
  return faults;
}

/** What is bought, in what the plan made least. */
export function boughtOf(
  stock: readonly (Stock & { price?: number })[],
  plan: Cuts,
  cost: (s: Stock) => number,
): number {
  return plan.used
    .filter(({ source }) => source === 'bought')
    .reduce((sum, { stock: id }) => sum + cost(stock.find((s) => s.id === id)!), 0);
}
