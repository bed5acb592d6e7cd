/**
 * An engine on its gas path, joined for one speed and one length of cells: pipes of both sides in one network, cylinders and plenum
 * as its ends. The only file here that knows scheme, walls and ends together. SI units.
 */
import { endCorrection } from '../ends/endCorrection';
import { makeEnd } from '../ends/ends';
import type { End } from '../ends/planes';
import { createPlanes } from '../ends/planes';
import { mixture } from '../equations/mixture';
import { carry, hllc } from '../fluxes/hllc';
import type { GasPath, PathPipe } from '../path/types';
import { ductsOf } from '../rig/ducts';
import { fillPipe } from '../rig/fill';
import { planesOf } from '../rig/places';
import type { OpenEnd, RigPipe } from '../rig/types';
import { settleFirst } from '../scheme/firstState';
import { gridOf } from '../scheme/grid';
import { type Network, type Stand, standOf } from '../scheme/step';
import type { FactorLaw, Walls } from '../scheme/walls';
import { wallsOf } from '../walls/wallsOf';
import { Cylinder, type Port } from './cylinder';
import { Plenum } from './plenum';
import type { EngineSetup } from './types';

/** Fresh gas, then burnt gas, which is the one that is carried. */
export const COMPONENTS = ['charge', 'burnt'] as const;

/**
 * How much more heat a pulsating exhaust gives its walls than a steady stream: two to three times is common in published measurements
 * (Malchow, Sorenson and Buckius 1979; Depcik and Assanis, SAE 2002-01-0372, both from memory).
 */
export const PULSATING = 2;
/** Where exhaust pipes begin, K. */
const HOT = 950;
/** Of ports in a head that water cools, at full load, K: common practice. */
export const PORT_WALL = 520;

export type Joined = {
  readonly network: Network;
  readonly stand: Stand;
  readonly ids: readonly string[];
  readonly cylinders: readonly Cylinder[];
  readonly plenum: Plenum | null;
  /** What keeps friction factors up to date, for whoever calls it: they change slowly. */
  readonly laws: readonly (FactorLaw | null)[];
  /** Cells that lie in the head, from `first` to before `end`, of each exhaust pipe that begins there. */
  readonly ports: readonly { readonly first: number; readonly end: number }[];
};

/** No part of a design can have a name with a stroke in it. */
export const intakeOf = (cylinder: number): string => `intake/${cylinder}`;

export function joinEngine(setup: EngineSetup, path: GasPath, rpm: number, cell: number): Joined {
  const gas = mixture(COMPONENTS);
  const pipes = [
    ...setup.cylinders.map((c) => intakePipe(setup, c, cell)),
    ...path.pipes.map((p) => outPipe(p, setup, cell)),
  ];
  const ids = pipes.map(({ id }) => id);
  const mouths = setup.intake.plenumVolume === null ? setup.cylinders.map(mouthOf) : [];
  const rig = { pipes, ends: [...path.ends, ...mouths] };
  const ducts = ductsOf(rig);
  const grid = gridOf(ducts);
  const planes = createPlanes(pipes.length, gas);
  planes.area.set(grid.pipes.flatMap(({ first, end }, k) => [grid.area[first + k]!, grid.area[end + k]!]));
  const { pressure, temperature } = setup.air;
  const burntAir = { pressure, temperature, fractions: { burnt: 1 } };
  const place = (pipe: string, side: number) => 2 * ids.indexOf(pipe) + side;
  const cylinders = setup.cylinders.map((number, k) => {
    const exhausts: Port[] = path.valves
      .filter(({ cylinder }) => cylinder === number)
      .map(({ pipe, share }) => ({ plane: place(pipe, 0), share }));
    const intake: Port = { plane: 2 * k + 1, share: 1 };
    return new Cylinder(planes, setup, setup.fires[k]!, rpm, exhausts, [intake]);
  });
  const { plenumVolume, throttleArea } = setup.intake;
  const fresh = { pressure, temperature, fractions: new Float64Array(gas.carried) };
  const plenum =
    plenumVolume === null
      ? null
      : new Plenum(
          planes,
          setup.cylinders.map((_, k) => 2 * k),
          plenumVolume,
          throttleArea,
          fresh,
        );
  const ends: End[] = [
    ...path.ends.map((end) => makeEnd(end, planesOf(rig, end), planes, burntAir)),
    ...mouths.map((end) => makeEnd(end, planesOf(rig, end), planes, { pressure, temperature })),
    ...cylinders,
    ...(plenum ? [plenum] : []),
  ];
  const walls = wallsOf(rig, grid);
  for (let k = setup.cylinders.length; k < pipes.length; k++) {
    const { first, end } = grid.pipes[k]!;
    for (let i = first; i < end; i++) walls.heatShare[i]! *= PULSATING;
  }
  const ports = path.pipes.map(({ inHead }, k) => {
    const { first, spacing } = grid.pipes[setup.cylinders.length + k]!;
    return { first, end: first + Math.round(inHead / spacing) };
  });
  for (const { first, end } of ports) walls.wallTemperature.fill(PORT_WALL, first, end);
  const network: Network = {
    gas,
    grid,
    planes,
    walls: { ...walls, laws: pipes.map(() => null) } satisfies Walls,
    flux: { pass: hllc, carry },
    ends,
  };
  const stand = standOf(network);
  for (const [k, pipe] of grid.pipes.entries()) fillPipe(gas, pipe, ducts[k]!, pipes[k]!.initial, stand.cells);
  settleFirst(network, stand);
  return { network, stand, ids, cylinders, plenum, laws: walls.laws, ports };
}

const cellsIn = (length: number, cell: number): number => Math.max(2, Math.round(length / cell));

function intakePipe({ intake, air }: EngineSetup, cylinder: number, cell: number): RigPipe {
  const { runnerLength, runnerDiameter, plenumVolume, wallTemperature, roughness } = intake;
  // The plenum's gas swings along in front of a runner; a mouth of its own gets as much where its end is made.
  const length = runnerLength + (plenumVolume === null ? 0 : endCorrection('flanged', 0.5 * runnerDiameter));
  return {
    id: intakeOf(cylinder),
    length,
    cells: cellsIn(length, cell),
    diameter: [
      [0, runnerDiameter],
      [length, runnerDiameter],
    ],
    friction: { roughness },
    wallTemperature,
    initial: [{ from: 0, to: length, ...air, velocity: 0 }],
  };
}

function outPipe(
  { id, length, diameter, roughness, wallTemperature }: PathPipe,
  { air }: EngineSetup,
  cell: number,
): RigPipe {
  return {
    id,
    length,
    cells: cellsIn(length, cell),
    diameter,
    friction: { roughness },
    wallTemperature,
    initial: [{ from: 0, to: length, pressure: air.pressure, temperature: HOT, velocity: 0, fractions: { burnt: 1 } }],
  };
}

const mouthOf = (cylinder: number): OpenEnd => ({
  kind: 'open',
  at: [intakeOf(cylinder), 'start'],
  endCorrection: 'unflanged',
});
