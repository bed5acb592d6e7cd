/** The tables of how tubes are made, by the way that each is: what no tube is made by has none. */
import { BILL_OF_MATERIALS, billOfMaterials } from '../billOfMaterials';
import { CHECK_HEIGHTS, checkHeightsTable } from '../checkHeights';
import { JOINTS, joints } from '../joints';
import { MACHINE_SCHEDULE, machineSchedule } from '../machineSchedule';
import { PIECES, pieces } from '../pieces';
import { STOCK_TABLE, stockTable } from '../stockTable';
import { madeBent, madeWelded } from './chosen';
import type { Making } from './report';

export function makingTables(making: Making): { readonly name: string; readonly text: string }[] {
  const [welded, bent] = [madeWelded(making), madeBent(making)];
  return [
    ...(welded.length > 0
      ? [
          { name: PIECES, text: pieces(welded) },
          { name: JOINTS, text: joints(welded) },
        ]
      : []),
    ...(bent.length > 0 ? [{ name: MACHINE_SCHEDULE, text: machineSchedule(bent) }] : []),
    ...(making.heights.length > 0 ? [{ name: CHECK_HEIGHTS, text: checkHeightsTable(making.heights) }] : []),
    { name: STOCK_TABLE, text: stockTable(making.plan) },
    { name: BILL_OF_MATERIALS, text: billOfMaterials(making) },
  ];
}
