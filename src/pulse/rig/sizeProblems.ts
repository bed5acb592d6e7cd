/** Whether a rig is larger than anyone means: its cells, its output, and the work that its first waves already ask for. */
import type { Refusal } from '../../../shared/design/refusal';
import { opening } from '../ends/areaLaw';
import { endDiameter } from './bore';
import { cellsOf } from './ducts';
import { MAX_CELLS, MAX_OUTPUT, MAX_WORK } from './limits';
import { DEFAULTS } from './normalised';
import { rigPath } from './paths';
import type { ShapedRig } from './shape';
import { fastestSound } from './stateProblems';

export function sizeProblems(rig: ShapedRig): Refusal[] {
  const cells = cellsOf(rig);
  if (cells > MAX_CELLS) {
    return [
      {
        path: 'pipes',
        found: `${cells} cells in all, those that end corrections add with them`,
        allowed: `at most ${MAX_CELLS} in all: make some coarser`,
      },
    ];
  }
  return [...outputProblems(rig), ...workProblems(rig, cells)];
}

function outputProblems({ gas, duration, sample = 0, probes = [] }: ShapedRig): Refusal[] {
  if (sample === 0) return [];
  const rows = Math.floor(duration / sample) + 1;
  const carried = 'components' in gas ? gas.components.length - 1 : 0;
  const columns = 1 + probes.length * (4 + carried);
  if (rows * columns <= MAX_OUTPUT) return [];
  const least = (duration * columns) / (MAX_OUTPUT - columns);
  return [
    {
      path: 'sample',
      found: `${sample} s, ${rows} rows of ${columns} columns`,
      allowed: `at least ${least.toPrecision(3)} s for this duration and these probes, or 0 for no rows`,
    },
  ];
}

/**
 * The shortest cell, or the vessel that empties fastest, sets the step of all. What comes later may be faster still: this is the
 * least.
 */
function workProblems(rig: ShapedRig, cells: number): Refusal[] {
  const problems: Refusal[] = [];
  const judge = (path: string, step: number, what: string, remedy: string): void => {
    const work = (rig.duration / step) * cells;
    if (work <= MAX_WORK) return;
    problems.push({
      path,
      found: `${what}, whose steps of ${step.toPrecision(3)} s make ${work.toPrecision(3)} cell updates in all`,
      allowed: `at most ${MAX_WORK.toPrecision(1)} cell updates: ${remedy} or a shorter duration`,
    });
  };
  rig.pipes.forEach((pipe, i) => {
    const temperatures = pipe.initial.map(({ temperature }) => temperature);
    const spacing = pipe.length / pipe.cells;
    const what = `cells of ${spacing.toPrecision(3)} m`;
    judge(
      rigPath(rig, ['pipes', i, 'cells']),
      spacing / fastestSound(rig, temperatures),
      what,
      'fewer cells, a longer pipe',
    );
  });
  rig.ends.forEach((end, i) => {
    if (end.kind !== 'vessel') return;
    const hole = opening(end.area, end.dischargeCoefficient ?? DEFAULTS.dischargeCoefficient);
    const open = Math.min(hole.largest(-Infinity, Infinity), boreOf(rig, end.at));
    const step = end.volume / (open * fastestSound(rig, [end.temperature]));
    judge(`ends/${i}/volume`, step, `${end.volume} m³ behind ${open.toPrecision(3)} m²`, 'more volume, a smaller area');
  });
  return problems;
}

/** m² of the pipe there: no more than that takes part. */
function boreOf({ pipes }: ShapedRig, [id, side]: readonly [string, 'start' | 'finish']): number {
  const d = endDiameter(pipes.find((pipe) => pipe.id === id)!.diameter, side);
  return (Math.PI / 4) * d * d;
}
