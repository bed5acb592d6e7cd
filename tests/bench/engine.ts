/**
 * An engine followed on its header: what a cell update costs with valves, cylinders, plenum and joints beside one of a bare pipe of as many
 * cells and the same gas, walls and friction; what finer cells cost and what they change; and a torque curve of twelve speeds on one thread.
 * In turn in one run, in processor time.
 */
import { cycling } from '../../src/pulse/engine/cycles';
import { COMPONENTS, joinEngine } from '../../src/pulse/engine/join';
import { USUAL_CELL } from '../../src/pulse/forecast/cells';
import { speedsOf } from '../../src/pulse/forecast/speeds';
import { followSpeed } from '../../src/pulse/forecast/startSpeed';
import { STUDY_CELL } from '../../src/pulse/forecast/study';
import { readRig } from '../../src/pulse/rig/read';
import { startRig } from '../../src/pulse/startRig';
import { four, fourIntoOne } from '../pulse/engines';
import { type Spread, spread } from './statistics';

const PATH = fourIntoOne(0.7, 0.038);
/** rpm */
const AT = 5000;
/** Cells: as a study has them, usual, and half of that, m. */
const CELLS = [STUDY_CELL, USUAL_CELL, USUAL_CELL / 2];
const WARMING = 2;
const ROUNDS = 7;
/** Of the bare pipe at once. */
const STEPS = 2000;

type Timed = { readonly updates: number; readonly seconds: number };

export function benchEngine(unit: number): string[] {
  const cells = joinEngine(four, PATH, AT, USUAL_CELL).network.grid.cells;
  const [bare, coupled]: [Timed[], Timed[]] = [[], []];
  for (let round = 0; round < WARMING + ROUNDS; round++) {
    const [pipe, engine] = [barePipe(cells), oneCycle(USUAL_CELL)];
    if (round < WARMING) continue;
    bare.push(pipe);
    coupled.push(engine);
  }
  const ratio = perUpdate(coupled).least / perUpdate(bare).least;
  return [
    `engine     four cylinders on their header at ${AT} rpm, ${cells} cells of ${1000 * USUAL_CELL} mm at most, ${ROUNDS} rounds in turn`,
    `           bare pipe     ${speed(bare)}`,
    `           with engine   ${speed(coupled)}`,
    `           a cell update with the engine takes ${ratio.toFixed(2)} times as long`,
    ...finer(),
    ...curve(unit),
  ];
}

/** A shock runs to and fro between two walls, so that no cell rests. */
function barePipe(cells: number): Timed {
  const rig = readRig(
    JSON.stringify({
      ...{ format: 'evenrun-rig', version: 1, duration: 1000, courant: 0.9 },
      gas: { components: [...COMPONENTS] },
      ambient: { ...four.air },
      pipes: [
        {
          ...{ id: 'bare', length: cells * USUAL_CELL, cells, wallTemperature: 900, friction: { roughness: 2e-5 } },
          diameter: [
            [0, 0.038],
            [cells * USUAL_CELL, 0.038],
          ],
          initial: [
            { from: 0, to: 1, pressure: 3e5, temperature: 1000, fractions: { burnt: 1 } },
            { from: 1, to: cells * USUAL_CELL, pressure: 1e5, temperature: 900, fractions: { burnt: 1 } },
          ],
        },
      ],
      ends: ['start', 'finish'].map((side) => ({ kind: 'closed', at: ['bare', side] })),
    }),
  );
  const run = startRig(rig);
  const seconds = took(() => void run.advance(STEPS));
  return { updates: run.result().cellUpdates, seconds };
}

/** The second cycle: in the first the pipes are still filled. */
function oneCycle(cell: number): Timed {
  const running = cycling(joinEngine(four, PATH, AT, cell), AT, () => {});
  while (!running.advance(STEPS));
  const before = running.cellUpdates;
  const seconds = took(() => {
    while (!running.advance(STEPS));
  });
  return { updates: running.cellUpdates - before, seconds };
}

function finer(): string[] {
  const found = CELLS.map((cell) => {
    const begun = process.cpuUsage();
    const { torque, settled, cycles } = followSpeed({ engine: four, path: PATH, rpm: AT, cell });
    return { cell, torque, settled, cycles, seconds: since(begun) };
  });
  const usual = found.find(({ cell }) => cell === USUAL_CELL)!;
  return found.map(({ cell, torque, settled, cycles, seconds }) => {
    const off = 100 * (torque / usual.torque - 1);
    const times = seconds / usual.seconds;
    return `           a speed on ${1000 * cell} mm   ${times.toFixed(2)} times the time of ${1000 * USUAL_CELL} mm, torque ${torque.toFixed(2)} N m (${off.toFixed(2)} %), ${cycles} cycles${settled ? '' : ', NOT SETTLED'}`;
  });
}

function curve(unit: number): string[] {
  const begun = process.cpuUsage();
  const answers = speedsOf(four.speeds, 12).map((rpm) => followSpeed({ engine: four, path: PATH, rpm }));
  const seconds = since(begun);
  const unsettled = answers.filter(({ settled }) => !settled).length;
  return [
    `           a curve of ${answers.length} speeds, one thread: ${seconds.toFixed(1)} s = ${((1000 * seconds) / unit).toFixed(0)} yardsticks; ${unsettled} not settled`,
  ];
}

function took(work: () => void): number {
  const begun = process.cpuUsage();
  work();
  return since(begun);
}

/** s of processor time */
function since(begun: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1e6;
}

/** Nanoseconds. */
const perUpdate = (timed: readonly Timed[]): Spread =>
  spread(timed.map(({ updates, seconds }) => (1e9 * seconds) / updates));

function speed(timed: readonly Timed[]): string {
  const { least, median } = perUpdate(timed);
  return `${(1000 / least).toFixed(1)} million cell updates a second (median ${(1000 / median).toFixed(1)}; ${timed[0]!.updates} updates)`;
}
