/**
 * Colours as they are seen by usual and by colour-blind eyes, for tests. Colour blindness after the matrices of Machado,
 * Oliveira and Fernandes, "A physiologically-based model for simulation of color vision deficiency", IEEE TVCG 15(6), 2009,
 * severity 1.0; distances in Oklab (Ottosson, 2020). Constants from memory.
 */
import { linearRgb, type Rgb } from '../../src/app/contrast';

export type Matrix = readonly [Rgb, Rgb, Rgb];
export const EYES: Record<string, Matrix> = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

const times = (m: Matrix, v: Rgb): Rgb => m.map((r) => r[0] * v[0] + r[1] * v[1] + r[2] * v[2]) as unknown as Rgb;

export function seen(hex: string, eye: Matrix): Rgb {
  const light = times(eye, linearRgb(hex)).map((c) => Math.min(1, Math.max(0, c))) as unknown as Rgb;
  const lms = times(
    [
      [0.4122214708, 0.5363325363, 0.0514459929],
      [0.2119034982, 0.6806995451, 0.1073969566],
      [0.0883024619, 0.2817188376, 0.6299787005],
    ],
    light,
  ).map(Math.cbrt) as unknown as Rgb;
  return times(
    [
      [0.2104542553, 0.793617785, -0.0040720468],
      [1.9779984951, -2.428592205, 0.4505937099],
      [0.0259040371, 0.7827717662, -0.808675766],
    ],
    lms,
  );
}

export const apart = (a: Rgb, b: Rgb) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
