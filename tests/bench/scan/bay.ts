/**
 * A scan-like engine bay of two million triangles about a header: bumpy walls on five sides of it, and pipes that pass close by
 * its runners, all of triangles of about a millimetre, none
 * within some millimetres of a tube. Repeatable: seeded. mm.
 */
import { anySquareTo, cross, type Header, pointAt, soupBox, type TriangleSoup } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';

/** From the header's tubes to the walls, and how bumpy these are. */
const WALL_GAP = 14;
const BUMP = 6;
const PIPES = 12;

export function bayAround(header: Header, triangles: number, seed: number): TriangleSoup {
  const next = random(seed);
  const soup = new Float32Array(9 * triangles);
  let length = 0;
  const isTaken = roomOf(header);
  const sheet = (rows: number, columns: number, at: (u: number, v: number) => Vec3): void => {
    const grid = new Float32Array(3 * (rows + 1) * (columns + 1));
    for (let i = 0; i <= rows; i++)
      for (let k = 0; k <= columns; k++) grid.set(at(i / rows, k / columns), 3 * (i * (columns + 1) + k));
    const put = (n: number): void => {
      for (let k = 0; k < 3 && length < soup.length; k++) soup[length++] = grid[3 * n + k]!;
    };
    for (let i = 0; i < rows; i++)
      for (let k = 0; k < columns; k++) {
        const a = i * (columns + 1) + k;
        if (isTaken(grid[3 * a]!, grid[3 * a + 1]!, grid[3 * a + 2]!)) continue;
        for (const n of [a, a + columns + 1, a + columns + 2, a, a + columns + 2, a + 1]) put(n);
      }
  };
  const [low, high] = reachOf(header);
  const each = Math.floor(triangles / (5 + 1));
  const side = Math.floor(Math.sqrt(each / 2));
  const [p, q, r] = [next.between(20, 40), next.between(20, 40), next.between(0, 6)];
  const bump = (u: number, v: number): number =>
    BUMP * (Math.sin(p * u + r) * Math.cos(q * v) + 0.2 * Math.sin(311 * u + 171 * v));
  for (const [axis, from] of [
    [2, low],
    [0, low],
    [0, high],
    [1, low],
    [1, high],
  ] as const) {
    const [one, other] = [(axis + 1) % 3, (axis + 2) % 3] as [number, number];
    const outward = from === low ? -1 : 1;
    sheet(side, side, (u, v) => {
      const place: [number, number, number] = [0, 0, 0];
      place[one] = low[one]! - 40 + u * (high[one]! - low[one]! + 80);
      place[other] = low[other]! - 40 + v * (high[other]! - low[other]! + 80);
      place[axis] = from[axis]! + outward * (WALL_GAP + BUMP * 1.2) + bump(u, v);
      return place;
    });
  }
  const left = triangles - length / 9;
  const around = Math.ceil(Math.sqrt(left / PIPES / 2 / 6));
  for (let n = 0; n < PIPES; n++) {
    const runner = header.runners[n % header.runners.length]!;
    const line = runner.centerline!;
    const { position, tangent } = pointAt(line, line.length * next.between(0.25, 0.75));
    const off = anySquareTo(tangent);
    const across = cross(tangent, off);
    const gap = runner.tubeRadius + 8 + next.between(6, 25);
    const angle = next.between(0, 2 * Math.PI);
    const way = (c: number, s: number): Vec3 => [0, 1, 2].map((k) => c * off[k]! + s * across[k]!) as unknown as Vec3;
    const out = way(Math.cos(angle), Math.sin(angle));
    const along = way(-Math.sin(angle), Math.cos(angle));
    sheet(Math.max(1, Math.floor(left / PIPES / 2 / around)), around, (u, v) => {
      const turn = 2 * Math.PI * v;
      const [s, c, t] = [8 * Math.sin(turn), 8 * Math.cos(turn), 260 * (u - 0.5)];
      return [0, 1, 2].map(
        (k) => position[k]! + (gap + c) * out[k]! + s * tangent[k]! + t * along[k]!,
      ) as unknown as Vec3;
    });
  }
  return soup.slice(0, 9 * Math.floor(length / 9));
}

/** Whether a place is nearer to a tube than a scan of a bay that the header stands in would be, by cells of 7 mm. */
function roomOf(header: Header): (x: number, y: number, z: number) => boolean {
  const cell = 7;
  const taken = new Set<string>();
  for (const { centerline: line, tubeRadius } of header.runners)
    for (let s = 0; s <= line!.length; s += 4) {
      const { position } = pointAt(line!, s);
      const reach = tubeRadius + 13;
      const [low, high] = [
        position.map((x) => Math.floor((x - reach) / cell)),
        position.map((x) => Math.floor((x + reach) / cell)),
      ];
      for (let i = low[0]!; i <= high[0]!; i++)
        for (let j = low[1]!; j <= high[1]!; j++)
          for (let k = low[2]!; k <= high[2]!; k++) {
            const off = [i, j, k].map((n, axis) => (n + 0.5) * cell - position[axis]!);
            if (Math.hypot(...off) < reach) taken.add(`${i},${j},${k}`);
          }
    }
  return (x, y, z) => taken.has([x, y, z].map((c) => Math.floor(c / cell)).join());
}

function reachOf(header: Header): [Vec3, Vec3] {
  const places = header.runners.flatMap((r) =>
    Array.from({ length: 60 }, (_, i) => pointAt(r.centerline!, (r.centerline!.length * i) / 59).position),
  );
  const box = soupBox(places.flat());
  const radius = Math.max(...header.runners.map((r) => r.tubeRadius));
  return [
    [box[0] - radius, box[1] - radius, box[2] - radius],
    [box[3] + radius, box[4] + radius, box[5] + radius],
  ];
}
