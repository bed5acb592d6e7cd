/** The balls of all runners as one place sees them: from its axis, round it, and along it. Only what a tool could come near to. mm. */
import type { Cloud } from './cloud';
import type { Axes } from './place';

export type Near = {
  readonly count: number;
  readonly rho: Float64Array;
  readonly theta: Float64Array;
  readonly z: Float64Array;
  readonly bare: Float64Array;
  readonly wrapped: Float64Array;
  readonly station: Float64Array;
  /** Which of `clouds`. */
  readonly cloud: Int32Array;
  readonly clouds: readonly Cloud[];
  /** Those of them that have a ball here. */
  readonly met: readonly Cloud[];
};

/**
 * @param out, up how far from the axis and how high a tool reaches
 * @param room what stays free round it
 */
export function nearTo(
  { origin, x, y, z }: Axes,
  clouds: readonly Cloud[],
  out: number,
  up: number,
  room: number,
): Near {
  const most = clouds.reduce((sum, c) => sum + c.station.length, 0);
  const [rho, theta, height, bare, wrapped, station] = Array.from({ length: 6 }, () => new Float64Array(most)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const cloud = new Int32Array(most);
  const far = Math.hypot(out, up) + room;
  let count = 0;
  for (const [c, { at, middle, reach, ...of }] of clouds.entries()) {
    const apart = Math.hypot(middle[0] - origin[0], middle[1] - origin[1], middle[2] - origin[2]);
    if (apart - reach > far) continue;
    for (let i = 0; i < of.station.length; i++) {
      const px = at[3 * i]! - origin[0];
      const py = at[3 * i + 1]! - origin[1];
      const pz = at[3 * i + 2]! - origin[2];
      const h = px * z[0] + py * z[1] + pz * z[2];
      const ball = of.wrapped[i]! + room;
      if (h + ball < 0 || h - ball > up) continue;
      const a = px * x[0] + py * x[1] + pz * x[2];
      const b = px * y[0] + py * y[1] + pz * y[2];
      const off = Math.sqrt(a * a + b * b);
      if (off - ball > out) continue;
      rho[count] = off;
      theta[count] = Math.atan2(b, a);
      height[count] = h;
      bare[count] = of.bare[i]!;
      wrapped[count] = of.wrapped[i]!;
      station[count] = of.station[i]!;
      cloud[count++] = c;
    }
  }
  const met = clouds.filter((_, c) => cloud.subarray(0, count).includes(c));
  return { count, rho, theta, z: height, bare, wrapped, station, cloud, clouds, met };
}
