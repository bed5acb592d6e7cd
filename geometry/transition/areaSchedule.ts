/**
 * How the area goes from a port's opening to its tube: measured on the lofted bore, not taken from the law it was made by;
 * without a transition, the step at the flange. mm, mm², degrees.
 */
import type { Header } from '../header/resolve';
import { loadVerb } from '../nurbs/verb';
import type { PartRemark } from '../parts/part';
import { flowWarnings, halfAngle } from './flowWarnings';
import { transitionLimits } from './limits';
import { portFlow, transitionShape } from './portFlow';
import { areaAt, transitionSurfaces } from './surfaces';

export type AreaSchedule = {
  readonly port: string;
  readonly openingArea: number;
  readonly boreArea: number;
  /** Of the transition; 0 where there is none. */
  readonly length: number;
  /** From the opening at the flange's outer face, z = 0, to the tube; without a transition both at z = 0. */
  readonly stations: readonly { readonly z: number; readonly area: number }[];
  /** The farthest any station's area lies from the straight line between the ends, in per cent of that line. */
  readonly uneven: number;
  /** Of the cone with the same areas at its ends; positive where it widens. Null without a transition. */
  readonly halfAngle: number | null;
  /** What keeps the transition from being made. */
  readonly notMade: readonly PartRemark[];
  /** What the stream meets. */
  readonly warnings: readonly PartRemark[];
};

const STATIONS = 21;

/** What a port's transition, or the port itself, is called among the parts. */
export const transitionPart = (port: string): string => `port ${port} transition`;

/** Null where no runner starts at the port. */
export async function areaSchedule(header: Header, portId: string): Promise<AreaSchedule | null> {
  const flow = portFlow(header, portId);
  if (!flow) return null;
  const { openingArea, boreArea } = flow;
  const part = transitionPart(portId);
  const notMade = transitionLimits(flow, part);
  const warnings = flowWarnings(flow, part);
  const common = { port: portId, openingArea, boreArea, notMade, warnings };
  const shape = transitionShape(flow);
  if (!shape) {
    const stations = [openingArea, boreArea].map((area) => ({ z: 0, area }));
    return { ...common, length: 0, stations, uneven: 0, halfAngle: null };
  }
  const { length } = shape;
  const { bore } = transitionSurfaces(await loadVerb(), shape);
  const stations = Array.from({ length: STATIONS }, (_, k) => {
    const v = k / (STATIONS - 1);
    return { z: bore.point(0, v)[2], area: areaAt(bore, v) };
  });
  const even = (z: number) => openingArea + (z / length) * (boreArea - openingArea);
  const uneven = 100 * Math.max(...stations.map(({ z, area }) => Math.abs(area / even(z) - 1)));
  return { ...common, length, stations, uneven, halfAngle: halfAngle(openingArea, boreArea, length) };
}
