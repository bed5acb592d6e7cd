/** Which colours stand for which values: round the middle, evenly both ways, as far as the rarest value lies or a share of that. Screen units. */
import type { Rig } from '../../pulse/rig/types';
import { gaugeOf, type Quantity, wordsFor } from './quantities';
import type { Range } from './sample';
import { roundUp } from './scale';

export type Colours = {
  readonly middle: number;
  /** From the middle to the last colour either way. */
  readonly half: number;
  /** What there is, the middle included. */
  readonly low: number;
  readonly high: number;
  /** Of one value read off. */
  readonly decimals: number;
};

/** @param range SI units; null: nothing yet @param span share of the range that gets all colours */
export function coloursFor(
  quantity: Quantity,
  rig: Pick<Rig, 'ambient' | 'gas'>,
  range: Range | null,
  span: number,
): Colours {
  const { factor } = wordsFor(quantity, rig);
  const { middle, least, decimals } = gaugeOf(quantity, rig);
  const low = Math.min(middle, range ? range.low * factor : middle);
  const high = Math.max(middle, range ? range.high * factor : middle);
  const half = roundUp(Math.max(least, high - middle, middle - low) * span);
  return { middle, half, low, high, decimals };
}

/** The part of the colours that the legend shows: what there is, but never nothing. */
export function legendRange({ middle, half, low, high }: Colours): readonly [number, number] {
  const from = Math.max(middle - half, low);
  const to = Math.min(middle + half, high);
  return [Math.min(from, middle - 0.1 * half), Math.max(to, middle + 0.1 * half)];
}
