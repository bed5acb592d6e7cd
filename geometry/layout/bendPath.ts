/**
 * One runner inside the solver: its points as functions of few unknowns, and gradients by walking those functions
 * backwards (reverse-mode differentiation by hand). Flat arrays, because a live drag solves this every frame. mm, radians.
 *
 * The first bend point lies on the start ray and the last on the end ray, so both ends hold exactly whatever the
 * unknowns: a = signed distance along the start ray, b = along the end ray, three coordinates for each point between.
 * With one bend, b is no unknown and two closing equations take its place.
 */
import { setback } from '../curve/centerline';

export type BendPath = {
  readonly bends: number;
  readonly radii: Float64Array;
  /** Points 0 (start) … bends + 1 (end), three numbers each. */
  readonly points: Float64Array;
  /** Unit leg directions 0 … bends. The first and last are the port's and the inlet's, whatever the points. */
  readonly directions: Float64Array;
  /** Leg lengths; the first and last signed along those directions. */
  readonly legs: Float64Array;
  readonly turns: Float64Array;
  /** Of the turns. */
  readonly sines: Float64Array;
  readonly cosines: Float64Array;
  readonly setbacks: Float64Array;
  readonly straights: Float64Array;
  length: number;
  /** Adjoints of points, directions and (signed) end legs, gathered between `pull`s. */
  readonly pointsBar: Float64Array;
  readonly directionsBar: Float64Array;
  readonly endLegsBar: Float64Array;
};

export function bendPath(radii: readonly number[]): BendPath {
  const n = radii.length;
  return {
    bends: n,
    radii: Float64Array.from(radii),
    points: new Float64Array(3 * (n + 2)),
    directions: new Float64Array(3 * (n + 1)),
    legs: new Float64Array(n + 1),
    turns: new Float64Array(n),
    sines: new Float64Array(n),
    cosines: new Float64Array(n),
    setbacks: new Float64Array(n),
    straights: new Float64Array(n + 1),
    length: 0,
    pointsBar: new Float64Array(3 * (n + 2)),
    directionsBar: new Float64Array(3 * (n + 1)),
    endLegsBar: new Float64Array(2),
  };
}

/** Works out legs, turns, straights and length from `points` and the end directions already set in `directions`. */
export function measurePath(path: BendPath): void {
  const { bends: n, points: P, directions: D, legs, turns, sines, cosines, setbacks, straights, radii } = path;
  for (let i = 0; i <= n; i++) {
    const x = P[3 * i + 3]! - P[3 * i]!;
    const y = P[3 * i + 4]! - P[3 * i + 1]!;
    const z = P[3 * i + 5]! - P[3 * i + 2]!;
    if (i === 0 || i === n) {
      legs[i] = x * D[3 * i]! + y * D[3 * i + 1]! + z * D[3 * i + 2]!;
      continue;
    }
    const length = Math.max(Math.sqrt(x * x + y * y + z * z), 1e-9);
    legs[i] = length;
    D[3 * i] = x / length;
    D[3 * i + 1] = y / length;
    D[3 * i + 2] = z / length;
  }
  let total = 0;
  for (let i = 0; i < n; i++) {
    const a = 3 * i;
    const b = a + 3;
    const c = D[a]! * D[b]! + D[a + 1]! * D[b + 1]! + D[a + 2]! * D[b + 2]!;
    const x = D[a + 1]! * D[b + 2]! - D[a + 2]! * D[b + 1]!;
    const y = D[a + 2]! * D[b]! - D[a]! * D[b + 2]!;
    const z = D[a]! * D[b + 1]! - D[a + 1]! * D[b]!;
    const turn = Math.atan2(Math.sqrt(x * x + y * y + z * z), c);
    turns[i] = turn;
    sines[i] = Math.sin(turn);
    cosines[i] = Math.cos(turn);
    setbacks[i] = setback(radii[i]!, turn);
    total += radii[i]! * turn;
  }
  for (let i = 0; i <= n; i++) {
    straights[i] = legs[i]! - (i > 0 ? setbacks[i - 1]! : 0) - (i < n ? setbacks[i]! : 0);
    total += straights[i]!;
  }
  path.length = total;
}

/** Adds w to the adjoint of leg i's length. */
function pushLeg(path: BendPath, i: number, w: number): void {
  const { bends: n, directions: D, pointsBar } = path;
  if (i === 0) path.endLegsBar[0] = path.endLegsBar[0]! + w;
  else if (i === n) path.endLegsBar[1] = path.endLegsBar[1]! + w;
  else
    for (let a = 3 * i; a < 3 * i + 3; a++) {
      const pushed = w * D[a]!;
      pointsBar[a + 3] = pointsBar[a + 3]! + pushed;
      pointsBar[a] = pointsBar[a]! - pushed;
    }
}

/** Adds w to the adjoint of turn i. A point that does not turn has no direction to turn in: it gets none. */
export function pushTurn(path: BendPath, i: number, w: number): void {
  const { directions: D, directionsBar: bar, sines } = path;
  const s = sines[i]!;
  if (s < 1e-7) return;
  const much = w / s;
  for (let a = 3 * i; a < 3 * i + 3; a++) {
    bar[a] = bar[a]! - much * D[a + 3]!;
    bar[a + 3] = bar[a + 3]! - much * D[a]!;
  }
}

export function pushSetback(path: BendPath, i: number, w: number): void {
  const c = Math.cos(path.turns[i]! / 2);
  pushTurn(path, i, (w * path.radii[i]!) / (2 * Math.max(c * c, 1e-6)));
}

export function pushStraight(path: BendPath, i: number, w: number): void {
  pushLeg(path, i, w);
  if (i > 0) pushSetback(path, i - 1, -w);
  if (i < path.bends) pushSetback(path, i, -w);
}

/** d(length)/dθ = R − R·sec²(θ/2) = −R·tan²(θ/2). */
export function pushLength(path: BendPath, w: number): void {
  for (let i = 0; i <= path.bends; i++) pushLeg(path, i, w);
  for (let i = 0; i < path.bends; i++) {
    const t = Math.tan(path.turns[i]! / 2);
    pushTurn(path, i, -w * path.radii[i]! * t * t);
  }
}

/** Adds the vector w to the adjoint of a place on leg i's straight, `along` mm from the leg's first point. */
export function pushOnStraight(path: BendPath, i: number, along: number, wx: number, wy: number, wz: number): void {
  const { legs, pointsBar: bar } = path;
  const f = along / (Math.abs(legs[i]!) > 1e-9 ? legs[i]! : 1e-9);
  const a = 3 * i;
  bar[a] = bar[a]! + (1 - f) * wx;
  bar[a + 1] = bar[a + 1]! + (1 - f) * wy;
  bar[a + 2] = bar[a + 2]! + (1 - f) * wz;
  bar[a + 3] = bar[a + 3]! + f * wx;
  bar[a + 4] = bar[a + 4]! + f * wy;
  bar[a + 5] = bar[a + 5]! + f * wz;
}

/**
 * Adds the vector w to the adjoint of the place at fraction f of bend i:
 * x = P + (R·sin φ − T)·d1 + R·(1 − cos φ)·n, with n = (d2 − c·d1)/s, φ = f·θ.
 */
export function pushOnArc(path: BendPath, i: number, f: number, wx: number, wy: number, wz: number): void {
  const { directions: D, pointsBar, directionsBar: bar, turns, sines, cosines, radii, setbacks } = path;
  const theta = turns[i]!;
  const R = radii[i]!;
  const p = 3 * (i + 1);
  pointsBar[p] = pointsBar[p]! + wx;
  pointsBar[p + 1] = pointsBar[p + 1]! + wy;
  pointsBar[p + 2] = pointsBar[p + 2]! + wz;
  const s = sines[i]!;
  if (s < 1e-7) return;
  const a = 3 * i;
  const b = a + 3;
  const c = cosines[i]!;
  const ax = D[a]!;
  const ay = D[a + 1]!;
  const az = D[a + 2]!;
  const bx = D[b]!;
  const by = D[b + 1]!;
  const bz = D[b + 2]!;
  const nx = (bx - c * ax) / s;
  const ny = (by - c * ay) / s;
  const nz = (bz - c * az) / s;
  const wa = wx * ax + wy * ay + wz * az;
  const wn = wx * nx + wy * ny + wz * nz;
  const phi = f * theta;
  const sinPhi = Math.sin(phi);
  const cosPhi = Math.cos(phi);
  const inward = R * (1 - cosPhi);
  const forward = R * sinPhi - setbacks[i]!;
  // Adjoint of the unnormalised n, its part along n removed by the normalisation.
  const qx = (inward * (wx - wn * nx)) / s;
  const qy = (inward * (wy - wn * ny)) / s;
  const qz = (inward * (wz - wn * nz)) / s;
  const half = Math.cos(theta / 2);
  const thetaBar = f * R * (cosPhi * wa + sinPhi * wn) - (wa * R) / (2 * Math.max(half * half, 1e-6));
  const cosBar = -(qx * ax + qy * ay + qz * az) - thetaBar / s;
  bar[a] = bar[a]! + forward * wx - c * qx + cosBar * bx;
  bar[a + 1] = bar[a + 1]! + forward * wy - c * qy + cosBar * by;
  bar[a + 2] = bar[a + 2]! + forward * wz - c * qz + cosBar * bz;
  bar[b] = bar[b]! + qx + cosBar * ax;
  bar[b + 1] = bar[b + 1]! + qy + cosBar * ay;
  bar[b + 2] = bar[b + 2]! + qz + cosBar * az;
}

/** Adds w to the adjoint of how far leg i + 1 leans from leg i toward the unit vector u, square to both when they agree. */
export function pushLean(path: BendPath, i: number, u: readonly [number, number, number], w: number): void {
  const { directionsBar: bar } = path;
  for (let k = 0; k < 3; k++) {
    bar[3 * i + k] = bar[3 * i + k]! - w * u[k]!;
    bar[3 * i + 3 + k] = bar[3 * i + 3 + k]! + w * u[k]!;
  }
}

/** Turns the direction adjoints of inner legs into point adjoints; what is left is on points and the two end directions. */
export function settleDirections(path: BendPath): void {
  const { bends: n, directions: D, legs, pointsBar, directionsBar: bar } = path;
  for (let i = 1; i < n; i++) {
    const a = 3 * i;
    const along = bar[a]! * D[a]! + bar[a + 1]! * D[a + 1]! + bar[a + 2]! * D[a + 2]!;
    const leg = legs[i]!;
    for (let k = a; k < a + 3; k++) {
      const g = (bar[k]! - along * D[k]!) / leg;
      pointsBar[k + 3] = pointsBar[k + 3]! + g;
      pointsBar[k] = pointsBar[k]! - g;
      bar[k] = 0;
    }
  }
}
