/**
 * The exact solution of the Riemann problem for a perfect gas, for tests alone: E. F. Toro, Riemann Solvers and Numerical Methods
 * for Fluid Dynamics, 3rd ed., Springer 2009, chapter 4. Written apart from the solver that it judges. States are
 * [density, velocity, pressure].
 */
export type State = readonly [density: number, velocity: number, pressure: number];
export type Star = { readonly pressure: number; readonly velocity: number };

/** Toro's f: how much the velocity changes through one wave that leads to pressure p; and its slope. */
function wave(p: number, [rho, , pk]: State, gamma: number): [number, number] {
  const a = Math.sqrt((gamma * pk) / rho);
  if (p > pk) {
    const root = Math.sqrt(2 / ((gamma + 1) * rho) / (p + ((gamma - 1) / (gamma + 1)) * pk));
    return [(p - pk) * root, root * (1 - (0.5 * (p - pk)) / (p + ((gamma - 1) / (gamma + 1)) * pk))];
  }
  const ratio = p / pk;
  return [
    ((2 * a) / (gamma - 1)) * (ratio ** ((gamma - 1) / (2 * gamma)) - 1),
    ratio ** (-(gamma + 1) / (2 * gamma)) / (rho * a),
  ];
}

export function starOf(left: State, right: State, gamma: number): Star {
  const z = (gamma - 1) / (2 * gamma);
  const [al, ar] = [left, right].map(([rho, , p]) => Math.sqrt((gamma * p) / rho)) as [number, number];
  // Two rarefactions: a start that is never below nothing.
  const start = al + ar - 0.5 * (gamma - 1) * (right[1] - left[1]);
  if (start <= 0) throw new Error('the states part so fast that they leave nothing between them');
  let p = (start / (al / left[2] ** z + ar / right[2] ** z)) ** (1 / z);
  for (let n = 0; n < 200; n++) {
    const [fl, dl] = wave(p, left, gamma);
    const [fr, dr] = wave(p, right, gamma);
    const next = Math.max(p - (fl + fr + right[1] - left[1]) / (dl + dr), 1e-3 * p);
    const done = Math.abs(next - p) <= 1e-15 * p;
    p = next;
    if (done) break;
  }
  const velocity = 0.5 * (left[1] + right[1] + wave(p, right, gamma)[0] - wave(p, left, gamma)[0]);
  return { pressure: p, velocity };
}

/** What lies at x / t = `speed`, the states having met at x = 0. */
export function sampleAt(left: State, right: State, star: Star, gamma: number, speed: number): State {
  const onLeft = speed < star.velocity;
  const sign = onLeft ? 1 : -1;
  const [rho, u, p] = onLeft ? left : right;
  const [v, s, vStar] = [sign * u, sign * speed, sign * star.velocity];
  const a = Math.sqrt((gamma * p) / rho);
  const ratio = star.pressure / p;
  const k = (gamma - 1) / (gamma + 1);
  if (ratio > 1) {
    const shock = v - a * Math.sqrt(((gamma + 1) * ratio + gamma - 1) / (2 * gamma));
    return s < shock ? [rho, u, p] : [(rho * (ratio + k)) / (k * ratio + 1), star.velocity, star.pressure];
  }
  if (s < v - a) return [rho, u, p];
  if (s > vStar - a * ratio ** ((gamma - 1) / (2 * gamma)))
    return [rho * ratio ** (1 / gamma), star.velocity, star.pressure];
  const inFan = 2 / (gamma + 1) + (k / a) * (v - s);
  return [
    rho * inFan ** (2 / (gamma - 1)),
    (sign * 2 * (a + 0.5 * (gamma - 1) * v + s)) / (gamma + 1),
    p * inFan ** ((2 * gamma) / (gamma - 1)),
  ];
}
