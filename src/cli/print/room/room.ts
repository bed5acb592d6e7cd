/** What is found about the space a header must fit, for people and for programs; quiet where a design has none of it. */
import type { Header, RoomReport } from '../../../../geometry';
import { gapTable } from './gaps';
import { reachLines, wrapTable } from './reach';
import { removalLines } from './removal';
import { sensorTable } from './sensors';

export const printRoom = (header: Header, { gaps, access, removal, sensors }: RoomReport): string[] =>
  [
    gaps ? gapTable(header, gaps) : '',
    access ? reachLines(access) : '',
    access ? wrapTable(header.design, access) : '',
    removal ? removalLines(removal) : '',
    sensors ? sensorTable(header.design, sensors) : '',
  ].filter((part) => part !== '');

/** As `check --json` has it: the gap along each tube is for drawing, so the list of gaps stands alone. */
export const roomFields = ({ gaps, ...others }: RoomReport) => ({ ...(gaps ? { gaps: gaps.gaps } : {}), ...others });
