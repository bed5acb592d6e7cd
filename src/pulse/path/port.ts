/**
 * The way in the head, from the valves to the port's opening: a taper from the valves' throats. Where valves are not given it is as
 * wide as its opening all along; where it is shorter than a cell the throat is left out. m.
 */
import type { Design, Port } from '../../../shared/design/types';
import { sameAreaDiameter } from '../../../shared/engine/openingArea';
import { type BoreTable, LEAST_LENGTH } from './bores';
import { metres } from './metres';

/** A seat's throat beside its valve's head: common practice has 0.84 to 0.9. */
export const THROAT_SHARE = 0.85;

export type HeadPart = { readonly inHead: number; readonly bore: BoreTable };

/** m, of one round hole with the area of a port's share of the throats; null where the valves are not given. */
export function throatDiameter({ engine, ports }: Design, cylinder: number): number | null {
  const valve = engine?.exhaustValve;
  if (!valve) return null;
  const sharing = Math.max(1, ports.filter((port) => port.cylinder === cylinder).length);
  return metres(THROAT_SHARE * valve.diameter * Math.sqrt(valve.count / sharing));
}

export const portInHead = (design: Design, port: Port): HeadPart =>
  inHead(metres(port.lengthInHead ?? 0), metres(sameAreaDiameter(port.opening)), throatDiameter(design, port.cylinder));

/** @param opening m, of a round hole as large */
export function inHead(length: number, opening: number, throat: number | null): HeadPart {
  if (length < LEAST_LENGTH) return { inHead: length, bore: [[0, opening]] };
  return {
    inHead: length,
    bore: [
      [0, throat ?? opening],
      [length, opening],
    ],
  };
}
