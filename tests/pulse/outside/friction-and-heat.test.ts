/**
 * Steady flow with friction (Fanno) and with heat from a wall (Rayleigh) in a straight pipe: how far apart, and at what pressures
 * and temperatures, the flow has the Mach numbers of the tables. The tables' friction factor is Darcy's, four times Fanning's.
 */
import { describe, expect, it } from 'vitest';
import type { RigPipe } from '../../../src/pulse/rig/types';
import { flowValue, sourceOf } from '../../reference/flow';
import { areaOf, machs, off, once, pipe, placeOf, profileOf, runRig, stateAt } from './rigs';

const R = 287.05;
const P0 = 2e5;
const T0 = 300;

type Fanno = {
  M: number;
  g: number;
  fLmax_D_darcy: number;
  T_Tstar: number;
  p_pstar: number;
  p0_p0star: number;
  V_Vstar: number;
};
type Isentropic = { M: number; g: number; p_p0: number; T_T0: number };
const fanno = flowValue<Fanno[]>('gas.fanno');
const isentropic = flowValue<Isentropic[]>('gas.isentropic');

/** A pipe from a vast vessel, its whole bore open, to surroundings of the given pressure. */
function steadyPipe(
  gamma: number,
  length: number,
  diameter: number,
  cells: number,
  pressure: number,
  wall: Pick<RigPipe, 'friction' | 'wallTemperature'>,
  time: number,
) {
  const gas = { gamma, gasConstant: R };
  const run = runRig(
    [pipe('a', length, cells, diameter, { pressure, temperature: T0, velocity: 0 }, wall)],
    [
      {
        kind: 'vessel',
        at: ['a', 'start'],
        volume: 1e9,
        pressure: P0,
        temperature: T0,
        area: areaOf(diameter),
        dischargeCoefficient: 1,
      },
      { kind: 'open', at: ['a', 'finish'] },
    ],
    time,
    { gas, ambient: { pressure, temperature: T0 } },
  );
  return { gas, profile: profileOf(run, 'a') };
}

describe.each([1.4, 1.33])(`friction, γ = %s; ${sourceOf('gas.fanno')}`, (g) => {
  const row = (M: number) => fanno.find((one) => one.M === M && one.g === g)!;
  const inlet = isentropic.find((one) => one.M === 0.2 && one.g === g)!;
  const DIAMETER = 0.02;
  const LENGTH = 2;
  /** Fanning's, so that a flow that enters at Mach 0.2 leaves at Mach 0.8. */
  const friction = ((row(0.2).fLmax_D_darcy - row(0.8).fLmax_D_darcy) * DIAMETER) / (4 * LENGTH);
  const outside = (P0 * inlet.p_p0 * row(0.8).p_pstar) / row(0.2).p_pstar;
  const steady = once(() => {
    const { gas, profile } = steadyPipe(g, LENGTH, DIAMETER, 300, outside, { friction, wallTemperature: null }, 0.08);
    return { gas, profile, mach: machs(profile, gas) };
  });
  const place = (M: number) => placeOf(steady().profile, steady().mach, M, 0, LENGTH);
  const at = (M: number) => stateAt(steady().profile, place(M), steady().gas);

  it('enters at Mach 0.2', () => {
    const begin = stateAt(steady().profile, 0, steady().gas);
    expect(off(begin.mach, 0.2)).toBeLessThan(0.005);
    expect(off(begin.p / P0, inlet.p_p0)).toBeLessThan(0.002);
    expect(off(begin.T / T0, inlet.T_T0)).toBeLessThan(0.002);
  });

  it.each([
    [0.3, 0.5],
    [0.3, 0.7],
    [0.5, 0.7],
  ])('from Mach %s to %s: the length, within 0.5 %', (one, other) => {
    const length = ((row(one).fLmax_D_darcy - row(other).fLmax_D_darcy) * DIAMETER) / (4 * friction);
    expect(off(place(other) - place(one), length)).toBeLessThan(0.005);
  });

  it.each([0.5, 0.7])('from Mach 0.3 to %s: pressure, temperature and velocity, within 0.3 %', (M) => {
    const [one, other] = [at(0.3), at(M)];
    expect(off(other.p / one.p, row(M).p_pstar / row(0.3).p_pstar)).toBeLessThan(0.003);
    expect(off(other.T / one.T, row(M).T_Tstar / row(0.3).T_Tstar)).toBeLessThan(0.003);
    expect(off(other.u / one.u, row(M).V_Vstar / row(0.3).V_Vstar)).toBeLessThan(0.003);
    const stagnation = (h: typeof one) => h.p * (1 + ((g - 1) / 2) * h.mach ** 2) ** (g / (g - 1));
    expect(off(stagnation(other) / stagnation(one), row(M).p0_p0star / row(0.3).p0_p0star)).toBeLessThan(0.003);
  });

  it('keeps its stagnation temperature', () => {
    const { profile, mach } = steady();
    profile.temperature.forEach((T, i) => {
      expect(off(T * (1 + ((g - 1) / 2) * mach[i]! ** 2), T0)).toBeLessThan(1e-3);
    });
  });
});

describe(`printed rows of slow flow with friction; ${sourceOf('gas.table_read_fanno')}`, () => {
  it('from Mach 0.1 to 0.16: lengths within 0.5 %, pressures within 0.3 %', () => {
    const rows = flowValue<[number, number, number, number, number][]>('gas.table_read_fanno');
    const [DIAMETER, LENGTH] = [0.02, 2];
    const friction = ((rows[0]![1] - rows[3]![1]) * 1.02 * DIAMETER) / (4 * LENGTH);
    const first = isentropic.find((one) => one.M === 0.1 && one.g === 1.4)!;
    // A little longer than from row to row at the far end, so that Mach 0.16 lies inside.
    const outside = (P0 * first.p_p0 * rows[3]![3] * 0.98) / rows[0]![3];
    const { gas, profile } = steadyPipe(1.4, LENGTH, DIAMETER, 200, outside, { friction, wallTemperature: null }, 0.2);
    const mach = machs(profile, gas);
    const [low, high] = [rows[1]!, rows[3]!];
    const [a, b] = [low, high].map(([M]) => placeOf(profile, mach, M, 0, LENGTH)) as [number, number];
    expect(off(b - a, ((low[1] - high[1]) * DIAMETER) / (4 * friction))).toBeLessThan(0.005);
    expect(off(stateAt(profile, b).p / stateAt(profile, a).p, high[3] / low[3])).toBeLessThan(0.003);
  });
});

type Rayleigh = {
  M: number;
  g: number;
  T0_T0star: number;
  T_Tstar: number;
  p_pstar: number;
  p0_p0star: number;
  V_Vstar: number;
};
describe.each([1.4, 1.33])(`heat, γ = %s; ${sourceOf('gas.rayleigh')}`, (g) => {
  const row = (M: number) => flowValue<Rayleigh[]>('gas.rayleigh').find((one) => one.M === M && one.g === g)!;
  const outside =
    P0 * isentropic.find((one) => one.M === 0.2 && one.g === g)!.p_p0 * (row(0.8).p_pstar / row(0.2).p_pstar);
  const [DIAMETER, LENGTH, WALL] = [0.02, 1, 3e5];
  // What heats also drags, by the same factor. A wall of 300 000 K, which no pipe has, makes the drag next to nothing beside the heat.
  const friction = 2.3e-5 * (g / 1.4);
  const steady = once(() => {
    const { gas, profile } = steadyPipe(g, LENGTH, DIAMETER, 200, outside, { friction, wallTemperature: WALL }, 0.04);
    return { gas, profile, mach: machs(profile, gas) };
  });
  const at = (M: number) =>
    stateAt(steady().profile, placeOf(steady().profile, steady().mach, M, 0, LENGTH), steady().gas);

  it.each([0.5, 0.8])(
    'from Mach 0.3 to %s: stagnation temperature, temperature, pressure and velocity, within 0.5 %',
    (M) => {
      const [one, other] = [at(0.3), at(M)];
      const total = (h: typeof one) => h.T * (1 + ((g - 1) / 2) * h.mach ** 2);
      expect(off(total(other) / total(one), row(M).T0_T0star / row(0.3).T0_T0star)).toBeLessThan(0.005);
      expect(off(other.T / one.T, row(M).T_Tstar / row(0.3).T_Tstar)).toBeLessThan(0.005);
      expect(off(other.p / one.p, row(M).p_pstar / row(0.3).p_pstar)).toBeLessThan(0.005);
      expect(off(other.u / one.u, row(M).V_Vstar / row(0.3).V_Vstar)).toBeLessThan(0.005);
    },
  );

  it('the stagnation temperature rises as the analogy of Reynolds and Colburn says, within 0.5 %', () => {
    const { profile, mach } = steady();
    // ρu cp dT₀ = 4/D · ½ f ρu cp Pr^(−2/3) (wall − T) dx, with Pr = 0.71, added up along the run's own temperatures.
    const share = ((4 / DIAMETER) * 0.5 * friction) / 0.71 ** (2 / 3);
    const dx = LENGTH / profile.x.length;
    const total = (i: number) => profile.temperature[i]! * (1 + ((g - 1) / 2) * mach[i]! ** 2);
    let sum = 0;
    for (let i = 20; i < 180; i++)
      sum += share * dx * (WALL - 0.5 * (profile.temperature[i]! + profile.temperature[i + 1]!));
    expect(off(total(180) - total(20), sum)).toBeLessThan(0.005);
  });
});

type Factor = { Re: number; eD: number; f_darcy: number };
describe(`a rough pipe, by its roughness; ${sourceOf('si.friction_factor')}`, () => {
  it.each(flowValue<Factor[]>('si.friction_factor').filter(({ eD }) => eD > 0))(
    'Re $Re, roughness $eD of the diameter: pressure falls as Colebrook’s factor says, within 2 %',
    ({ Re, eD, f_darcy }) => {
      // Mach 0.2 at the inlet; the diameter makes the Reynolds number, with the viscosity of air by Sutherland's formula at T.
      const inlet = isentropic.find((one) => one.M === 0.2 && one.g === 1.4)!;
      const T = T0 * inlet.T_T0;
      const density = (P0 * inlet.p_p0) / (R * T);
      const viscosity = 1.716e-5 * (T / 273.15) ** 1.5 * ((273.15 + 110.4) / (T + 110.4));
      const diameter = (Re * viscosity) / (density * 0.2 * Math.sqrt(1.4 * R * T));
      // As long as Fanno flow needs from Mach 0.2 to 0.3 with that factor; T falls by 1 % on it, and Re with it hardly at all.
      const [one, other] = [0.2, 0.3].map((M) => fanno.find((row) => row.M === M && row.g === 1.4)!) as [Fanno, Fanno];
      const length = ((one.fLmax_D_darcy - other.fLmax_D_darcy) * diameter) / f_darcy;
      const outside = (P0 * inlet.p_p0 * other.p_pstar) / one.p_pstar;
      const wall = { friction: { roughness: eD * diameter }, wallTemperature: null };
      const { gas, profile } = steadyPipe(1.4, length, diameter, 100, outside, wall, (30 * length) / 343);
      // The outside's pressure is set for that length, so a factor that is off shows in the speed at the inlet.
      const begin = stateAt(profile, 0, gas);
      const end = stateAt(profile, length, gas);
      const fell = begin.p - end.p;
      const wanted = P0 * inlet.p_p0 * (1 - other.p_pstar / one.p_pstar);
      expect(off(fell / begin.mach ** 2, wanted / 0.04)).toBeLessThan(0.02);
    },
  );
});
