/** What is found about making the tubes, for people: both ways, then pieces and rows of the ways chosen, then what to buy. */
import type { Design } from '../../../../shared/design/types';
import { madeBent, madeWelded } from '../../../shop/making/chosen';
import type { Making, Remark } from '../../../shop/making/report';
import { columns } from '../columns';
import { bentPart } from './bent';
import { materialsPart } from './materials';
import { stockPart } from './stock';
import { waysPart } from './ways';
import { weldedPart } from './welded';

export function printMaking(design: Design, making: Making): string {
  return [
    design.title ?? 'Untitled design',
    remarksPart(making.remarks),
    waysPart(making, design.display),
    ...madeWelded(making).map((t) => weldedPart(t, design.display)),
    ...madeBent(making).map((t) => bentPart(t, design.display)),
    stockPart(making, design.display),
    materialsPart(making, design.display),
  ]
    .filter((part) => part !== '')
    .join('\n\n')
    .concat('\n');
}

export function remarksPart(remarks: readonly Remark[]): string {
  const stops = remarks.filter((r) => r.stops);
  const knows = remarks.filter((r) => !r.stops);
  const rows = (list: readonly Remark[]) => list.flatMap(({ where, message }) => [[message], [`at ${where}`]]);
  return [
    ...(stops.length > 0 ? [`It cannot be made as it stands\n${columns(rows(stops), ['left'])}`] : []),
    ...(knows.length > 0 ? [`To know\n${columns(rows(knows), ['left'])}`] : []),
  ].join('\n\n');
}
