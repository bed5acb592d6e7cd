/** The picture as a PNG: drawn anew, larger than on screen, on white with the name of the rig above it. */
import { saveBlob } from '../actions/save';
import { paintOf } from '../colours';
import { TOKENS } from '../theme';
import { coloursFor } from './colourScale';
import { drawPicture, fontOf } from './drawPicture';
import { densityFor, framePicture } from './frame';
import type { Quantity } from './quantities';
import { rangeOf } from './sample';
import type { Seen } from './shown';

const WIDTH = 1100;
const HEIGHT = 760;
const EDGE = 20;
const TITLE = 26;
const DENSITY = 2;

/** "shock-tube.rig.json" → "shock-tube" */
export const stemOf = (name: string): string =>
  name.replace(/(\.rig)?\.json$/i, '').replaceAll(/[^\w .-]+/g, '-') || 'rig';

export async function savePicture(seen: Seen, quantity: Quantity, span: number): Promise<string | null> {
  const { picture } = seen.run;
  if (!picture) return null;
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This browser gives no room to draw it in.');
  pen.font = fontOf();
  const frame = framePicture(seen.rig, picture, WIDTH, HEIGHT, (text) => pen.measureText(text).width);
  const density = densityFor(DENSITY, frame.width + 2 * EDGE);
  canvas.width = Math.round((frame.width + 2 * EDGE) * density);
  canvas.height = Math.round((HEIGHT + TITLE + 2 * EDGE) * density);
  pen.scale(density, density);
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.fillStyle = TOKENS.light.ink;
  pen.font = fontOf(650);
  pen.textBaseline = 'middle';
  pen.fillText(seen.name, EDGE, EDGE + 6);
  pen.translate(EDGE, EDGE + TITLE);
  const colours = coloursFor(quantity, seen.rig, rangeOf(picture, seen.rows, quantity), span);
  const paints = seen.rig.probes.map((_, k) => paintOf(k, 'light'));
  drawPicture(pen, seen, frame, { theme: 'light', density, quantity, colours, paints });
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new Error('This browser could not write it as PNG.');
  return saveBlob(blob, `${stemOf(seen.name)} ${quantity}.png`, 'Picture', '.png');
}
