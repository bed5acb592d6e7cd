/** The parts as a list to read: by owner, with what each weighs. mm³ to kg. No React. */
import { DEFAULT_MATERIAL } from '../../../geometry';
import { materialOf } from '../../../shared/stock/materials';
import { byOwner } from './owned';
import type { ShownPart } from './shape';

const M3_PER_MM3 = 1e-9;

/** kg; null where the material's density is not known. */
export function partMass({ material, volume }: Pick<ShownPart, 'material' | 'volume'>): number | null {
  const known = materialOf(material ?? DEFAULT_MATERIAL);
  return known ? known.density * volume * M3_PER_MM3 : null;
}

export type MassSum = {
  /** Of those whose density is known, kg. */
  readonly mass: number;
  /** How many weigh an unknown amount more. */
  readonly unknown: number;
};

export function massOfParts(parts: readonly ShownPart[]): MassSum {
  const masses = parts.map(partMass);
  return {
    mass: masses.reduce<number>((sum, mass) => sum + (mass ?? 0), 0),
    unknown: masses.filter((mass) => mass === null).length,
  };
}

export type OwnerGroup = { readonly of: ShownPart['of']; readonly parts: readonly ShownPart[]; readonly sum: MassSum };

/** In the order in which they come: that of the gas. */
export const ownerGroups = (parts: readonly ShownPart[]): OwnerGroup[] =>
  [...byOwner(parts).values()].map((group) => ({ of: group[0]!.of, parts: group, sum: massOfParts(group) }));
