/**
 * A bay as a scanner would give it, of our own making: a floor, walls and the faces of the heads as rough sheets of small
 * triangles, about the header's ports and tubes. Seeded. mm, in the design's frame.
 */
import { addScaled, cross, reject, scale, unit } from '../../geometry';
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { random } from '../random';

type Sheet = {
  readonly corner: Vec3;
  readonly across: Vec3;
  readonly up: Vec3;
  /** Which way it swells, mm. */
  readonly swell: Vec3;
};

/** @param triangles about how many */
export function scannedBay(design: Design, triangles: number, seed: number): Float32Array {
  const sheets = sheetsAbout(design);
  const areas = sheets.map((s) => Math.hypot(...s.across) * Math.hypot(...s.up));
  const whole = areas.reduce((a, b) => a + b, 0);
  const step = Math.sqrt((2 * whole) / triangles);
  const next = random(seed);
  const grids = sheets.map((sheet) => ({
    sheet,
    m: Math.max(1, Math.round(Math.hypot(...sheet.across) / step)),
    n: Math.max(1, Math.round(Math.hypot(...sheet.up) / step)),
    waves: [next.between(60, 140), next.between(60, 140), next.between(0, 6), next.between(0, 6)],
  }));
  const soup = new Float32Array(18 * grids.reduce((sum, { m, n }) => sum + m * n, 0));
  let at = 0;
  for (const { sheet, m, n, waves } of grids) {
    const [wide, high] = [Math.hypot(...sheet.across), Math.hypot(...sheet.up)];
    const points = new Float64Array(3 * (m + 1) * (n + 1));
    for (let i = 0; i <= m; i++)
      for (let j = 0; j <= n; j++) {
        const [s, t] = [i / m, j / n];
        const swell =
          Math.sin((s * wide) / waves[0]! + waves[2]!) * Math.cos((t * high) / waves[1]! + waves[3]!) +
          0.02 * next.between(-1, 1);
        for (let k = 0; k < 3; k++)
          points[3 * (i * (n + 1) + j) + k] =
            sheet.corner[k]! + s * sheet.across[k]! + t * sheet.up[k]! + swell * sheet.swell[k]!;
      }
    const put = (i: number, j: number): void => {
      for (let k = 0; k < 3; k++) soup[at++] = points[3 * (i * (n + 1) + j) + k]!;
    };
    for (let i = 0; i < m; i++)
      for (let j = 0; j < n; j++)
        for (const [a, b] of [
          [i, j],
          [i + 1, j],
          [i + 1, j + 1],
          [i, j],
          [i + 1, j + 1],
          [i, j + 1],
        ] as const)
          put(a, b);
  }
  return soup;
}

/** Round the tubes' box, a hand's breadth off, and behind each port. */
function sheetsAbout(design: Design): Sheet[] {
  const points = [
    ...design.runners.flatMap((r) => r.points ?? []),
    ...design.merges.map((m) => addScaled(m.position, unit(m.axis), m.length)),
  ];
  const low = [0, 1, 2].map((k) => Math.min(...points.map((p) => p[k]!)) - 70);
  const high = [0, 1, 2].map((k) => Math.max(...points.map((p) => p[k]!)) + 70);
  const [x, y, z] = [high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!];
  const corner: Vec3 = [low[0]!, low[1]!, low[2]!];
  return [
    { corner, across: [x, 0, 0], up: [0, y, 0], swell: [0, 0, 15] },
    { corner, across: [0, y, 0], up: [0, 0, z], swell: [15, 0, 0] },
    { corner, across: [x, 0, 0], up: [0, 0, z], swell: [0, 15, 0] },
    { corner: [low[0]!, high[1]!, low[2]!], across: [x, 0, 0], up: [0, 0, z], swell: [0, 15, 0] },
    { corner: [high[0]!, low[1]!, low[2]!], across: [0, y, 0], up: [0, 0, z], swell: [15, 0, 0] },
    ...design.ports.map(({ position, direction, up }): Sheet => {
      const way = unit(direction);
      const above = unit(reject(up, way));
      const aside = cross(above, way);
      const corner = addScaled(addScaled(addScaled(position, way, -9), aside, -50), above, -45);
      return { corner, across: scale(aside, 100), up: scale(above, 90), swell: scale(way, 2) };
    }),
  ];
}
