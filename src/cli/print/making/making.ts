/** What is found about making the tubes, for people: both ways, then pieces and rows of the ways chosen, then what to buy. */
import type { Design } from '../../../../shared/design/types';
import type { Making, Remark } from '../../../shop/making/report';
import { columns } from '../columns';
import { bentPart } from './bent';
import { materialsPart } from './materials';
import { stockPart } from './stock';
import { waysPart } from './ways';
import { weldedPart } from './welded';

export function printMaking(design: Design, making: Making): string {
  const chosen = (way: 'welded' | 'bent') => new Set(making.groups.filter((g) => g.chosen === way).map((g) => g.tube));
  const [ofPieces, inOne] = [chosen('welded'), chosen('bent')];
  return [
    design.title ?? 'Untitled design',
    remarksPart(making.remarks),
    waysPart(making, design.display),
    ...making.welded.filter(({ tube }) => ofPieces.has(tube)).map((t) => weldedPart(t, design.display)),
    ...making.bent.filter(({ tube }) => inOne.has(tube)).map((t) => bentPart(t, design.display)),
    stockPart(making, design.display),
    materialsPart(making, design.display),
  ]
    .filter((part) => part !== '')
    .join('\n\n')
    .concat('\n');
}

function remarksPart(remarks: readonly Remark[]): string {
  const stops = remarks.filter((r) => r.stops);
  const knows = remarks.filter((r) => !r.stops);
  const rows = (list: readonly Remark[]) => list.flatMap(({ where, message }) => [[message], [`at ${where}`]]);
  return [
    ...(stops.length > 0 ? [`It cannot be made as it stands\n${columns(rows(stops), ['left'])}`] : []),
    ...(knows.length > 0 ? [`To know\n${columns(rows(knows), ['left'])}`] : []),
  ].join('\n\n');
}
