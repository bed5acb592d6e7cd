/** A tube as it is bought. */
import type { Display } from '../../../../shared/design/types';
import { lengthNumber } from '../../format';
import type { MapTube } from './types';

/** "42.4 × 1.5". @param tube mm */
export const tubeText = ({ outsideDiameter, wall }: MapTube, display: Display): string =>
  `${lengthNumber(outsideDiameter, display, 1)} × ${lengthNumber(wall, display, 2)}`;
