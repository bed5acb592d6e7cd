/**
 * public/examples/v8-bay.ply: an engine bay of our own invention, as a hand-held scanner would see it: sheets with dents and
 * noise, holes where nothing was seen, pipes, all in the scanner's own frame. The same bytes every time: `tsx scripts/bay.ts`.
 * mm; drawn in the design's frame and turned into the scanner's at the end.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { randomNumbers } from '../geometry/layout/random';
import { addScaled, cross, dot, reject, sub, unit } from '../geometry/vector';
import type { Vec3 } from '../shared/vec3';

/** How the scan lies in the design: the example's document has the same numbers. */
export const BAY_POSE = {
  position: [118, -240, -612] as Vec3,
  x: [0.174, 0.985, 0.021] as Vec3,
  y: [-0.985, 0.174, 0.008] as Vec3,
};

/** What a hand-held scanner scatters, mm. */
const SCATTER = 0.35;
const SEED = 20;

type Place = (u: number, v: number) => Vec3;
type Surface = { readonly corners: Vec3[]; readonly faces: [number, number, number][] };

/** Smooth dents: noise on a grid of random heights, in [-1, 1]. */
function dents(seed: number, cells: number): (u: number, v: number) => number {
  const next = randomNumbers(seed);
  const heights = Array.from({ length: (cells + 2) ** 2 }, () => 2 * next() - 1);
  const ease = (t: number): number => t * t * (3 - 2 * t);
  return (u, v) => {
    const [x, y] = [u * cells, v * cells];
    const [i, j] = [Math.min(cells, Math.floor(x)), Math.min(cells, Math.floor(y))];
    const [s, t] = [ease(x - i), ease(y - j)];
    const at = (a: number, b: number): number => heights[(j + b) * (cells + 2) + i + a]!;
    return (at(0, 0) * (1 - s) + at(1, 0) * s) * (1 - t) + (at(0, 1) * (1 - s) + at(1, 1) * s) * t;
  };
}

/** A grid over a sheet, without the patches that the scanner did not see. */
function sheet(across: number, along: number, place: Place, unseen: (u: number, v: number) => boolean): Surface {
  const corners: Vec3[] = [];
  for (let j = 0; j <= along; j++) for (let i = 0; i <= across; i++) corners.push(place(i / across, j / along));
  const faces: [number, number, number][] = [];
  for (let j = 0; j < along; j++)
    for (let i = 0; i < across; i++) {
      if (unseen((i + 0.5) / across, (j + 0.5) / along)) continue;
      const a = j * (across + 1) + i;
      const c = a + across + 1;
      faces.push([a, a + 1, c], [a + 1, c + 1, c]);
    }
  return { corners, faces };
}

/** A hose or bar along points, each reached in a straight line. */
function pipe(points: readonly Vec3[], radius: number, round = 12, step = 14): Surface {
  const stations: Vec3[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [from, to] = [points[i]!, points[i + 1]!];
    const parts = Math.max(1, Math.round(Math.hypot(...sub(to, from)) / step));
    for (let k = 0; k < parts; k++) stations.push(addScaled(from, sub(to, from), k / parts));
  }
  stations.push(points.at(-1)!);
  const side = (i: number): readonly [Vec3, Vec3] => {
    const way = unit(sub(stations[Math.min(i + 1, stations.length - 1)]!, stations[Math.max(0, i - 1)]!));
    const across = unit(reject(Math.abs(way[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1], way));
    return [across, cross(way, across)];
  };
  const place: Place = (u, v) => {
    const i = Math.round(v * (stations.length - 1));
    const [across, up] = side(i);
    const turn = 2 * Math.PI * u;
    return addScaled(addScaled(stations[i]!, across, radius * Math.cos(turn)), up, radius * Math.sin(turn));
  };
  return sheet(round, stations.length - 1, place, () => false);
}

const hump = (x: number, z: number, [cx, cz]: readonly [number, number], [wx, wz]: readonly [number, number]): number =>
  Math.exp(-(((x - cx) / wx) ** 2) - ((z - cz) / wz) ** 2);

/** The parts of the bay, beside a left bank whose ports look along +Y and down. */
function surfaces(): Surface[] {
  const panel = dents(1, 14);
  const missing = dents(2, 9);
  const wing = sheet(
    92,
    50,
    (u, v) => {
      const [x, z] = [-470 + 1080 * u, -300 + 540 * v];
      const arch = 34 * hump(x, z, [-240, 60], [190, 170]);
      const tower = 58 * hump(x, z, [250, 150], [120, 130]);
      return [x, 408 - arch - tower + 3 * panel(u, v), z];
    },
    (u, v) => missing(u, v) > 0.62,
  );
  const wall = dents(3, 10);
  const bulkhead = sheet(
    54,
    46,
    (u, v) => {
      const [y, z] = [-235 + 640 * u, -260 + 500 * v];
      return [560 - 40 * hump(y, z, [180, 60], [90, 80]) + 3 * wall(u, v), y, z];
    },
    (u, v) => missing(v, u) > 0.7,
  );
  // The rail's inner, upper and lower sides, rounded where they meet: its outside was out of sight.
  const rolled = dents(4, 20);
  const rail = sheet(
    112,
    26,
    (u, v) => {
      const x = -480 + 1120 * u;
      const [y, z] = aroundRail(v);
      return [x, y + 0.8 * rolled(u, v), z + 0.8 * rolled(v, u)];
    },
    (u, v) => missing(1 - u, v) > 0.8,
  );
  return [
    wing,
    bulkhead,
    rail,
    pipe(
      [
        [-450, 372, 196],
        [40, 384, 190],
        [110, 318, 186],
        [380, 318, 190],
        [520, 384, 168],
        [548, 384, 60],
      ],
      5,
      8,
    ),
    pipe(
      [
        [548, 120, 130],
        [420, 96, 176],
        [240, 40, 190],
        [120, -40, 196],
      ],
      13,
      14,
    ),
    pipe(
      [
        [-430, 352, -300],
        [-300, 350, -296],
        [260, 352, -300],
        [540, 352, -296],
      ],
      3.5,
      8,
    ),
    pipe(
      [
        [-360, -230, -500],
        [-360, 120, -505],
        [-352, 330, -430],
      ],
      24,
      16,
    ),
  ];
}

/** Round the rail's section from its lower outer edge over the inner side to the upper outer edge. */
function aroundRail(v: number): readonly [number, number] {
  const [inner, outer, low, high, r] = [303, 360, -437, -323, 12];
  const flat = outer - inner - r;
  const side = high - low - 2 * r;
  const corner = (Math.PI / 2) * r;
  let s = v * (2 * flat + side + 2 * corner);
  if (s <= flat) return [outer - s, low];
  s -= flat;
  if (s <= corner) return [inner + r - r * Math.sin(s / r), low + r - r * Math.cos(s / r)];
  s -= corner;
  if (s <= side) return [inner, low + r + s];
  s -= side;
  if (s <= corner) return [inner + r - r * Math.cos(s / r), high - r + r * Math.sin(s / r)];
  return [inner + r + (s - corner), high];
}

/** Binary PLY, little-endian: single-precision corners, triangles as lists. */
export function bayScan(): Uint8Array {
  const next = randomNumbers(SEED);
  const [ex, ey] = [unit(BAY_POSE.x), unit(reject(BAY_POSE.y, unit(BAY_POSE.x)))];
  const ez = cross(ex, ey);
  const corners: Vec3[] = [];
  const faces: [number, number, number][] = [];
  for (const surface of surfaces()) {
    const first = corners.length;
    for (const corner of surface.corners) {
      const seen = corner.map((x) => x + SCATTER * (2 * next() - 1)) as unknown as Vec3;
      const from = sub(seen, BAY_POSE.position);
      corners.push([dot(from, ex), dot(from, ey), dot(from, ez)]);
    }
    for (const [a, b, c] of surface.faces) faces.push([a + first, b + first, c + first]);
  }
  const head = new TextEncoder().encode(
    `ply\nformat binary_little_endian 1.0\ncomment an invented engine bay, mm\nelement vertex ${corners.length}\nproperty float x\nproperty float y\nproperty float z\nelement face ${faces.length}\nproperty list uchar int vertex_indices\nend_header\n`,
  );
  const bytes = new Uint8Array(head.length + 12 * corners.length + 13 * faces.length);
  bytes.set(head);
  const view = new DataView(bytes.buffer);
  let at = head.length;
  for (const corner of corners) for (const x of corner) at = putFloat(view, at, x);
  for (const face of faces) {
    view.setUint8(at, 3);
    for (const [k, corner] of face.entries()) view.setInt32(at + 1 + 4 * k, corner, true);
    at += 13;
  }
  return bytes;
}

function putFloat(view: DataView, at: number, value: number): number {
  view.setFloat32(at, value, true);
  return at + 4;
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  writeFileSync(join(import.meta.dirname, '../public/examples/v8-bay.ply'), bayScan());
