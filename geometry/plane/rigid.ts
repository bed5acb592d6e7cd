/** Moving plane curves without bending them: turned over where asked, turned, shifted. mm, radians. */
import { type Loop, type Point2, reversedLoop } from './loop';

export type Rigid = {
  /** Seen from behind: x becomes −x, before all else. */
  readonly mirrored: boolean;
  /** To the left, about the origin. */
  readonly turn: number;
  readonly shift: Point2;
};

export function movePoint2([x, y]: Point2, { mirrored, turn, shift }: Rigid): Point2 {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const u = mirrored ? -x : x;
  return [c * u - s * y + shift[0], s * u + c * y + shift[1]];
}

/** Counter-clockwise it stays. */
export function moveLoop(loop: Loop, rigid: Rigid): Loop {
  const moved = loop.map(([x, y, bulge]): Loop[number] => [
    ...movePoint2([x, y], rigid),
    rigid.mirrored && bulge !== 0 ? -bulge : bulge,
  ]);
  return rigid.mirrored ? reversedLoop(moved) : moved;
}

/** The move that brings points nearest to their goals, by least squares; a single one is shifted alone. */
export function rigidFit(points: readonly Point2[], goals: readonly Point2[], mirrored: boolean, turn = 0): Rigid {
  const from = points.map(([x, y]): Point2 => [mirrored ? -x : x, y]);
  const [mx, my] = meanOf(from);
  const [gx, gy] = meanOf(goals);
  let [along, across] = [0, 0];
  from.forEach(([x, y], k) => {
    const [u, v] = [goals[k]![0] - gx, goals[k]![1] - gy];
    along += (x - mx) * u + (y - my) * v;
    across += (x - mx) * v - (y - my) * u;
  });
  const angle = along === 0 && across === 0 ? turn : Math.atan2(across, along);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { mirrored, turn: angle, shift: [gx - c * mx + s * my, gy - s * mx - c * my] };
}

/** How many times larger points would lie nearest to their goals, once fitted; NaN where they are all one point. */
export function sizeFit(points: readonly Point2[], goals: readonly Point2[], rigid: Rigid): number {
  const moved = points.map((p) => movePoint2(p, rigid));
  const [mx, my] = meanOf(moved);
  const [gx, gy] = meanOf(goals);
  let [along, square] = [0, 0];
  moved.forEach(([x, y], k) => {
    along += (x - mx) * (goals[k]![0] - gx) + (y - my) * (goals[k]![1] - gy);
    square += (x - mx) ** 2 + (y - my) ** 2;
  });
  return along / square;
}

function meanOf(points: readonly Point2[]): Point2 {
  const [sx, sy] = points.reduce(([x, y], [px, py]) => [x + px, y + py], [0, 0]);
  return [sx / points.length, sy / points.length];
}
