import { describe, expect, it } from 'vitest';
import { Room } from '../../../src/pulse/ends/orifice';
import { createPlanes } from '../../../src/pulse/ends/planes';
import { cycling } from '../../../src/pulse/engine/cycles';
import { Cylinder } from '../../../src/pulse/engine/cylinder';
import { joinEngine } from '../../../src/pulse/engine/join';
import { nozzleFlow } from '../../../src/pulse/engine/plenum';
import type { EngineSetup } from '../../../src/pulse/engine/types';
import { mixture } from '../../../src/pulse/equations/mixture';
import { countsOf } from '../../../src/pulse/forecast/cycleSums';
import { contentOf } from '../../../src/pulse/scheme/firstState';
import { four, fourIntoOne, single, stack } from '../engines';

const RPM = 3000;
/** Neither burns nor loses heat, and its valves leave a window shut. */
const cold: EngineSetup = {
  ...single,
  walls: { temperature: 450, factor: 0 },
  burn: { ...single.burn, efficiency: 0, middle: 300, duration: 1 },
};

/** A cylinder with nothing beside it but shut valves, from when its intake shut. */
function shut(setup: EngineSetup, step: number) {
  const planes = createPlanes(2, mixture(['charge', 'burnt']));
  planes.area.fill(1e-3);
  planes.density.fill(1.2);
  planes.velocity.fill(0);
  planes.pressure.fill(1e5);
  planes.gamma.fill(1.4);
  const cylinder = new Cylinder(planes, setup, 0, RPM, [{ plane: 0, share: 1 }], [{ plane: 3, share: 1 }]);
  return {
    cylinder,
    turn(from: number, to: number) {
      const count = Math.round((to - from) / step);
      const dt = (to - from) / count / (6 * RPM);
      for (let n = 0; n < count; n++) {
        cylinder.pass((from + 360) / (6 * RPM) + n * dt, dt);
        if (!cylinder.holds(dt)) throw new Error('no gas');
        cylinder.take(dt);
      }
    },
  };
}

describe('a cylinder with its valves shut', () => {
  // From 236° after the overlap to 480°, where its exhaust opens again.
  const rise = (step: number) => {
    const { cylinder, turn } = shut(cold, step);
    const { crank, charge } = cylinder;
    charge.fill(crank.volume(240), 1e5, 330, new Float64Array(1));
    turn(240, 360);
    const top = { pressure: charge.pressure, temperature: charge.temperature };
    turn(360, 476);
    return { top, end: charge, crank };
  };

  it('compresses as heats that follow temperature have it: entropy is kept', () => {
    const { top, crank } = rise(0.25);
    const gas = mixture(['charge', 'burnt']);
    const none = new Float64Array(1);
    const perKelvin = gas.gasConstant(none, 0, 1);
    // ∫ cv dT / T = R ln(V1/V2), by Simpson's rule.
    let sum = 0;
    const [from, to, n] = [330, top.temperature, 200];
    for (let i = 0; i <= n; i++) {
      const t = from + ((to - from) * i) / n;
      const heat = perKelvin / (gas.gamma(t, none, 0, 1) - 1);
      sum += ((i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * heat) / t;
    }
    const entropy = (sum * (to - from)) / (3 * n);
    expect(Math.abs(entropy / (perKelvin * Math.log(crank.volume(240) / crank.volume(360))) - 1)).toBeLessThan(2e-5);
  });

  it('comes back to where it began, to second order in the step', () => {
    const off = (step: number) => {
      const { cylinder, turn } = shut(cold, step);
      const { crank, charge } = cylinder;
      charge.fill(crank.volume(240), 1e5, 330, new Float64Array(1));
      turn(240, 480);
      return Math.abs(charge.temperature / 330 - 1);
    };
    const [coarse, fine] = [off(1), off(0.25)];
    expect(coarse).toBeLessThan(1e-4);
    expect(fine).toBeLessThan(1e-5);
  });

  it('releases all that Wiebe’s law has, and no more', () => {
    const setup = { ...single, walls: { temperature: 450, factor: 0 } };
    const { cylinder, turn } = shut(setup, 0.25);
    const { charge, crank, burning, counts } = cylinder;
    charge.fill(crank.volume(240), 1e5, 330, new Float64Array(1));
    const [mass, energy] = [charge.mass, charge.energy];
    turn(240, 470);
    expect(counts.released).toBeCloseTo(mass * burning.released, 6);
    expect(charge.fractions[0]).toBeCloseTo(1, 9);
    expect(charge.energy - energy).toBeCloseTo(mass * burning.raised - counts.work, 6);
    expect(charge.mass).toBe(mass);
  });

  it('gives its walls what leaves its gas', () => {
    const { cylinder, turn } = shut({ ...single, walls: { temperature: 450, factor: 1 } }, 0.5);
    const { charge, crank, burning, counts } = cylinder;
    charge.fill(crank.volume(240), 1e5, 330, new Float64Array(1));
    const [mass, energy] = [charge.mass, charge.energy];
    turn(240, 470);
    expect(counts.walled).toBeGreaterThan(0);
    expect(charge.energy - energy).toBeCloseTo(mass * burning.raised - counts.work - counts.walled, 6);
  });
});

describe('an engine on its pipes', () => {
  it('neither makes nor loses mass or energy over cycles', () => {
    const joined = joinEngine(four, fourIntoOne(0.6, 0.04, 0.5), 5000, 0.03);
    const { network, stand, cylinders, plenum, ids } = joined;
    const out = 2 * ids.indexOf('tail') + 1;
    const held = (entry: 0 | 2) =>
      contentOf(network.grid, stand.cells, entry) +
      network.ends.reduce((sum, end) => sum + (entry === 0 ? end.mass : end.energy), 0);
    const [mass, energy] = [held(0), held(2)];
    const cycle = cycling(joined, 5000, () => {});
    for (let n = 0; n < 2; n++) while (!cycle.advance(1000));
    const counts = countsOf(joined);
    const sum = (of: (one: (typeof counts)[number], k: number) => number) =>
      counts.reduce((all, one, k) => all + of(one, k), 0);
    const through = plenum!.drawn + sum((one) => one.left);
    expect(Math.abs(held(0) - mass - plenum!.drawn + stand.massOut[out]!) / through).toBeLessThan(1e-11);
    const raised = sum((one, k) => (one.released / cylinders[k]!.burning.released) * cylinders[k]!.burning.raised);
    const gained = raised - sum((one) => one.work + one.walled) + stand.heated + plenum!.drawnEnergy;
    expect(Math.abs(held(2) - energy - gained + stand.energyOut[out]!) / raised).toBeLessThan(1e-10);
  });

  it('begins again at the same bytes', () => {
    const run = () => {
      const joined = joinEngine(single, stack(0.5, 0.036), 6000, 0.03);
      const cycle = cycling(joined, 6000, () => {});
      while (!cycle.advance(1000));
      return [joined.cylinders[0]!.charge.energy, joined.stand.cells.conserved[10]];
    };
    expect(run()).toEqual(run());
  });
});

it('a throat passes what the isentropic nozzle does, and no more once choked', () => {
  const gas = mixture(['charge', 'burnt']);
  const room = new Room(new Float64Array(1));
  room.fill(createPlanes(1, gas), 2e5, 400);
  const { gamma, gasConstant } = room;
  const choked =
    (2e5 / Math.sqrt(gasConstant * 400)) * Math.sqrt(gamma) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));
  expect(nozzleFlow(room, 0.5e5)).toBeCloseTo(choked, 6);
  expect(nozzleFlow(room, 1e3)).toBeCloseTo(choked, 6);
  expect(nozzleFlow(room, 2e5)).toBe(0);
  const mach = Math.sqrt((2 / (gamma - 1)) * ((2 / 1.8) ** ((gamma - 1) / gamma) - 1));
  const cold = 400 / (1 + 0.5 * (gamma - 1) * mach * mach);
  expect(nozzleFlow(room, 1.8e5)).toBeCloseTo(
    (1.8e5 / (gasConstant * cold)) * mach * Math.sqrt(gamma * gasConstant * cold),
    6,
  );
});
