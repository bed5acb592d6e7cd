/** Numbers and tubes as remarks and lists say them: mm, with no more decimals than are there. */
import { DEFAULT_MATERIAL } from '../../../geometry/index';
import type { Tube } from '../../../shared/design/types';

export const figure = (value: number, digits = 2): string => String(Number(value.toFixed(digits)));

export const tubeWords = ({ outsideDiameter, wall, material = DEFAULT_MATERIAL }: Tube): string =>
  `${figure(outsideDiameter)} × ${figure(wall, 3)} mm ${material.replaceAll('-', ' ')}`;

/** `r1-2, r1-3 and 4 more`. */
export function named(ids: readonly string[], most = 5): string {
  if (ids.length <= most) return ids.join(', ');
  return `${ids.slice(0, most).join(', ')} and ${ids.length - most} more`;
}
