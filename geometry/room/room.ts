/** Everything about the space a header must fit, found in one call: for the command line, the shop and the app alike. mm, degrees. */
import type { Meshes } from '../check/meshes';
import { gapReport } from '../gaps/gapReport';
import type { Header } from '../header/resolve';
import { accessReport } from '../reach/accessReport';
import { removalReport } from '../removal/removal';
import { sensorReport } from '../sensor/sensors';
import { type RoomPart, type RoomReport, roomParts } from './report';

/** @param wanted which parts of it; default: all that the design has anything of */
export function roomReport(
  header: Header,
  meshes: Meshes,
  wanted: readonly RoomPart[] = roomParts(header.design),
): RoomReport {
  const asks = (part: RoomPart): boolean => wanted.includes(part);
  return {
    ...(asks('gaps') ? { gaps: gapReport(header, meshes) } : {}),
    ...(asks('access') ? { access: accessReport(header, meshes) } : {}),
    ...(asks('removal') ? { removal: removalReport(header, meshes) } : {}),
    ...(asks('sensors') ? { sensors: sensorReport(header, meshes) } : {}),
  };
}
