/** Curves over the engine's speed onto a canvas: the page shows it and the saved file holds it alike. px; values in screen units. */
import type { Display } from '../../../../shared/design/types';
import { fontOf } from '../../pulse/drawPicture';
import { line, type Pen } from '../../pulse/pen';
import { tickText } from '../../pulse/scale';
import { type Theme, TOKENS } from '../../theme';
import { wordsFor } from '../quantities';
import { type Frame, type Panel, rpmToPx, valueToPx } from './frame';
import type { Series } from './series';

const STROKE = 1.8;
const DOT = 3.4;
/** Followed on coarse cells so far. */
const COARSE_DOT = 1.6;

export type Look = { readonly theme: Theme; readonly display: Display };

/** @param pen scaled to our px, on a canvas of the frame's size */
export function drawCurve(pen: Pen, frame: Frame, look: Look): void {
  pen.font = fontOf();
  pen.textBaseline = 'middle';
  for (const panel of frame.panels) drawPanel(pen, frame, panel, look);
  drawSpeeds(pen, frame, look);
}

function drawPanel(pen: Pen, frame: Frame, panel: Panel, { theme, display }: Look): void {
  const { ink, quiet, rule, edge } = TOKENS[theme];
  const { name, unit, meaning } = wordsFor(panel.quantity, display);
  const right = frame.left + frame.inner;
  pen.textAlign = 'left';
  pen.fillStyle = ink;
  pen.font = fontOf(650);
  const label = `${name}, ${unit}`;
  pen.fillText(label, 2, panel.top - 13);
  const used = pen.measureText(label).width;
  pen.font = fontOf();
  pen.fillStyle = quiet;
  const isEmpty = panel.up.at.length === 0;
  // A cut axis makes differences look larger than they are.
  const isCut = !isEmpty && panel.low > 0;
  const about = isCut ? `${meaning}; the scale does not begin at zero` : meaning;
  if (isEmpty) {
    pen.textAlign = 'center';
    pen.fillText('nothing followed yet', frame.left + frame.inner / 2, panel.top + panel.height / 2);
    pen.textAlign = 'left';
  }
  if (used + 16 + pen.measureText(about).width < frame.width) pen.fillText(about, used + 12, panel.top - 13);
  else if (used + 16 + pen.measureText(meaning).width < frame.width) pen.fillText(meaning, used + 12, panel.top - 13);
  pen.textAlign = 'right';
  for (const value of panel.up.at) {
    const y = Math.round(valueToPx(panel, value)) + 0.5;
    pen.strokeStyle = rule;
    line(pen, frame.left, y, right, y);
    pen.fillStyle = quiet;
    pen.fillText(tickText(value, panel.up.decimals), frame.left - 7, y);
  }
  pen.strokeStyle = edge;
  const bottom = Math.round(panel.top + panel.height) + 0.5;
  line(pen, frame.left, bottom, right, bottom);
  for (const series of panel.series) drawSeries(pen, frame, panel, series, theme);
  for (const { rpm, value } of panel.measured) drawMeasured(pen, rpmToPx(frame, rpm), valueToPx(panel, value), ink);
}

function drawSeries(pen: Pen, frame: Frame, panel: Panel, { paint, points, failed }: Series, theme: Theme): void {
  pen.save();
  pen.strokeStyle = paint.colour;
  pen.fillStyle = paint.colour;
  pen.lineWidth = STROKE;
  pen.lineJoin = 'round';
  pen.setLineDash(paint.dash.map((part) => part * STROKE));
  pen.beginPath();
  points.forEach(({ rpm, value }, k) => {
    const [x, y] = [rpmToPx(frame, rpm), valueToPx(panel, value)];
    if (k === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  });
  pen.stroke();
  pen.setLineDash([]);
  for (const { rpm, value, settled, final } of points) {
    pen.beginPath();
    pen.arc(
      rpmToPx(frame, rpm),
      valueToPx(panel, value),
      settled ? (final ? DOT : COARSE_DOT) : DOT + 1,
      0,
      2 * Math.PI,
    );
    if (!settled) {
      pen.fillStyle = TOKENS[theme].sheet;
      pen.fill();
      pen.stroke();
      pen.fillStyle = paint.colour;
    } else pen.fill();
  }
  for (const rpm of failed) {
    const [x, y] = [rpmToPx(frame, rpm), panel.top + panel.height - 7];
    line(pen, x - 4, y - 4, x + 4, y + 4);
    line(pen, x - 4, y + 4, x + 4, y - 4);
  }
  pen.restore();
}

/** A square that stands on its corner: no run has such points. */
export function drawMeasured(pen: Pen, x: number, y: number, ink: string): void {
  pen.save();
  pen.strokeStyle = ink;
  pen.lineWidth = 1.4;
  pen.beginPath();
  pen.moveTo(x, y - 4.5);
  pen.lineTo(x + 4.5, y);
  pen.lineTo(x, y + 4.5);
  pen.lineTo(x - 4.5, y);
  pen.closePath();
  pen.stroke();
  pen.restore();
}

function drawSpeeds(pen: Pen, frame: Frame, { theme }: Look): void {
  const { quiet, edge } = TOKENS[theme];
  const last = frame.panels.at(-1);
  if (!last) return;
  const bottom = last.top + last.height;
  pen.textAlign = 'center';
  pen.fillStyle = quiet;
  pen.strokeStyle = edge;
  for (const rpm of frame.across.at) {
    const x = rpmToPx(frame, rpm);
    line(pen, x, bottom, x, bottom + 4);
    pen.fillText(tickText(rpm, frame.across.decimals), x, bottom + 13);
  }
  pen.fillText('engine speed, rpm', frame.left + frame.inner / 2, bottom + 29);
}
