/** Stock sizes to choose from, as people name them. Sources stand with the tables in shared/stock. */
import { HOLE_CLASSES, holesFor } from '../../../../shared/stock/holes';
import { MATERIALS } from '../../../../shared/stock/materials';
import {
  BWG_WALLS,
  INCH_OUTSIDE_DIAMETERS,
  METRIC_OUTSIDE_DIAMETERS,
  METRIC_WALLS,
} from '../../../../shared/stock/tubes';
import { MM_PER_INCH } from '../../../../shared/units';
import type { Choice } from '../ChoiceField';
import type { Offer } from './spec';

/** `1 5/8`; sixteenths at the finest. */
export function inchFraction(inches: number): string {
  const sixteenths = Math.round(inches * 16);
  let [top, bottom] = [sixteenths % 16, 16];
  while (top !== 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const whole = Math.floor(sixteenths / 16);
  return top === 0 ? String(whole) : `${whole === 0 ? '' : `${whole} `}${top}/${bottom}`;
}

const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6;

export const OUTSIDE_DIAMETERS: readonly Offer[] = [
  ...METRIC_OUTSIDE_DIAMETERS.map((value) => ({ value, name: `${value} mm` })),
  ...INCH_OUTSIDE_DIAMETERS.map((inches) => ({
    value: rounded(inches * MM_PER_INCH),
    name: `${inchFraction(inches)} in`,
  })),
];

export const WALLS: readonly Offer[] = [
  ...METRIC_WALLS.map((value) => ({ value, name: `${value} mm` })),
  ...Object.entries(BWG_WALLS).map(([gauge, inches]) => ({
    value: rounded(inches * MM_PER_INCH),
    name: `${gauge} gauge, ${inches} in`,
  })),
];

/** Multiples of the outside diameter that stock bends and dies come in (common practice). */
export const radiiFor = (outsideDiameter: number): readonly Offer[] =>
  [1, 1.5, 2, 2.5, 3].map((times) => ({
    value: rounded(times * outsideDiameter),
    name: `${times} × outside diameter`,
  }));

/** Clearance holes by ISO 273 for a thread such as `M8`; none for a thread that the table does not hold. */
export const holeOffers = (thread: string): readonly Offer[] =>
  holesFor(thread)?.map((value, k) => ({ value, name: `${value} mm, ${HOLE_CLASSES[k]} (ISO 273)` })) ?? [];

export const MATERIAL_CHOICES: readonly Choice[] = MATERIALS.map(({ id, name }) => ({ value: id, name }));
export const materialName = (id: string): string => MATERIALS.find((m) => m.id === id)?.name ?? id;
