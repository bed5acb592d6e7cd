/** The shelf of bars and stock bends, as edits of a design: added like what is used, doubled, removed; what is used and not on it. Pure. */
import { type Change, type Edited, freeId, setFields } from '../../../shared/design/edit';
import type { Design, StockBar, StockBend, Tube, Workshop } from '../../../shared/design/types';
import { assumedBar, assumedBend } from '../../../shared/stock/workshop';
import { alike, sameTube } from '../../shop/nest/sameTube';

export type ShelfList = 'bars' | 'bends';
export type Stock = StockBar | StockBend;

export const shelfOf = ({ workshop }: Design, list: ShelfList): readonly Stock[] => workshop?.[list] ?? [];

const takenIds = (design: Design): string[] =>
  [...shelfOf(design, 'bars'), ...shelfOf(design, 'bends')].map(({ id }) => id);

export type Used = {
  readonly tube: string;
  readonly of: Tube;
  readonly radii: readonly number[];
  readonly bent: boolean;
};

/** The tubes that runners are made of, with the radii of their bends. */
export function usedTubes({ tubes, tooling, runners }: Design): readonly Used[] {
  return Object.entries(tubes)
    .filter(([name]) => Object.hasOwn(tooling, name) && runners.some((r) => r.tube === name))
    .map(([name, of]) => {
      const { centerlineRadius, making } = tooling[name]!;
      const radii = runners
        .filter((r) => r.tube === name && r.points !== undefined)
        .flatMap((r) => (r.points!.length > 2 ? (r.radii ?? [centerlineRadius]) : []));
      return { tube: name, of, radii: [...new Set(radii)].sort((a, b) => a - b), bent: making === 'bent' };
    });
}

export type Missing = {
  readonly list: ShelfList;
  readonly tube: string;
  readonly stock: Stock;
  /** None of this tube is listed, so one is assumed to be on sale; else the radius alone is lacking, and nothing is. */
  readonly assumed: boolean;
};

/** What is used and not on the list. */
export function missingStock(design: Design): readonly Missing[] {
  const taken = takenIds(design);
  const name = (stem: string): string => {
    const id = taken.includes(stem) ? freeId(taken, `${stem} `) : stem;
    taken.push(id);
    return id;
  };
  const found: Missing[] = [];
  const has = (list: ShelfList, of: Tube, radius?: number): boolean =>
    [...shelfOf(design, list), ...found.filter((m) => m.list === list).map(({ stock }) => stock)].some(
      (stock) => sameTube(stock, of) && (radius === undefined || ('radius' in stock && alike(stock.radius, radius))),
    );
  for (const { tube, of, radii, bent } of usedTubes(design)) {
    if (!has('bars', of)) found.push({ list: 'bars', tube, assumed: true, stock: assumedBar(of, name(`bar ${tube}`)) });
    // A bender makes its own.
    if (bent) continue;
    const assumed = !shelfOf(design, 'bends').some((stock) => sameTube(stock, of));
    for (const radius of radii)
      if (!has('bends', of, radius))
        found.push({
          list: 'bends',
          tube,
          assumed,
          stock: assumedBend(of, radius, name(`U ${tube} ${Math.round(radius)}`)),
        });
  }
  return found;
}

const put = (design: Design, list: ShelfList, entries: readonly Stock[]): Edited =>
  setFields(design, [[['workshop', list], entries.length > 0 ? entries : undefined]]);

/** Under a name that the document allows and nothing else has. */
export function listStock(design: Design, { list, stock }: Pick<Missing, 'list' | 'stock'>): Edited {
  const taken = takenIds(design);
  const name = stock.id.replace(/[^A-Za-z0-9_ -]+/g, '-').slice(0, 60);
  const id = taken.includes(name) ? freeId(taken, `${name} `) : name;
  return put(design, list, [...shelfOf(design, list), { ...stock, id }]);
}

/** Like the last one; the first, of the tube that is used first. */
export function addStock(design: Design, list: ShelfList): Edited {
  const entries = shelfOf(design, list);
  const last = entries.at(-1);
  const id = freeId(takenIds(design), list === 'bars' ? 'bar ' : 'bend ');
  if (last) return put(design, list, [...entries, { ...last, id }]);
  const used = usedTubes(design)[0];
  const tube: Tube = used?.of ?? { outsideDiameter: 42.4, wall: 1.5 };
  const radius = used?.radii[0] ?? 1.5 * tube.outsideDiameter;
  const stock = list === 'bars' ? assumedBar(tube, id) : assumedBend(tube, radius, id);
  return put(design, list, [stock]);
}

export function duplicateStock(design: Design, list: ShelfList, index: number): Edited {
  const entries = shelfOf(design, list);
  const own = entries[index]!;
  const stem = own.id.replace(/\d+$/, '').trimEnd();
  const id = freeId(takenIds(design), `${stem} `);
  return put(design, list, [...entries.slice(0, index + 1), { ...own, id }, ...entries.slice(index + 1)]);
}

export const removeStock = (design: Design, list: ShelfList, index: number): Edited =>
  put(
    design,
    list,
    shelfOf(design, list).filter((_, i) => i !== index),
  );

/** In place of the design's own, whole: what it had is a step back. */
export const takeWorkshop = (design: Design, workshop: Workshop): Edited =>
  setFields(design, [[['workshop'], workshop]] satisfies Change[]);
