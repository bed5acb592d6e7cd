/** Curves to the user's disk: a table, the answers as they are, a picture on white. */
import type { Display } from '../../../../shared/design/types';
import { saveBlob } from '../../actions/save';
import { fontOf } from '../../pulse/drawPicture';
import { line, type Pen } from '../../pulse/pen';
import { TOKENS } from '../../theme';
import type { Run } from '../runs';
import { drawCurve, drawMeasured } from './drawCurve';
import { framePlot, type PanelWish } from './frame';
import { type Legend, legendOf } from './legend';
import { paintFor } from './series';
import { curvesCsv, curvesJson } from './tables';
import { withColumn } from './withColumn';

/** @param calibration what is said of the engine, a row each: a table goes further than the page that says it */
export const saveCsv = (runs: readonly Run[], name: string, calibration: string): Promise<string | null> =>
  saveBlob(
    new Blob([withColumn(curvesCsv(runs), 'calibration', calibration)], { type: 'text/csv' }),
    `${name} curves.csv`,
    'Table',
    '.csv',
  );

export const saveJson = (runs: readonly Run[], name: string): Promise<string | null> =>
  saveBlob(new Blob([curvesJson(runs)], { type: 'application/json' }), `${name} curves.json`, 'Curves', '.json');

const WIDTH = 1100;
const PANEL = 330;
const EDGE = 22;
const LINE = 20;
const DENSITY = 2;

export async function savePicture(
  panels: readonly PanelWish[],
  speeds: readonly number[],
  display: Display,
  title: string,
  name: string,
  calibration: string,
): Promise<string | null> {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This browser gives no room to draw it in.');
  const onWhite = panels.map((panel) => ({
    ...panel,
    series: panel.series.map((series) => ({ ...series, paint: paintFor(series.kind, 'light') })),
  }));
  const legend = legendOf(onWhite);
  const head = LINE * (2 + Math.ceil(legend.length / 3)) + 10;
  const frame = framePlot(onWhite, speeds, display, WIDTH, PANEL * Math.max(1, panels.length) + 36);
  canvas.width = DENSITY * (WIDTH + 2 * EDGE);
  canvas.height = DENSITY * (frame.height + head + 2 * EDGE);
  pen.scale(DENSITY, DENSITY);
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.translate(EDGE, EDGE);
  pen.fillStyle = TOKENS.light.ink;
  pen.textBaseline = 'middle';
  pen.font = fontOf(650);
  pen.fillText(title, 0, 6);
  pen.font = fontOf();
  pen.fillText(`${calibration}.`, 0, LINE + 6);
  legend.forEach((entry, k) => {
    drawName(pen, entry, (k % 3) * (WIDTH / 3), LINE * (2 + Math.floor(k / 3)) + 6);
  });
  pen.translate(0, head);
  drawCurve(pen, frame, { theme: 'light', display });
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new Error('This browser could not write it as PNG.');
  return saveBlob(blob, `${name} ${panels[0]?.quantity ?? 'curves'}.png`, 'Picture', '.png');
}

function drawName(pen: Pen, { paint, title }: Legend, x: number, y: number): void {
  if (paint) {
    pen.save();
    pen.strokeStyle = paint.colour;
    pen.lineWidth = 3;
    pen.setLineDash(paint.dash.map((part) => part * 1.6));
    line(pen, x, y, x + 30, y);
    pen.restore();
  } else drawMeasured(pen, x + 15, y, TOKENS.light.ink);
  pen.fillStyle = TOKENS.light.ink;
  pen.textAlign = 'left';
  pen.fillText(title, x + 38, y);
}
