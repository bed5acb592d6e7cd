/**
 * Which fasteners stay in the head as studs, and how far they stand out: a stud's length is what stands out of the head's face, a
 * bolt's is what lies under its head. mm.
 */
import type { Fastener, Flange } from '../../shared/design/types';
import { hexSize } from '../../shared/stock/hexFasteners';

export const isStud = (fastener: Fastener): boolean => !/bolt|screw/i.test(fastener.kind);

/** Threads that stand out of a nut, where the design does not say how long a stud is: a third of its diameter, common practice. */
const SPARE_THREAD = 1 / 3;

/** Beyond the flange's outer face: what gasket and flange leave of its length, and never less than its nut. */
export function studBeyond({ thickness, gasket = 0 }: Flange, { thread, hole, length }: Fastener): number {
  const { nutHeight, diameter } = hexSize(thread, hole);
  const out = length === undefined ? nutHeight + SPARE_THREAD * diameter : length - thickness - gasket;
  return Math.max(out, nutHeight);
}
