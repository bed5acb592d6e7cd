/**
 * The ways to make one straight of a runner: of the legs of the bends at its ends where they are long enough, else with a piece of
 * bar. All mm along the straight from where it begins.
 */
import { STRAIGHT_TOLERANCE } from '../../../../geometry';

export type Straight = {
  readonly length: number;
  /** Most that the bend before, and the one behind, can keep of it; null: none there, but the tube's end. */
  readonly before: number | null;
  readonly behind: number | null;
  /** What is sawn on at the tube's own end, where this is one. */
  readonly trim: number;
  /** At the tube's start: how deep it stands in a flange, where no joint can be. */
  readonly sunk: number;
};

export type StraightCut = {
  /** Kept by the bend before, a piece of bar, kept by the bend behind: together the straight's length. */
  readonly out: number;
  readonly bar: number;
  readonly in: number;
  readonly joints: readonly number[];
  /** What of `trim` cannot be had: the tube ends in an arc that has no leg there. */
  readonly lost: number;
};

export type Limits = {
  /** Straight wanted between a joint and a bend. */
  readonly setback: number;
  /** Shortest piece of bar worth welding in, where the straight leaves the choice. */
  readonly leastBar: number;
};

/** Places tried where a joint may slide. */
const PLACES = 7;

export function waysToMake(straight: Straight, { setback, leastBar }: Limits): StraightCut[] {
  const { length, before, behind, trim, sunk } = straight;
  if (before === null && behind === null) return [{ out: 0, bar: length, in: 0, joints: [], lost: 0 }];
  if (before === null || behind === null) {
    const cap = (before ?? behind)!;
    const cut = (leg: number, bar: number): StraightCut => ({
      out: before === null ? 0 : leg,
      bar,
      in: before === null ? leg : 0,
      joints: bar > 0 ? [before === null ? bar : leg] : [],
      lost: 0,
    });
    if (length < STRAIGHT_TOLERANCE) return [{ ...cut(0, 0), lost: Math.max(0, trim - cap) }];
    if (length + trim <= cap) return [cut(length, 0)];
    const bar = Math.min(length, Math.max(length - cap, leastBar + Math.max(0, sunk)));
    return [cut(length - bar, bar)];
  }
  if (length < STRAIGHT_TOLERANCE) return [{ out: 0, bar: 0, in: 0, joints: [0], lost: 0 }];
  const [low, high] = [Math.max(0, length - behind), Math.min(length, before)];
  if (low <= high) {
    const places = [setback, length - setback, length / 2].map((x) => Math.min(high, Math.max(low, x)));
    const joints = [low, high, ...places, ...within(Math.max(low, setback), Math.min(high, length - setback))];
    return joints.map((x) => ({ out: x, bar: 0, in: length - x, joints: [x], lost: 0 }));
  }
  const bar = Math.min(length, Math.max(length - before - behind, leastBar));
  const rest = length - bar;
  const longest = Math.min(rest, before);
  return within(Math.min(longest, Math.max(0, rest - behind)), longest).map((x) => ({
    out: x,
    bar,
    in: rest - x,
    joints: [x, x + bar],
    lost: 0,
  }));
}

function within(low: number, high: number): number[] {
  if (low > high) return [];
  if (high - low < STRAIGHT_TOLERANCE) return [low];
  return Array.from({ length: PLACES }, (_, i) => low + ((high - low) * i) / (PLACES - 1));
}

/** By how much a joint stands nearer to bends than it should; squared, so that of two sides both suffer evenly. */
export function nearness({ length, before, behind }: Straight, joint: number, setback: number): number {
  const short = (room: number): number => Math.max(0, setback - room) ** 2;
  return (before === null ? 0 : short(joint)) + (behind === null ? 0 : short(length - joint));
}

/** Likewise two welds nearer to each other than a ring of bar should be long: then rather a longer straight of bar. */
export const sliver = ({ bar }: StraightCut, { leastBar }: Limits): number =>
  bar > 0 ? Math.max(0, leastBar - bar) ** 2 : 0;
