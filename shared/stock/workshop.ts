/**
 * What is taken where a design's workshop does not say: common practice, with no source; kerf of a band saw or a cut-off disc
 * (ranges from memory), legs of stock bends (from memory). mm, degrees, minutes. No price is ever assumed.
 */
import type { StockBar, StockBend, Tube, Workshop } from '../design/types';

export type WorkshopDefaults = Required<
  Omit<Workshop, 'currency' | 'longestLeg' | 'hourly' | 'weldCost' | 'bars' | 'bends' | 'prices' | 'minutes'>
> & {
  readonly minutes: { readonly cut: number; readonly weld: number; readonly bend: number; readonly setUp: number };
};

export const WORKSHOP_DEFAULTS: WorkshopDefaults = {
  kerf: 1.5,
  endTrim: 5,
  leastOffcut: 100,
  weldGap: 0,
  weldShrinkage: 0,
  weldSetback: 10,
  torchRoom: 60,
  tape: 0.5,
  dial: 0.5,
  rotation: 'right-handed',
  thinning: 'geometric',
  minutes: { cut: 4, weld: 15, bend: 5, setUp: 15 },
};

export const settingsOf = (workshop: Workshop | undefined): Workshop & WorkshopDefaults => ({
  ...WORKSHOP_DEFAULTS,
  ...workshop,
  minutes: { ...WORKSHOP_DEFAULTS.minutes, ...workshop?.minutes },
});

/** EN 10296-2: stock lengths are 6 m. */
const BAR_LENGTH = 6000;
const LEG = 100;

/** Assumed to be on sale where the workshop lists no bar of this tube; to be marked as assumed wherever it is shown. */
export const assumedBar = ({ outsideDiameter, wall, material }: Tube, id: string): StockBar => ({
  id,
  outsideDiameter,
  wall,
  ...(material ? { material } : {}),
  length: BAR_LENGTH,
});

/** Likewise of bends: a U of this radius. */
export const assumedBend = ({ outsideDiameter, wall, material }: Tube, radius: number, id: string): StockBend => ({
  id,
  outsideDiameter,
  wall,
  ...(material ? { material } : {}),
  radius,
  angle: 180,
  legs: [LEG, LEG],
});
