/** How paper is to come out, as options: its size, its thickness, and how many stations a template has. */
import { parseLength } from '../../shared/units';
import { PAPER_NAMES } from '../shop/sheet/paper';
import type { PaperChoice } from '../shop/shopFolder';
import { STATIONS } from '../shop/templates/strip';
import { UnusableInput } from './io';

export type PaperArguments = {
  readonly paper?: string;
  readonly paperThickness?: string;
  readonly stations?: string;
};

/** Cardboard is thicker than this and does not wrap. */
const THICKEST = 2;

export function paperOf({ paper, paperThickness, stations }: PaperArguments): PaperChoice {
  const known = PAPER_NAMES.find((name) => name === paper?.toLowerCase());
  if (paper !== undefined && !known)
    throw new UnusableInput(`--paper: "${paper}" is none of ${PAPER_NAMES.join(' and ')}`);
  const thickness = paperThickness === undefined ? undefined : mmIn(paperThickness);
  if (thickness !== undefined && !(thickness >= 0 && thickness <= THICKEST))
    throw new UnusableInput(`--paper-thickness: "${paperThickness}" is no number of mm from 0 to ${THICKEST}`);
  const count = STATIONS.find((n) => String(n) === stations?.trim());
  if (stations !== undefined && !count)
    throw new UnusableInput(`--stations: found "${stations}"; allowed: ${STATIONS.join(' or ')}`);
  return {
    ...(known && { paper: known }),
    ...(thickness !== undefined && { paperThickness: thickness }),
    ...(count && { stations: count }),
  };
}

function mmIn(text: string): number {
  const answer = parseLength(text, 'mm');
  return answer.ok ? answer.mm : Number.NaN;
}
