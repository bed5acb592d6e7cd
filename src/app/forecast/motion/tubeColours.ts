/**
 * A tube's colours by the waves in it at one instant: the ramp's colour for each ring or corner, times the grey of the quick picture. Flat
 * arrays throughout, written anew for every picture of the play. mm along the tube, m along the pipe.
 */
import type { WaveField } from '../../../pulse/forecast/waveField';
import { readField } from '../../../pulse/forecast/waveField';
import type { PathPipe } from '../../../pulse/path/types';
import type { PipePicture } from '../../../pulse/report';
import type { Theme } from '../../colours';
import type { Quantity } from '../../pulse/quantities';
import { linearOf, rampLab, shadeAt } from '../../pulse/ramp';
import type { Spread } from '../waves/roll';

const made = new Map<Theme, Float32Array>();

/** Three linear numbers a shade, from the lowest to the highest value. */
export function linearRamp(theme: Theme): Float32Array {
  const known = made.get(theme);
  if (known) return known;
  const flat = rampLab(theme, 'view').flatMap((lab) => linearOf(lab).map((part) => Math.min(1, Math.max(0, part))));
  const table = Float32Array.from(flat);
  made.set(theme, table);
  return table;
}

/** Where in the pipe each ring of a runner's tube lies, m: after what the head hides. @param offset of the tube's start from its centerline's, mm */
export const ringPlaces = (
  stations: Float32Array,
  offset: number,
  pipe: Pick<PathPipe, 'length' | 'inHead'>,
): Float32Array =>
  stations.map((station) => Math.min(pipe.length, Math.max(0, pipe.inHead + (station + offset) / 1000)));

export type Moment = {
  readonly field: WaveField;
  readonly angle: number;
  readonly quantity: Quantity;
  readonly spread: Spread;
  readonly theme: Theme;
};

const reading = { pressure: 0, velocity: 0, temperature: 0 };

function shadeIndex({ field, angle, quantity, spread }: Moment, pipe: PipePicture, x: number): number {
  const value = readField(field, pipe, angle, x, reading)[quantity];
  return 3 * shadeAt(value, spread.mean, spread.half);
}

/** @param shades three bytes a corner: rings along the wall, along the bore, then two at each end, as a tube is drawn */
export function colourRings(
  out: Float32Array,
  shades: Uint8Array,
  places: Float32Array,
  pipe: PipePicture,
  moment: Moment,
): void {
  const table = linearRamp(moment.theme);
  const count = places.length;
  const around = shades.length / 3 / (2 * count + 4);
  const write = (ring: number, shade: number) => {
    const [r, g, b] = [table[shade]!, table[shade + 1]!, table[shade + 2]!];
    const end = (ring + 1) * around * 3;
    for (let i = ring * around * 3; i < end; i += 3) {
      const k = shades[i]! / 255;
      out[i] = r * k;
      out[i + 1] = g * k;
      out[i + 2] = b * k;
    }
  };
  let [first, last] = [0, 0];
  for (let i = 0; i < count; i++) {
    const shade = shadeIndex(moment, pipe, places[i]!);
    write(i, shade);
    write(count + i, shade);
    if (i === 0) first = shade;
    last = shade;
  }
  [first, first, last, last].forEach((shade, k) => {
    write(2 * count + k, shade);
  });
}

/** Corner by corner. @param places of each, m */
export function colourCorners(
  out: Float32Array,
  shades: Uint8Array,
  places: Float32Array,
  pipe: PipePicture,
  moment: Moment,
): void {
  const table = linearRamp(moment.theme);
  let [before, shade] = [Number.NaN, 0];
  for (let i = 0; i < places.length; i++) {
    // Corners of one ring lie side by side and in one place.
    if (places[i] !== before) shade = shadeIndex(moment, pipe, places[i]!);
    before = places[i]!;
    for (let k = 0; k < 3; k++) out[3 * i + k] = (table[shade + k]! * shades[3 * i + k]!) / 255;
  }
}
