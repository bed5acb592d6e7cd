/**
 * `cut-list.csv`: how long each tube is sawn, and what it weighs when trimmed. Where a transition at the port takes the place
 * of the tube's beginning, `trim_start` is less by as much and may be negative; where the tube goes into a flange's step, more.
 * What is trimmed off and the transition itself weigh nothing here. mm, kg.
 */
import { massOf } from '../../geometry';
import { MATERIALS } from '../../shared/stock/materials';
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import type { NotMade, Part } from './part';

export const CUT_LIST = 'cut-list.csv';

export function cutList(parts: readonly Part[]): { text: string; notMade: NotMade[] } {
  const rows = parts.map(({ id, line, startTrim, resolved: { tube, tooling } }): Cell[] => {
    const trims = [(tooling.trimStart ?? 0) + startTrim, tooling.trimEnd ?? 0] as const;
    const mass = massOf(tube, line.length + startTrim);
    return [
      id,
      decimal(line.length + trims[0] + trims[1]),
      decimal(trims[0]),
      decimal(trims[1]),
      decimal(line.length),
      // An empty cell where the density is not known.
      mass === null ? '' : decimal(mass),
    ];
  });
  return {
    text: writeCsv(['runner', 'cut_length', 'trim_start', 'trim_end', 'centerline', 'mass_kg'], rows),
    notMade: parts.flatMap(({ id, resolved: { tube } }) =>
      massOf(tube, 0) === null
        ? [
            {
              name: `${CUT_LIST}, mass_kg of runner ${id}`,
              why: `The density of "${tube.material}" is not known; of these it is: ${known}.`,
            },
          ]
        : [],
    ),
  };
}

const known = MATERIALS.map((m) => m.id).join(', ');
