/** How primaries are joined, in the words of every page. */
import type { Arrangement } from '../../shared/engine/form';

export const ARRANGEMENT_NAMES: Readonly<Record<Arrangement, string>> = {
  'all-into-one': 'All into one',
  'pairs-then-one': 'Pairs, then one',
  'threes-then-one': 'Threes, then one',
};
