/** What mirroring adds, counted: `4 ports, 4 runners, 1 collector and 1 flange`. */
import type { Design } from '../../../shared/design/types';

const KINDS = [
  ['ports', 'port'],
  ['runners', 'runner'],
  ['merges', 'collector'],
  ['flanges', 'flange'],
  ['surroundings', 'surrounding'],
  ['service', 'service point'],
  ['sensors', 'sensor'],
] as const;

export function listed(before: Design, after: Design): string {
  const counts = KINDS.flatMap(([list, name]) => {
    const more = (after[list]?.length ?? 0) - (before[list]?.length ?? 0);
    return more > 0 ? [`${more} ${name}${more === 1 ? '' : 's'}`] : [];
  });
  const last = counts.pop() ?? '';
  return counts.length > 0 ? `${counts.join(', ')} and ${last}` : last;
}
