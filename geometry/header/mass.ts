/** What a tube weighs when trimmed: wall area × centerline × density. mm, kg. */
import type { Design, Tube } from '../../shared/design/types';
import { materialOf } from '../../shared/stock/materials';
import { tubeMass } from '../../shared/stock/tubes';
import { DEFAULT_MATERIAL } from './resolve';

/** Null where the material's density is not known: nothing is better than a guess. */
export function massOf(tube: Tube, length: number): number | null {
  const material = materialOf(tube.material ?? DEFAULT_MATERIAL);
  return material ? tubeMass(tube, length, material.density) : null;
}

/** Of all runners' tubes along their centerlines; null where one of them is not known. */
export function massOfAll(
  { runners, tubes }: Design,
  lines: readonly { readonly id: string; readonly centerline: number }[],
): number | null {
  const tubeOf = new Map(runners.map(({ id, tube }) => [id, tubes[tube]!]));
  const masses = lines.map(({ id, centerline }) => massOf(tubeOf.get(id)!, centerline));
  return masses.includes(null) ? null : masses.reduce<number>((sum, mass) => sum + mass!, 0);
}
