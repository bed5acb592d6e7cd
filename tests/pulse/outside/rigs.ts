/**
 * Small rigs for the tests that hold whole runs against published values, and what is read off their last instant. SI units; air of
 * γ = 1.4 unless said otherwise. A pipe begins with one state or, for waves, with one state per cell.
 */
import type { PipeProfile, RigRun } from '../../../src/pulse/report';
import type { InitialState, Probe, Rig, RigEnd, RigPipe } from '../../../src/pulse/rig/types';
import { AIR, pipe as plainPipe, ran, rig } from '../rigs';

export { AIR };
export const AMBIENT = { pressure: 101325, temperature: 293.15 };
export const soundSpeed = (temperature: number, gas = AIR): number =>
  Math.sqrt(gas.gamma * gas.gasConstant * temperature);

export type State = { pressure: number; temperature: number; velocity: number };
export const REST: State = { ...AMBIENT, velocity: 0 };

export const areaOf = (diameter: number): number => 0.25 * Math.PI * diameter * diameter;
export const diameterOf = (area: number): number => Math.sqrt((4 * area) / Math.PI);

/** @param state of the whole pipe, or of the cell round x */
export function pipe(
  id: string,
  length: number,
  cells: number,
  diameter: number | readonly (readonly [number, number])[],
  state: State | ((x: number) => State) = REST,
  more: Partial<RigPipe> = {},
): RigPipe {
  const dx = length / cells;
  const initial: InitialState[] =
    typeof state === 'function'
      ? Array.from({ length: cells }, (_, i) => ({
          from: i * dx,
          to: i === cells - 1 ? length : (i + 1) * dx,
          ...state((i + 0.5) * dx),
        }))
      : [{ from: 0, to: length, ...state }];
  const bore =
    typeof diameter === 'number'
      ? ([
          [0, diameter],
          [length, diameter],
        ] as const)
      : diameter;
  return plainPipe(id, { length, cells, diameter: bore, initial, ...more });
}

export function runRig(
  pipes: readonly RigPipe[],
  ends: readonly RigEnd[],
  duration: number,
  more: Partial<Rig> = {},
): RigRun {
  return ran(rig({ pipes, ends, duration, ambient: AMBIENT, profile: true, ...more }));
}

/** Two `through` ends. */
export const through = (first: string, last: string): RigEnd[] => [
  { kind: 'through', at: [first, 'start'] },
  { kind: 'through', at: [last, 'finish'] },
];

export const probesAt = (...places: [string, number][]): Probe[] => places.map(([id, x]) => ({ pipe: id, x }));

export function profileOf(run: RigRun, id: string): PipeProfile {
  const found = run.profile.find((one) => one.pipe === id);
  if (!found) throw new Error(`no pipe ${id}`);
  return found;
}

/** Linear between cell centres. */
export function valueAt(profile: PipeProfile, column: ArrayLike<number>, x: number): number {
  const { x: xs } = profile;
  let i = 0;
  while (i < xs.length - 2 && xs[i + 1]! < x) i++;
  const part = (x - xs[i]!) / (xs[i + 1]! - xs[i]!);
  return column[i]! + part * (column[i + 1]! - column[i]!);
}

export type Here = { p: number; u: number; T: number; rho: number; mach: number };
export function stateAt(profile: PipeProfile, x: number, gas = AIR): Here {
  const [p, u, T, rho] = (['pressure', 'velocity', 'temperature', 'density'] as const).map((name) =>
    valueAt(profile, profile[name], x),
  ) as [number, number, number, number];
  return { p, u, T, rho, mach: u / soundSpeed(T, gas) };
}

/** Where a column first passes a value, going from one x to another, either way. @throws where it does not */
export function placeOf(
  profile: PipeProfile,
  column: ArrayLike<number>,
  value: number,
  from: number,
  to: number,
): number {
  const { x } = profile;
  const inside = Array.from(x.keys()).filter((i) => x[i]! >= Math.min(from, to) && x[i]! <= Math.max(from, to));
  if (from > to) inside.reverse();
  for (let k = 1; k < inside.length; k++) {
    const [i, j] = [inside[k - 1]!, inside[k]!];
    const [a, b] = [column[i]! - value, column[j]! - value];
    if (a === 0) return x[i]!;
    if (a * b < 0) return x[i]! + (a / (a - b)) * (x[j]! - x[i]!);
  }
  throw new Error(`never passes ${value} between ${from} and ${to}`);
}

export const machs = (profile: PipeProfile, gas = AIR): Float64Array =>
  profile.velocity.map((u, i) => u / soundSpeed(profile.temperature[i]!, gas));

/** How far apart two numbers are, relative to the second. */
export const off = (found: number, wanted: number): number => Math.abs(found / wanted - 1);

/** Behind a shock of Mach number `mach` that runs to the right into gas at rest: Rankine–Hugoniot. */
export function behindShock(mach: number, ahead: State = REST, gas = AIR): State {
  const g = gas.gamma;
  const m2 = mach * mach;
  const compression = ((g + 1) * m2) / ((g - 1) * m2 + 2);
  const pressure = 1 + ((2 * g) / (g + 1)) * (m2 - 1);
  const c = soundSpeed(ahead.temperature, gas);
  return {
    pressure: ahead.pressure * pressure,
    temperature: (ahead.temperature * pressure) / compression,
    velocity: ahead.velocity + mach * c * (1 - 1 / compression),
  };
}

/** A simple wave to the right into gas at rest: what has `ratio` times the pressure. */
export function simpleWave(ratio: number, rest: State = REST, gas = AIR): State {
  const part = ratio ** ((gas.gamma - 1) / (2 * gas.gamma));
  return {
    pressure: rest.pressure * ratio,
    temperature: rest.temperature * part * part,
    velocity: (2 / (gas.gamma - 1)) * soundSpeed(rest.temperature, gas) * (part - 1),
  };
}

/** What several tests look at, made when the first one asks: a run that fails then fails them, and no others. */
export function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
