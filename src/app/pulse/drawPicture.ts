/**
 * The x–t picture with its axes, words and legend onto a canvas: the page shows it and the saved file holds it alike. Time runs
 * upward, each pipe from its start at the left to its finish at the right, all to one scale. px; values in screen units.
 */
import type { Paint, Theme } from '../colours';
import { TOKENS } from '../theme';
import { type Colours, legendRange } from './colourScale';
import { FONT, type Frame, timeToPx, xToPx } from './frame';
import { paintPipe } from './paint';
import { line, type Pen } from './pen';
import { drawMetal, drawPlaces, type Places, placesFor } from './places';
import { GAP } from './plan';
import { lengthUnit, type Quantity, timeUnit, valueText, withUnit, wordsFor } from './quantities';
import { ramp, shadeAt } from './ramp';
import { ticksIn, tickText } from './scale';
import type { Seen } from './shown';

export type Look = {
  readonly theme: Theme;
  /** Device pixels to one of ours. */
  readonly density: number;
  readonly quantity: Quantity;
  readonly colours: Colours;
  /** Of the probes, in the rig's order. */
  readonly paints: readonly Paint[];
};

export const FAMILY = '"Source Sans 3 Variable", system-ui, sans-serif';
export const fontOf = (weight = 400): string => `${weight} ${FONT}px ${FAMILY}`;

/** @param pen scaled to our px, on a canvas of the frame's size */
export function drawPicture(pen: Pen, seen: Seen, frame: Frame, look: Look): void {
  pen.font = fontOf();
  pen.textBaseline = 'middle';
  drawTime(pen, seen, frame, look);
  const places = placesFor(seen.rig, frame);
  seen.run.picture!.pipes.forEach((_, pipe) => {
    drawPanel(pen, seen, frame, look, pipe, places);
  });
  drawProbes(pen, seen, frame, look);
  drawLegend(pen, seen, frame, look);
}

/** What stays in sight while a picture that is wider than its room is moved: the axis of time and the legend, over all else. */
export function drawFixed(pen: Pen, seen: Seen, frame: Frame, look: Look): void {
  pen.font = fontOf();
  pen.textBaseline = 'middle';
  pen.fillStyle = TOKENS[look.theme].paper;
  pen.fillRect(0, 0, frame.left - 6, frame.wholeHeight);
  pen.fillRect(0, frame.legendTop, frame.room, frame.wholeHeight - frame.legendTop);
  drawTime(pen, seen, frame, look);
  drawLegend(pen, seen, frame, look);
}

function drawTime(pen: Pen, { rig, until }: Seen, frame: Frame, { theme }: Look): void {
  const { quiet, rule } = TOKENS[theme];
  const most = Math.max(2, Math.min(10, Math.floor(frame.height / 40)));
  const { unit, factor } = timeUnit(rig);
  const { at, decimals } = ticksIn(0, until * factor, most);
  pen.strokeStyle = rule;
  pen.fillStyle = quiet;
  pen.textAlign = 'right';
  for (const time of at) {
    const y = Math.round(timeToPx(frame, time / factor, until)) + 0.5;
    line(pen, frame.left - 5, y, frame.left, y);
    pen.fillText(tickText(time, decimals), frame.left - 8, y);
  }
  pen.fillText(withUnit('x', lengthUnit(rig).unit), frame.left - 8, frame.top + frame.height + 12);
  pen.save();
  pen.translate(10, frame.top + frame.height / 2);
  pen.rotate(-Math.PI / 2);
  pen.textAlign = 'center';
  pen.fillText(`${withUnit('time', unit)}, upward →`, 0, 0);
  pen.restore();
}

function drawPanel(pen: Pen, seen: Seen, frame: Frame, look: Look, pipe: number, places: Places): void {
  const { theme, density, quantity, colours } = look;
  const { ink, quiet, rule, well } = TOKENS[theme];
  const { factor } = wordsFor(quantity, seen.rig);
  const picture = seen.run.picture!;
  const { width } = frame.plan.panels[pipe]!;
  const left = frame.left + frame.plan.panels[pipe]!.left;
  const right = left + width;
  const bottom = frame.top + frame.height;
  pen.fillStyle = well;
  pen.fillRect(left, frame.top, width, frame.height);
  const [w, h] = [Math.max(1, Math.round(width * density)), Math.max(1, Math.round(frame.height * density))];
  const shades = { middle: colours.middle / factor, half: colours.half / factor };
  const { rgba } = paintPipe(picture, seen.rows, pipe, quantity, shades, seen.until, theme, w, h);
  const layer = document.createElement('canvas');
  layer.width = w;
  layer.height = h;
  layer.getContext('2d')?.putImageData(new ImageData(rgba, w, h), 0, 0);
  pen.drawImage(layer, left, frame.top, width, frame.height);

  const { start, finish } = frame.ends[pipe]!;
  drawEdge(pen, left, frame, start, ink);
  drawEdge(pen, right, frame, finish, ink);
  drawMetal(pen, seen, frame, pipe, ink);

  const { pipe: id } = picture.pipes[pipe]!;
  pen.fillStyle = ink;
  pen.textAlign = 'left';
  pen.font = fontOf(650);
  pen.fillText(fitting(pen, id, width + GAP - 4), left, 10);
  pen.font = fontOf();

  pen.fillStyle = quiet;
  pen.strokeStyle = rule;
  drawPlaces(pen, seen, frame, pipe, places);
  pen.fillStyle = ink;
  const first = bottom + 28;
  if (frame.wording[pipe] === 'upright') {
    upright(pen, start, left + 4, first - 6);
    upright(pen, finish, Math.max(right - 4, left + 18), first - 6);
    return;
  }
  pen.textAlign = 'left';
  pen.fillText(start, left, first);
  pen.textAlign = 'right';
  pen.fillText(finish, right, frame.wording[pipe] === 'beside' ? first : first + 16);
}

/** Read from below, its end at the top. */
function upright(pen: Pen, text: string, x: number, top: number): void {
  pen.save();
  pen.translate(x, top);
  pen.rotate(-Math.PI / 2);
  pen.textAlign = 'right';
  pen.fillText(text, 0, 0);
  pen.restore();
}

/** Closed: a wall. Open or going on: a broken line. Anything else: a thin one. */
function drawEdge(pen: Pen, x: number, { top, height }: Frame, word: string, ink: string): void {
  pen.save();
  pen.strokeStyle = ink;
  pen.lineWidth = word === 'closed' ? 3 : 1;
  if (word === 'open' || word === 'goes on') pen.setLineDash([3, 4]);
  line(pen, x, top, x, top + height);
  pen.restore();
}

function drawProbes(pen: Pen, { rig, run }: Seen, frame: Frame, { theme, paints }: Look): void {
  const pipes = run.picture!.pipes.map(({ pipe }) => pipe);
  rig.probes.forEach((probe, k) => {
    const pipe = pipes.indexOf(probe.pipe);
    if (pipe < 0) return;
    const x = xToPx(frame, pipe, probe.x);
    pen.fillStyle = paints[k]?.colour ?? TOKENS[theme].ink;
    pen.beginPath();
    pen.moveTo(x - 5, frame.top - 10);
    pen.lineTo(x + 5, frame.top - 10);
    pen.lineTo(x, frame.top - 1);
    pen.closePath();
    pen.fill();
  });
}

const LEGEND_WIDEST = 460;

function drawLegend(
  pen: Pen,
  { rig }: Seen,
  { legendTop, room, left }: Frame,
  { theme, quantity, colours }: Look,
): void {
  const { ink, quiet, rule } = TOKENS[theme];
  const { name, unit, note, middle: middleWord } = wordsFor(quantity, rig);
  const [from, to] = legendRange(colours);
  const label = withUnit(name, unit);
  pen.textAlign = 'left';
  pen.fillStyle = ink;
  const top = legendTop + 15;
  const labelRoom = Math.max(left, pen.measureText(label).width + 12);
  pen.fillText(label, 0, top + 5);
  const [x0, x1] = [labelRoom, Math.min(room - 14, labelRoom + LEGEND_WIDEST)];
  const toX = (value: number) => x0 + ((value - from) / (to - from)) * (x1 - x0);
  const shades = ramp(theme);
  for (let x = Math.floor(x0); x < x1; x++) {
    const value = from + ((x + 0.5 - x0) / (x1 - x0)) * (to - from);
    const shade = shades[shadeAt(value, colours.middle, colours.half)]!;
    pen.fillStyle = `rgb(${shade.join(' ')})`;
    pen.fillRect(x, top, Math.min(1, x1 - x) + 0.5, 10);
  }
  pen.strokeStyle = rule;
  pen.strokeRect(x0 + 0.5, top + 0.5, x1 - x0 - 1, 9);
  // Pointed where there is more than the colours tell.
  const point = (x: number, by: number, shade: readonly number[]) => {
    pen.fillStyle = `rgb(${shade.join(' ')})`;
    pen.beginPath();
    pen.moveTo(x, top);
    pen.lineTo(x + by, top + 5);
    pen.lineTo(x, top + 10);
    pen.fill();
  };
  if (colours.high > colours.middle + colours.half * 1.0001) point(x1, 8, shades.at(-1)!);
  if (colours.low < colours.middle - colours.half * 1.0001) point(x0, -8, shades[0]!);

  pen.fillStyle = quiet;
  pen.strokeStyle = ink;
  // Where there is room for it.
  if (x1 + 16 + pen.measureText(note).width < room) pen.fillText(note, x1 + 16, top + 5);
  const { at, decimals } = ticksIn(from, to, Math.floor((x1 - x0) / 64));
  pen.textAlign = 'center';
  for (const value of at) {
    line(pen, toX(value), top + 10, toX(value), top + 13);
    pen.fillText(valueText(quantity, value, decimals), toX(value), top + 21);
  }
  const middle = toX(colours.middle);
  line(pen, middle, top - 4, middle, top + 10);
  const words =
    quantity === 'velocity'
      ? middleWord
      : `${middleWord} ${valueText(quantity, colours.middle, Math.max(0, colours.decimals - 1))}`;
  const half = pen.measureText(words).width / 2;
  pen.fillText(words, Math.min(Math.max(middle, x0 + half), x1 - half), top - 9);
}

/** Shortened with a sign for it where it has no room. */
function fitting(pen: Pen, text: string, width: number): string {
  if (pen.measureText(text).width <= width) return text;
  let short = text;
  while (short.length > 1 && pen.measureText(`${short}…`).width > width) short = short.slice(0, -1);
  return `${short}…`;
}
