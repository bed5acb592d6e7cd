/** All that is found about the space a header must fit, as far as it was asked for. mm, degrees. */
import type { Design } from '../../shared/design/types';
import type { GapReport } from '../gaps/report';
import type { AccessReport } from '../reach/report';
import type { RemovalReport } from '../removal/report';
import type { SensorEntry } from '../sensor/report';

export type RoomReport = {
  readonly gaps?: GapReport;
  readonly access?: AccessReport;
  readonly removal?: RemovalReport;
  readonly sensors?: readonly SensorEntry[];
};

export type RoomPart = keyof RoomReport;

/** What there is to find in a design: gaps always, the rest where it has what that is about. */
export function roomParts({ flanges = [], surroundings = [], service = [], sensors = [], wrap }: Design): RoomPart[] {
  const fastened = flanges.some(({ fasteners = [] }) => fasteners.length > 0);
  return [
    'gaps',
    ...(fastened || service.length > 0 || wrap ? (['access'] as const) : []),
    // Without a flange there is nothing to come off; one flange with nothing around it always does. The search takes its time.
    ...(flanges.length > (surroundings.length > 0 ? 0 : 1) ? (['removal'] as const) : []),
    ...(sensors.length > 0 ? (['sensors'] as const) : []),
  ];
}
