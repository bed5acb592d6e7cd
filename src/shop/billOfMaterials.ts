/** `bill-of-materials.csv`: every part, how many, what all of them weigh and cost. kg; an empty cell is not known. */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import type { Making } from './making/report';

export const BILL_OF_MATERIALS = 'bill-of-materials.csv';

export const billOfMaterials = ({ materials, cost: { currency } }: Pick<Making, 'materials' | 'cost'>): string =>
  writeCsv(
    ['part', 'what', 'quantity', 'of_stock', 'mass_kg', 'each', 'cost', 'currency'],
    materials.map(({ name, what, quantity, ofStock, mass, each, cost }): Cell[] => [
      name,
      what,
      String(quantity),
      ofStock ? 'yes' : 'no',
      known(mass),
      known(each),
      known(cost),
      currency,
    ]),
  );

const known = (value: number | null): Cell => (value === null ? '' : decimal(value));
