/** Where everything of a curve's picture lies, px: panels one above the other over one axis of speeds. One plan for screen, pointer and file. */
import type { Display } from '../../../../shared/design/types';
import { roundRange, type Ticks, ticksIn } from '../../pulse/scale';
import { type Quantity, wordsFor } from '../quantities';
import type { Series } from './series';

const LEFT = 52;
const RIGHT = 14;
/** Above a panel: its name. */
const HEAD = 26;
/** Below a panel that another one follows. */
const GAP = 12;
const FOOT = 36;

export type Panel = {
  readonly quantity: Quantity;
  readonly series: readonly Series[];
  readonly measured: readonly { readonly rpm: number; readonly value: number }[];
  readonly top: number;
  readonly height: number;
  readonly low: number;
  readonly high: number;
  readonly up: Ticks;
};

export type Frame = {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly inner: number;
  /** rpm */
  readonly from: number;
  readonly to: number;
  readonly across: Ticks;
  readonly panels: readonly Panel[];
};

export type PanelWish = Pick<Panel, 'quantity' | 'series' | 'measured'>;

/** Values closer than this share of their size fill no more of the panel: noise stays flat. */
const LEAST_SHARE = 0.1;

const NO_TICKS: Ticks = { at: [], step: 1, decimals: 0 };

/** Steps of 34 px; on a phone nearer together rather than one lone number, which is no scale. @param tall px */
const ticksFor = (tall: number): number => Math.max(2, Math.min(4, Math.floor(tall / 20)), Math.floor(tall / 34));

/** @param speeds rpm of all that is or will be shown */
export function framePlot(
  wishes: readonly PanelWish[],
  speeds: readonly number[],
  display: Display,
  width: number,
  height: number,
): Frame {
  const inner = Math.max(40, width - LEFT - RIGHT);
  // What was measured beyond the speeds that are followed is shown too.
  const all = [...speeds, ...wishes.flatMap(({ measured }) => measured.map(({ rpm }) => rpm))];
  const [from, to] = all.length > 0 ? [Math.min(...all), Math.max(...all)] : [0, 1];
  const room = Math.max(60, height - FOOT);
  const each = (room + GAP) / Math.max(1, wishes.length);
  const panels = wishes.map((wish, k): Panel => {
    const values = [...wish.series.flatMap(({ points }) => points), ...wish.measured].map(({ value }) => value);
    const [least, most] = values.length > 0 ? [Math.min(...values), Math.max(...values)] : [0, 1];
    const noise = Math.max(10 ** -wordsFor(wish.quantity, display).decimals, LEAST_SHARE * Math.abs(most));
    const [low, high] = roundRange(least, most, noise);
    const tall = Math.max(20, each - HEAD - GAP);
    return {
      ...wish,
      top: k * each + HEAD,
      height: tall,
      low,
      high,
      // Nothing to show: no scale is made up.
      up: values.length > 0 ? ticksIn(low, high, ticksFor(tall)) : NO_TICKS,
    };
  });
  // One speed alone stands in the middle.
  const [a, b] = from === to ? [from - 1, to + 1] : [from, to];
  return {
    width,
    height,
    left: LEFT,
    inner,
    from: a,
    to: b,
    across: all.length > 0 ? ticksIn(a, b, Math.max(2, Math.floor(inner / 70))) : NO_TICKS,
    panels,
  };
}

/** Points at either end keep clear of the axis. */
const INSET = 10;

export const rpmToPx = (
  { left, inner, from, to }: Pick<Frame, 'left' | 'inner' | 'from' | 'to'>,
  rpm: number,
): number => left + INSET + ((rpm - from) / (to - from)) * (inner - 2 * INSET);

export const valueToPx = ({ top, height, low, high }: Panel, value: number): number =>
  top + height * (1 - (value - low) / (high - low));

export type Under = { readonly kind: Series['kind']; readonly rpm: number };

/** The followed point nearest to a place; null where there is none at all. */
export function pointUnder(frame: Frame, x: number, y: number): Under | null {
  let found: Under | null = null;
  let nearest = Infinity;
  for (const panel of frame.panels)
    for (const { kind, points } of panel.series)
      for (const { rpm, value } of points) {
        const off = Math.hypot(rpmToPx(frame, rpm) - x, valueToPx(panel, value) - y);
        if (off < nearest) [nearest, found] = [off, { kind, rpm }];
      }
  return found;
}
