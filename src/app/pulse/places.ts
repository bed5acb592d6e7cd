/** Below each pipe of the picture: its length and the ticks along it; and within it, where its metal ends. m to px. */
import type { Rig } from '../../pulse/rig/types';
import { type Frame, xToPx } from './frame';
import { line, type Pen } from './pen';
import { GAP } from './plan';
import { decimalsFor, roundStep, tickText } from './scale';
import type { Seen } from './shown';

/** px between ticks along pipes, at least. */
const TICK_ROOM = 52;

/** One step for all pipes, as they are drawn to one scale, and decimals enough to tell each length to a thousandth. */
export type Places = { readonly step: number; readonly decimals: number };

export function placesFor({ pipes }: Pick<Rig, 'pipes'>, { plan }: Pick<Frame, 'plan'>): Places {
  const step = roundStep(TICK_ROOM / plan.perMetre);
  const told = (length: number) => {
    const most = decimalsFor(length);
    const text = length.toFixed(most).replace(/0+$/, '');
    return most === 0 ? 0 : text.length - text.indexOf('.') - 1;
  };
  return {
    step,
    decimals: Math.max(-Math.floor(Math.log10(step) + 1e-9), ...pipes.map(({ length }) => told(length))),
  };
}

/** Along one pipe: its length at its end in any case, 0 and the ticks between where they leave it room. */
export function drawPlaces(pen: Pen, { rig }: Seen, frame: Frame, pipe: number, { step, decimals }: Places): void {
  const bottom = frame.top + frame.height;
  const { length } = rig.pipes[pipe]!;
  const [start, finish] = [xToPx(frame, pipe, 0), xToPx(frame, pipe, length)];
  const [y, apart] = [bottom + 12, 7];
  const whole = tickText(length, decimals);
  const wide = pen.measureText(whole).width;
  // A little over the edge: the gap to the next pipe has room for it.
  const from = finish + 4 - wide;
  line(pen, finish, bottom, finish, bottom + 4);
  line(pen, start, bottom, start, bottom + 4);
  pen.textAlign = 'left';
  if (wide <= finish - start + GAP - 2) pen.fillText(whole, Math.max(from, start - 2), y);
  const zero = start - 3 + pen.measureText('0').width;
  if (zero + apart <= from) pen.fillText('0', start - 3, y);
  pen.textAlign = 'center';
  for (let k = 1; k * step < length; k++) {
    const px = xToPx(frame, pipe, k * step);
    line(pen, px, bottom, px, bottom + 4);
    const text = tickText(k * step, decimals);
    const half = pen.measureText(text).width / 2;
    if (px + half + apart <= from) pen.fillText(text, px, y);
  }
}

/** Where the metal ends and the gas outside that an end correction adds begins. */
export function drawMetal(pen: Pen, { rig }: Seen, frame: Frame, pipe: number, ink: string): void {
  const { length } = rig.pipes[pipe]!;
  const [from, to] = frame.extents[pipe]!;
  const beyond = 1e-6 * length;
  pen.save();
  pen.strokeStyle = ink;
  pen.lineWidth = 1;
  for (const [is, x] of [
    [from < -beyond, 0],
    [to > length + beyond, length],
  ] as const) {
    const px = xToPx(frame, pipe, x);
    if (is) line(pen, px, frame.top, px, frame.top + frame.height);
  }
  pen.restore();
}
