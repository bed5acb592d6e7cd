/**
 * The gas-flow solver beside the plain second-order scheme in C (`muscl.c`): million cell updates a second, a cell update being one cell advanced
 * by one whole time step. In turn in one run, in processor time, without setting up; how far either is from the fine-grid solution stands beside.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { readRig } from '../../../src/pulse/rig/read';
import type { Rig } from '../../../src/pulse/rig/types';
import { startRig } from '../../../src/pulse/startRig';
import { compare, inWords, rowsOfCsv } from '../../pulse/fine/compare';
import { flatten } from '../../pulse/fine/flatten.mjs';
import { build } from '../../pulse/fine/program.mjs';
import { type Spread, spread } from '../statistics';

const FOLDER = 'tests/bench/pulse';
/** Ours, before anything counts: the first rounds run code that is not compiled yet. */
const WARMING = 3;
const ROUNDS = 9;
const STEPS_AT_ONCE = 1000;

/** What is promised: at most so many times slower than C. */
const MOST_RATIO = 2;

type Timed = { readonly updates: number; readonly seconds: number; readonly rows: number[][] };

export function benchPulse(): string[] {
  const program = build(`${FOLDER}/muscl.c`);
  return [...benchRig('four-into-one', 'pulse      ', program), ...benchRig('long-pipe', '           ', program)];
}

function benchRig(name: string, first: string, program: string | null): string[] {
  const rig = readRig(readFileSync(`${FOLDER}/rigs/${name}.json`, 'utf8'));
  const fine = rowsOfCsv(rig, readFileSync(`${FOLDER}/${name}.csv`, 'utf8'));
  const [ours, theirs]: [Timed[], Timed[]] = [[], []];
  for (let round = 0; round < WARMING + ROUNDS; round++) {
    const own = runOurs(rig);
    if (round < WARMING) continue;
    ours.push(own);
    if (program !== null) theirs.push(runC(program, rig));
  }
  const cells = rig.pipes.reduce((sum, pipe) => sum + pipe.cells, 0);
  const lines = [
    `${first}${name}: ${cells} cells, ${rig.pipes.length} pipe${rig.pipes.length === 1 ? '' : 's'}, ${ROUNDS} rounds in turn`,
  ];
  lines.push(`           ours   ${speed(ours)}; ${inWords(compare(rig, ours[0]!.rows, fine))} from the fine solution`);
  if (program === null) return [...lines, '           no gcc is found: not compared with C, and no promise is checked'];
  const ratio = perUpdate(ours).least / perUpdate(theirs).least;
  lines.push(
    `           C      ${speed(theirs)}; ${inWords(compare(rig, theirs[0]!.rows, fine))}`,
    `           ours takes ${ratio.toFixed(2)} times as long: ${verdict(ratio <= MOST_RATIO)}`,
  );
  return lines;
}

function runOurs(rig: Rig): Timed {
  const run = startRig(rig);
  const before = process.cpuUsage();
  while (!run.advance(STEPS_AT_ONCE));
  const { user, system } = process.cpuUsage(before);
  const { times, probes, steps, cellUpdates } = run.result();
  const cells = rig.pipes.reduce((sum, pipe) => sum + pipe.cells, 0);
  if (cellUpdates !== steps * cells) throw new Error(`${steps} steps of ${cells} cells are not ${cellUpdates} updates`);
  const rows = [...times].map((time, row) => [time, ...probes.map(({ pressure }) => pressure[row]!)]);
  return { updates: cellUpdates, seconds: (user + system) / 1e6, rows };
}

function runC(program: string, rig: Rig): Timed {
  const { status, stdout, stderr } = spawnSync(program, ['2'], { input: flatten(rig), encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  const [, second, ...rows] = stdout
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number));
  const [, updates, seconds] = second!;
  return { updates: updates!, seconds: seconds!, rows };
}

/** Nanoseconds of processor time. */
const perUpdate = (timed: readonly Timed[]): Spread =>
  spread(timed.map(({ updates, seconds }) => (1e9 * seconds) / updates));

function speed(timed: readonly Timed[]): string {
  const { least, median, greatest } = perUpdate(timed);
  const million = (nanoseconds: number): string => (1000 / nanoseconds).toFixed(1);
  return `${million(least)} million cell updates a second (median ${million(median)}, least ${million(greatest)}; ${timed[0]!.updates} updates)`;
}

/** A promise that is broken makes the run fail. */
function verdict(holds: boolean): string {
  if (!holds) process.exitCode = 1;
  return `at most ${MOST_RATIO} ${holds ? 'holds' : 'IS MISSED'}`;
}
