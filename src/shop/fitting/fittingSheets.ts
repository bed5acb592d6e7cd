/** The packet's sheets for fitting: gaps to check, fasteners with their tools, wrap, getting it off, sensors, what to mind. */
import type { GapReport, Header, RoomReport } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';
import { cautionBlocks } from './cautions';
import { fastenerBlocks } from './fastenerBlocks';
import { gapBlocks } from './gapBlocks';
import { removalBlocks } from './removalBlocks';
import { sensorBlocks } from './sensorBlocks';
import { wrapBlocks } from './wrapBlocks';

export type Fitting = {
  readonly header: Header;
  readonly room: RoomReport;
  /** Of the header cold and at rest, as it stands on the bench; absent where it never moves. */
  readonly still?: GapReport;
};

/** None where there is nothing to fit it to or with. */
export function fittingSheets({ header, room, still }: Fitting, paper: Paper, display: Display): Sheet[] {
  const { gaps, access, removal, sensors } = room;
  const blocks = [
    ...(gaps ? gapBlocks(header, gaps, display, still) : []),
    ...(access ? fastenerBlocks(header.design, access) : []),
    ...(access ? wrapBlocks(header, access, display) : []),
    ...(removal ? removalBlocks(header, removal, display) : []),
    ...(sensors ? sensorBlocks(header, sensors, display) : []),
  ];
  return blocks.length > 0 ? flowSheets('Fitting', [...blocks, ...cautionBlocks(header.design)], paper) : [];
}
