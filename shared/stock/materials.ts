/**
 * Materials that tube comes in, and what they weigh. Densities in kg/m³ as tube stockists print them per grade
 * (carbon 7.85, 304 and 321 7.93, 316 7.98 g/cm³), so that masses agree with their lists; others as marked.
 * A data sheet for 304 may print 8.00 instead: 0.9 % more.
 */

export type Material = {
  /** As in a design's `material`. */
  readonly id: string;
  /** As people read it. */
  readonly name: string;
  /** kg/m³ */
  readonly density: number;
  readonly source: 'stockist lists of grade densities' | 'from memory';
};

const STOCKIST = 'stockist lists of grade densities';

export const MATERIALS: readonly Material[] = [
  { id: 'mild-steel', name: 'Mild steel', density: 7850, source: STOCKIST },
  { id: 'aluminised-steel', name: 'Aluminised mild steel', density: 7850, source: 'from memory' },
  { id: 'stainless-304', name: 'Stainless 304', density: 7930, source: STOCKIST },
  { id: 'stainless-316', name: 'Stainless 316', density: 7980, source: STOCKIST },
  { id: 'stainless-321', name: 'Stainless 321', density: 7930, source: STOCKIST },
  { id: 'stainless-347', name: 'Stainless 347', density: 7980, source: STOCKIST },
  { id: 'stainless-409', name: 'Stainless 409', density: 7700, source: 'from memory' },
  { id: 'titanium-2', name: 'Titanium grade 2', density: 4510, source: 'from memory' },
];

const byId = new Map(MATERIALS.map((material) => [material.id, material]));

/** `undefined` for a material that no table here knows: its mass is then unknown, not guessed. */
export const materialOf = (id: string): Material | undefined => byId.get(id);
