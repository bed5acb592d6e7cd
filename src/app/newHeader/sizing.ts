/** The textbook sizes for what was asked for, and what of them is taken where nothing was typed. mm. */
import { DesignError } from '../../../shared/design/refusal';
import type { Opening } from '../../../shared/design/types';
import { sameAreaDiameter } from '../../../shared/engine/openingArea';
import {
  type Quantity,
  type SizingInput,
  type StartingSizes,
  startingSizes,
} from '../../../shared/engine/sizing/startingSizes';
import { tunedSpeed } from '../../../shared/engine/sizing/tunedSpeed';
import type { Wish } from './wish';

/** @param joined cylinders that end in one collector */
export function sizingOf(wish: Wish, opening: Opening, joined: number): SizingInput {
  const rpm = wish.tuned ?? tunedSpeed(wish.rpm);
  return {
    cylinders: joined,
    bore: wish.bore,
    stroke: wish.stroke,
    rpm,
    topRpm: Math.max(rpm, wish.rpm[1]),
    arrangement: wish.arrangement,
    portDiameter: sameAreaDiameter(opening),
    wall: wish.primary.wall,
    ...(wish.exhaustOpensBefore !== null && { exhaustOpens: -180 - wish.exhaustOpensBefore }),
    ...(wish.exhaustClosesAfter !== null && { exhaustCloses: wish.exhaustClosesAfter }),
    ...(wish.gasTemperature !== null && { gasTemperature: wish.gasTemperature }),
  };
}

/** Null where the answers are no engine; the form itself says why. */
export function sizesFor(input: SizingInput): StartingSizes | null {
  try {
    return startingSizes(input);
  } catch (error) {
    if (error instanceof DesignError) return null;
    throw error;
  }
}

export const startOf = (sizes: StartingSizes | null, quantity: Quantity): number | null =>
  sizes?.sizes.find((s) => s.quantity === quantity)?.start ?? null;

/** Lengths are started from in steps of 5 mm: the textbooks spread far more. */
const STEP = 5;
export const stepped = (mm: number): number => Math.round(mm / STEP) * STEP;
