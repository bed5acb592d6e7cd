/**
 * Steady flow through tapers without friction, from a vast vessel to the surroundings: pressure, density, temperature and area where
 * the flow has the Mach numbers of the isentropic table; choked mass flow; a shock that stands in a widening pipe.
 */
import { describe, expect, it } from 'vitest';
import type { RigEnd } from '../../../src/pulse/rig/types';
import { flowValue, sourceOf } from '../../reference/flow';
import {
  areaOf,
  diameterOf,
  machs,
  off,
  once,
  pipe,
  placeOf,
  profileOf,
  runRig,
  type State,
  stateAt,
  valueAt,
} from './rigs';

type Row = { M: number; g: number; p_p0: number; rho_rho0: number; T_T0: number; A_Astar: number };
const rows = flowValue<Row[]>('gas.isentropic');
const row = (M: number, g: number): Row => rows.find((one) => one.M === M && one.g === g)!;

const R = 287.05;
const P0 = 2e5;
const T0 = 400;
const RHO0 = P0 / (R * T0);
const THROAT = 2e-4;

const vessel = (area: number): RigEnd => ({
  kind: 'vessel',
  at: ['a', 'start'],
  volume: 1e9,
  pressure: P0,
  temperature: T0,
  area,
  dischargeCoefficient: 1,
});

/** Areas along the pipe relative to the throat, at even places; the outside is at `pressure`. */
function steady(
  gamma: number,
  areas: readonly number[],
  pressure: number,
  length: number,
  cells: number,
  time: number,
) {
  const gas = { gamma, gasConstant: R };
  const diameter = areas.map((area, i) => [(i * length) / (areas.length - 1), diameterOf(area * THROAT)] as const);
  const start: State = { pressure, temperature: T0, velocity: 0 };
  const run = runRig(
    [pipe('a', length, cells, diameter, start)],
    [vessel(areaOf(diameter[0]![1])), { kind: 'open', at: ['a', 'finish'] }],
    time,
    { gas, ambient: { pressure, temperature: T0 } },
  );
  const profile = profileOf(run, 'a');
  const areaAt = (x: number): number => {
    const i = Math.min(Math.floor((x / length) * (areas.length - 1)), areas.length - 2);
    const [[xa, da], [xb, db]] = [diameter[i]!, diameter[i + 1]!];
    return areaOf(da + ((x - xa) / (xb - xa)) * (db - da)) / THROAT;
  };
  return { gas, profile, areaAt };
}

type Steady = ReturnType<typeof steady>;

/** Everything where the flow passes a row's Mach number, against that row. */
function holdsTo(
  { gas, profile, areaAt }: Steady,
  { M, p_p0, rho_rho0, T_T0, A_Astar }: Row,
  from: number,
  to: number,
  bound: number,
) {
  const x = placeOf(profile, machs(profile, gas), M, from, to);
  const here = stateAt(profile, x, gas);
  expect(off(here.p / P0, p_p0)).toBeLessThan(bound);
  expect(off(here.rho / RHO0, rho_rho0)).toBeLessThan(bound);
  expect(off(here.T / T0, T_T0)).toBeLessThan(bound);
  expect(off(areaAt(x), A_Astar)).toBeLessThan(bound);
}

describe.each([1.4, 1.33])(`γ = %s; ${sourceOf('gas.isentropic')}`, (g) => {
  const exit = row(0.6, g);
  const narrowing = once(() => steady(g, [6, exit.A_Astar], exit.p_p0 * P0, 0.2, 100, 0.05));
  it.each([0.1, 0.2, 0.3, 0.5])('narrowing to Mach 0.6: everything at Mach %s within 0.2 %', (M) => {
    holdsTo(narrowing(), row(M, g), 0, 0.2, 2e-3);
  });
  it('narrowing to Mach 0.6: the mass that the table says flows', () => {
    const { p, u, T } = stateAt(narrowing().profile, 0.1, narrowing().gas);
    const flow = (p / (R * T)) * u * narrowing().areaAt(0.1) * THROAT;
    const { M, T_T0, rho_rho0, A_Astar } = exit;
    const wanted = RHO0 * rho_rho0 * M * Math.sqrt(g * R * T0 * T_T0) * A_Astar * THROAT;
    expect(off(flow, wanted)).toBeLessThan(2e-3);
  });

  const widening = once(() =>
    steady(g, [row(0.8, g).A_Astar, row(0.2, g).A_Astar], row(0.2, g).p_p0 * P0, 0.2, 100, 0.05),
  );
  it.each([0.3, 0.5, 0.6])('widening from Mach 0.8 to 0.2, without loss: everything at Mach %s within 0.2 %', (M) => {
    holdsTo(widening(), row(M, g), 0.2, 0, 2e-3);
  });

  const fast = once(() => steady(g, [3.2, 1, 5.2], 0.01 * P0, 0.3, 300, 0.008));
  it.each([0.2, 0.3, 0.5, 0.6, 0.8, 0.9, 1.5, 2, 3])(
    'through a throat to supersonic: everything at Mach %s within 0.5 %',
    (M) => {
      holdsTo(fast(), row(M, g), 0, 0.3, 5e-3);
    },
  );
});

type Choked = { g: number; p_crit: number; phi_choked: number };
describe(`choked; ${sourceOf('gas.choked')}`, () => {
  it.each(flowValue<Choked[]>('gas.choked'))(
    'γ = $g: mass flow and pressure where a narrowing pipe ends',
    ({ g, p_crit, phi_choked }) => {
      const { profile } = steady(g, [3, 1], 0.2 * P0, 0.1, 100, 0.01);
      const x = 0.05;
      const middle = stateAt(profile, x, { gamma: g, gasConstant: R });
      const area = areaOf(0.5 * (diameterOf(3 * THROAT) + diameterOf(THROAT)));
      const flow = middle.rho * middle.u * area;
      expect(off(flow, (phi_choked * P0 * THROAT) / Math.sqrt(R * T0))).toBeLessThan(2e-3);
      // Speed changes without end at a choked mouth: from the last two cell centres the plane's pressure is known to a few per cent.
      const dx = 0.1 / 100;
      const last = valueAt(profile, profile.pressure, 0.1 - dx / 2) / P0;
      expect(last).toBeGreaterThan(p_crit);
      expect(last).toBeLessThan(p_crit * 1.1);
    },
  );
});

type Shock = { M1: number; g: number; M2: number; p2_p1: number; rho2_rho1: number; T2_T1: number; p02_p01: number };
describe.each([1.4, 1.33])(`a shock that stands in a widening pipe, γ = %s; ${sourceOf('gas.normal_shock')}`, (g) => {
  const shock = flowValue<Shock[]>('gas.normal_shock').find((one) => one.M1 === 1.5 && one.g === g)!;
  // Behind the shock the table begins anew with less stagnation pressure: the finish is where that table has Mach 0.3.
  const out = row(0.3, g);
  const finish = out.A_Astar / shock.p02_p01;
  const stand = once(() => {
    const flow = steady(g, [2, 1, finish], out.p_p0 * shock.p02_p01 * P0, 0.3, 300, 0.02);
    return { flow, end: placeOf(flow.profile, machs(flow.profile, flow.gas), 1, 0.3, 0.15) };
  });

  it('stands where the area calls for Mach 1.5, to 1 % of area', () => {
    const { flow, end } = stand();
    expect(off(flow.areaAt(end), row(1.5, g).A_Astar)).toBeLessThan(0.01);
  });

  it('jumps in pressure, density and temperature as the table says, within 1 %', () => {
    const { flow, end } = stand();
    // Read off a little way to either side and brought to the shock by the isentropic relations of each side.
    const cell = 0.3 / 300;
    const before = stateAt(flow.profile, end - 6 * cell, flow.gas);
    const after = stateAt(flow.profile, end + 6 * cell, flow.gas);
    const total = (M: number) => (1 + ((g - 1) / 2) * M * M) ** (g / (g - 1));
    const lost = (after.p * total(after.mach)) / (before.p * total(before.mach));
    expect(off(lost, shock.p02_p01)).toBeLessThan(0.01);
    const p1 = row(1.5, g).p_p0 * before.p * total(before.mach);
    const p2 = (after.p * total(after.mach)) / total(shock.M2);
    expect(off(p2 / p1, shock.p2_p1)).toBeLessThan(0.01);
    expect(off(after.T * (1 + ((g - 1) / 2) * after.mach ** 2), T0)).toBeLessThan(2e-3);
  });

  it('leaves at Mach 0.3', () => {
    const { flow } = stand();
    expect(off(stateAt(flow.profile, 0.2995, flow.gas).mach, 0.3)).toBeLessThan(0.01);
  });
});
