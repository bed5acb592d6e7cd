/**
 * How thin the wall gets on the outside of a bend, and how far it may be out of round, by a named rule. mm, percent.
 * Geometric: the outside fibre is as much longer as it lies farther out. TEMA RCB-2.31: a wall t0 = t1 (1 + do / 4R) is bought so
 * that t1 is left. ASME B31.1, 102.4.5: the outside needs I = (4 R/D + 1) / (4 R/D + 2) of the straight tube's wall.
 */
import type { BendRow } from '../../../../geometry';
import type { Tube } from '../../../../shared/design/types';
import type { WorkshopDefaults } from '../../../../shared/stock/workshop';
import type { Thinned } from '../report';

export type ThinningRule = WorkshopDefaults['thinning'];

/** What is left of 1 on the outside. */
const LEFT: Readonly<Record<ThinningRule, (ratio: number) => number>> = {
  geometric: (ratio) => ratio / (ratio + 1 / 2),
  tema: (ratio) => 1 / (1 + 1 / (4 * ratio)),
  'b31.1': (ratio) => (4 * ratio + 1) / (4 * ratio + 2),
};

/** Of the outside diameter. The geometric rule names none: B31.1's. */
const OUT_OF_ROUND: Readonly<Record<ThinningRule, number>> = { geometric: 0.08, tema: 0.1, 'b31.1': 0.08 };

export function thinned(row: BendRow, bend: number, { outsideDiameter, wall }: Tube, rule: ThinningRule): Thinned {
  const ratio = row.radius / outsideDiameter;
  const left = LEFT[rule](ratio);
  return {
    bend,
    angle: row.angle,
    radius: row.radius,
    ratio,
    percent: 100 * (1 - left),
    wall: wall * left,
    outOfRound: OUT_OF_ROUND[rule] * outsideDiameter,
  };
}

/** For the paper: by which rule, and whose limit. */
export const thinningWords = (rule: ThinningRule): { readonly wall: string; readonly outOfRound: string } =>
  WORDS[rule];

const WORDS: Readonly<Record<ThinningRule, { readonly wall: string; readonly outOfRound: string }>> = {
  geometric: {
    wall: 'Wall left on the outside of a bend by geometry alone: wall × R / (R + OD/2). A bender that pushes leaves more.',
    outOfRound:
      'Largest less smallest diameter at most 8 % of the outside diameter: limit of ASME B31.1 (for radii of 5 diameters and more), since geometry names none.',
  },
  tema: {
    wall: 'Wall left on the outside of a bend by TEMA RCB-2.31: wall / (1 + OD / 4R).',
    outOfRound: 'Largest less smallest diameter at most 10 % of the outside diameter: TEMA RCB-2.31.',
  },
  'b31.1': {
    wall: 'Wall that ASME B31.1, 102.4.5, asks of the outside of a bend: wall × (4R/OD + 1) / (4R/OD + 2). Measure it; a bend may have less.',
    outOfRound:
      'Largest less smallest diameter at most 8 % of the outside diameter: ASME B31.1 (for radii of 5 diameters and more).',
  },
};
