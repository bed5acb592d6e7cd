/**
 * Gases of several components in whole rigs. Exact waves of a gas whose heat capacity follows temperature are worked out here, by small
 * steps along isentropes and by Hugoniot's relation, from the substances' own table and not from the solver's.
 */
import { describe, expect, it } from 'vitest';
import { substance } from '../../../src/pulse/equations/substances';
import type { PipeProfile } from '../../../src/pulse/report';
import { off, once, pipe, placeOf, profileOf, runRig, type State, stateAt, through } from './rigs';

type Side = { name: string; p: number; T: number };

/** One substance by itself: its constant, cp, and enthalpy from 300 K by Simpson's rule. */
function pure(name: string) {
  const { gasConstant, heat } = substance(name);
  const cp = (T: number) => heat(T) + gasConstant;
  const rise = (a: number, b: number) => {
    const n = 40;
    const h = (b - a) / n;
    let sum = cp(a) + cp(b);
    for (let i = 1; i < n; i++) sum += (i % 2 ? 4 : 2) * cp(a + i * h);
    return (sum * h) / 3;
  };
  const sound = (T: number) => Math.sqrt((gasConstant * T * cp(T)) / heat(T));
  return { gasConstant, cp, rise, sound };
}

/** Speed gained and temperature reached where a side goes over to a pressure, by a fan below its own, by a shock above. */
function over({ name, p, T }: Side, star: number): { gained: number; T: number } {
  const gas = pure(name);
  if (star <= p) {
    // dT/dp = T R / (p cp) and du = dp / (ρc), by Runge and Kutta's midpoint in ln p.
    const n = 400;
    const h = Math.log(star / p) / n;
    let t = T;
    let gained = 0;
    for (let i = 0; i < n; i++) {
      const half = t + (0.5 * h * gas.gasConstant * t) / gas.cp(t);
      gained -= (h * gas.gasConstant * half) / gas.sound(half);
      t += (h * gas.gasConstant * half) / gas.cp(half);
    }
    return { gained, T: t };
  }
  // h₂ − h₁ = ½ (p₂ − p₁)(v₁ + v₂), by halving.
  const v = (pressure: number, t: number) => (gas.gasConstant * t) / pressure;
  let [low, high] = [T, 20 * T];
  for (let i = 0; i < 80; i++) {
    const t = 0.5 * (low + high);
    if (gas.rise(T, t) < 0.5 * (star - p) * (v(p, T) + v(star, t))) low = t;
    else high = t;
  }
  return { gained: -Math.sqrt((star - p) * (v(p, T) - v(star, low))), T: low };
}

/** The star state between two gases at rest. */
function between(left: Side, right: Side) {
  let [low, high] = [Math.min(left.p, right.p), Math.max(left.p, right.p)];
  for (let i = 0; i < 60; i++) {
    const p = Math.sqrt(low * high);
    if (over(left, p).gained + over(right, p).gained > 0) low = p;
    else high = p;
  }
  const [l, r] = [over(left, low), over(right, low)];
  return { p: low, u: l.gained, Tl: l.T, Tr: r.T };
}

const COMPONENTS = ['air', 'burnt'];
const burnt = (name: string): number => (name === 'burnt' ? 1 : 0);
const state = ({ name, p, T }: Side, velocity = 0): State & { fractions: Record<string, number> } => ({
  pressure: p,
  temperature: T,
  velocity,
  fractions: { burnt: burnt(name) },
});

function tube(left: Side, right: Side, velocity: number, time: number, cells: number): PipeProfile {
  const run = runRig(
    [pipe('a', 1, cells, 0.04, (x) => (x < 0.5 ? state(left, velocity) : state(right, velocity)))],
    through('a', 'a'),
    time,
    { gas: { components: COMPONENTS } },
  );
  return profileOf(run, 'a');
}

describe('the working of exact waves itself', () => {
  it('is that of a perfect gas where heat capacity is constant: argon', () => {
    // γ = 5/3: p* of 1 | 0.1 bar at equal temperatures, from the closed forms of fan and shock.
    const left = { name: 'argon', p: 1e5, T: 300 };
    const right = { name: 'argon', p: 1e4, T: 300 };
    const { p, u } = between(left, right);
    const g = 5 / 3;
    const c = Math.sqrt(g * substance('argon').gasConstant * 300);
    const fan = ((2 * c) / (g - 1)) * (1 - (p / 1e5) ** ((g - 1) / (2 * g)));
    const q = p / 1e4;
    const shock = (c / g) * (q - 1) * Math.sqrt((2 * g) / (g + 1) / (q + (g - 1) / (g + 1)));
    expect(off(u, fan)).toBeLessThan(1e-5);
    expect(off(fan, shock)).toBeLessThan(1e-5);
  });
});

describe('a tube of burnt gas and air', () => {
  it.each([
    [
      { name: 'burnt', p: 4e5, T: 1200 },
      { name: 'air', p: 1e5, T: 300 },
    ],
    [
      { name: 'burnt', p: 8e5, T: 2000 },
      { name: 'air', p: 1e5, T: 700 },
    ],
    [
      { name: 'air', p: 3e5, T: 300 },
      { name: 'burnt', p: 1e5, T: 900 },
    ],
  ])('$name at $p Pa, $T K: between the waves as worked out, within 0.5 %', (left, right) => {
    const star = between(left, right);
    const speed = Math.max(pure(left.name).sound(left.T), pure(right.name).sound(right.T) * 2);
    const time = 0.35 / speed;
    const profile = tube(left, right, 0, time, 1000);
    const contact = 0.5 + star.u * time;
    const [a, b] = [stateAt(profile, contact - 0.02), stateAt(profile, contact + 0.02)];
    for (const here of [a, b]) {
      expect(off(here.p, star.p)).toBeLessThan(0.005);
      expect(off(here.u, star.u)).toBeLessThan(0.005);
    }
    expect(off(a.T, star.Tl)).toBeLessThan(0.005);
    expect(off(b.T, star.Tr)).toBeLessThan(0.005);
    const middle = placeOf(profile, profile.fractions[0]!, 0.5, 0, 1);
    expect(Math.abs(middle - contact)).toBeLessThan(0.003);
  });
});

describe('hot burnt gas and cold air that move side by side', () => {
  const left = { name: 'burnt', p: 1e5, T: 1000 };
  const right = { name: 'air', p: 1e5, T: 300 };
  const end = once(() => tube(left, right, 100, 0.002, 400));

  it('the border moves with them, and no fraction leaves 0 to 1', () => {
    const profile = end();
    expect(Math.abs(placeOf(profile, profile.fractions[0]!, 0.5, 0, 1) - 0.7)).toBeLessThan(0.003);
    for (const share of profile.fractions[0]!) {
      expect(share).toBeGreaterThan(-1e-12);
      expect(share).toBeLessThan(1 + 1e-12);
    }
  });

  it('pressure and speed stay even, to 0.2 %', () => {
    const profile = end();
    for (const p of profile.pressure) expect(off(p, 1e5)).toBeLessThan(0.002);
    for (const u of profile.velocity) expect(off(u, 100)).toBeLessThan(0.002);
  });
});
