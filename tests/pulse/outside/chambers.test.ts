/**
 * An expansion chamber between two long pipes: how much sound it keeps back, by the spectra of a short pulse before and after it. And
 * vessels that blow through a small hole: mass flow.
 */
import { describe, expect, it } from 'vitest';
import type { RigEnd } from '../../../src/pulse/rig/types';
import { flowValue, sourceOf } from '../../reference/flow';
import {
  areaOf,
  diameterOf,
  off,
  once,
  pipe,
  probesAt,
  profileOf,
  REST,
  runRig,
  simpleWave,
  soundSpeed,
  stateAt,
} from './rigs';
import { strengthAt } from './tones';

const C0 = soundSpeed(293.15);
const CHAMBER = 0.25;
const SAMPLE = 2e-5;

const joint = (a: string, b: string): RigEnd => ({
  kind: 'junction',
  at: [
    [a, 'finish'],
    [b, 'start'],
  ],
  model: 'equal-pressure',
});

/** Pressures before and after a chamber of m times the area, from when a pulse 0.1 m long passes until the chamber has fallen silent. */
function listen(m: number) {
  const pulse = (x: number) => (x > 0.6 && x < 0.7 ? simpleWave(1.0002) : REST);
  const run = runRig(
    [
      pipe('in', 1, 200, diameterOf(1e-3), pulse),
      pipe('chamber', CHAMBER, 50, diameterOf(m * 1e-3)),
      pipe('out', 0.5, 100, diameterOf(1e-3)),
    ],
    [
      { kind: 'through', at: ['in', 'start'] },
      joint('in', 'chamber'),
      joint('chamber', 'out'),
      { kind: 'through', at: ['out', 'finish'] },
    ],
    0.004 + m * 0.0025,
    { probes: probesAt(['in', 0.75], ['out', 0.3]), sample: SAMPLE },
  );
  const [before, after] = run.probes.map(({ pressure }) => pressure.map((p) => p - 101325));
  // What comes back from the chamber passes the first probe later than the pulse itself has passed: that is left out.
  const passed = Math.round((0.15 + 0.25) / C0 / SAMPLE);
  return { before: before!.slice(0, passed), after: after! };
}

type Loss = { m: number; kl: number; TL: number };
const losses = flowValue<Loss[]>('ac.TL');
describe(`what an expansion chamber keeps back; ${sourceOf('ac.TL')}`, () => {
  const heard = new Map([...new Set(losses.map(({ m }) => m))].map((m) => [m, once(() => listen(m))]));
  it.each(losses)('$m times the area, kl = $kl: within 1 dB', ({ m, kl, TL }) => {
    const { before, after } = heard.get(m)!();
    const frequency = (kl * C0) / CHAMBER / (2 * Math.PI);
    const [sent, got] = [before, after].map((one) => strengthAt(one, SAMPLE, frequency, false));
    expect(Math.abs(20 * Math.log10(sent! / got!) - TL)).toBeLessThan(1);
  });
});

describe(`a vessel that blows through a small hole; ${sourceOf('gas.orifice_examples')}`, () => {
  const AIR = { gamma: 1.4, gasConstant: 287.05 };
  const EXHAUST = { gamma: 1.33, gasConstant: 287 };
  const wanted = flowValue<{ note: string; mdot: number }[]>('gas.orifice_examples');
  it.each([
    [wanted[0]!, AIR, 101325, 293.15, 1e5],
    [wanted[1]!, AIR, 101325, 293.15, 9e4],
    [wanted[2]!, AIR, 101325, 293.15, 5e4],
    [wanted[3]!, EXHAUST, 4e5, 1200, 1.1e5],
  ] as const)('$note: mass flow within 0.1 %', ({ mdot }, gas, pressure, temperature, outside) => {
    const bore = 2e-3;
    // It fills the pipe again at the outside's pressure, and begins as it will be in the end.
    const heat = (gas.gamma * gas.gasConstant) / (gas.gamma - 1);
    let [T, velocity] = [temperature, 0];
    for (let i = 0; i < 50; i++) {
      velocity = (mdot * gas.gasConstant * T) / (outside * bore);
      T = temperature - (0.5 * velocity * velocity) / heat;
    }
    const run = runRig(
      [pipe('a', 0.2, 20, diameterOf(bore), { pressure: outside, temperature: T, velocity: 0.8 * velocity })],
      [
        {
          kind: 'vessel',
          at: ['a', 'start'],
          volume: 1e9,
          pressure,
          temperature,
          area: 1.25e-4,
          dischargeCoefficient: 0.8,
        },
        { kind: 'open', at: ['a', 'finish'] },
      ],
      0.3,
      { gas, ambient: { pressure: outside, temperature } },
    );
    const here = stateAt(profileOf(run, 'a'), 0.1, gas);
    expect(off(here.rho * here.u * areaOf(diameterOf(bore)), mdot)).toBeLessThan(1e-3);
  });
});
