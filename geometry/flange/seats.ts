/** A flange's ports as they lie on a plate: opening, what stands on it or slips into it, and what its edge must hug. mm. */
import type { Flange, Opening } from '../../shared/design/types';
import type { Header, ResolvedPort } from '../header/resolve';
import { type Disc, grown } from '../plane/discs';
import { type PlateFrame, turnedOnPlate } from './plateFrame';
import { borderOf, STEP_GAP, stepDepthOf, weldLeg, weldRoom } from './practice';

export type Seat = {
  readonly port: string;
  readonly middle: Disc;
  /** The opening, as the hull of discs. */
  readonly opening: readonly Disc[];
  /** What is welded on: the tube, or the transition; null where no runner begins. */
  readonly welded: {
    readonly outer: readonly Disc[];
    readonly what: string;
    readonly room: number;
    readonly leg: number;
  } | null;
  /** What is milled, where the flange is stepped and something slips in. */
  readonly step: readonly Disc[] | null;
  /** All that the plate's edge goes round, with its border. */
  readonly body: readonly Disc[];
};

/** About the opening's own middle, x across and y up. Discs of radius 0 are sharp corners. */
export function openingDiscs(opening: Opening): Disc[] {
  if (opening.shape === 'round') return [{ x: 0, y: 0, r: opening.diameter / 2 }];
  const { width, height } = opening;
  const r = opening.shape === 'oval' ? Math.min(width, height) / 2 : opening.corner;
  const [w, h] = [width / 2 - r, height / 2 - r];
  const xs = w > 0 ? [w, -w] : [0];
  const ys = h > 0 ? [h, -h] : [0];
  return xs.flatMap((x) => ys.map((y) => ({ x, y, r })));
}

export function seatOf(header: Header, flange: Flange, resolved: ResolvedPort, frame: PlateFrame): Seat {
  const { port } = resolved;
  const opening = turnedOnPlate(frame, resolved.pose, openingDiscs(port.opening));
  const runner = header.runners.find(({ runner: { from } }) => 'port' in from && from.port === port.id);
  const wall = port.transition?.wall ?? runner?.tube.wall ?? 0;
  const [middle] = turnedOnPlate(frame, resolved.pose, [{ x: 0, y: 0, r: 0 }]);
  const welded = runner && {
    outer: port.transition ? grown(opening, wall) : [{ ...middle!, r: runner.tubeRadius }],
    what: port.transition ? `the transition of port ${port.id}` : `the tube of runner ${runner.runner.id}`,
    room: weldRoom(wall),
    leg: weldLeg(wall),
  };
  const step = welded && flange.seat === 'stepped' ? grown(welded.outer, flange.stepGap ?? STEP_GAP) : null;
  const border = borderOf(flange);
  const around = step ? grown(step, Math.max(border, welded!.room)) : grown(welded?.outer ?? [], welded?.room ?? 0);
  return {
    port: port.id,
    middle: middle!,
    opening,
    welded: welded ?? null,
    step: step && stepDepthOf(flange) > 0 ? step : null,
    body: [...grown(opening, border), ...around],
  };
}
