/** Whether a rig is larger than anyone means: its cells, its output, and the work that its first waves already ask for. */
import type { Refusal } from '../../../shared/design/refusal';
import { MAX_CELLS, MAX_OUTPUT, MAX_WORK } from './limits';
import { rigPath } from './paths';
import type { ShapedRig } from './shape';
import { fastestSound } from './stateProblems';

export function sizeProblems(rig: ShapedRig): Refusal[] {
  const cells = rig.pipes.reduce((sum, pipe) => sum + pipe.cells, 0);
  if (cells > MAX_CELLS) {
    return [
      { path: 'pipes', found: `${cells} cells in all`, allowed: `at most ${MAX_CELLS} in all: make some coarser` },
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

/** The shortest cell sets the step of all. What comes later may be faster still: this is the least that it takes. */
function workProblems(rig: ShapedRig, cells: number): Refusal[] {
  const problems: Refusal[] = [];
  rig.pipes.forEach((pipe, i) => {
    const sound = fastestSound(
      rig,
      pipe.initial.map(({ temperature }) => temperature),
    );
    const step = pipe.length / pipe.cells / sound;
    const work = (rig.duration / step) * cells;
    if (work <= MAX_WORK) return;
    problems.push({
      path: rigPath(rig, ['pipes', i, 'cells']),
      found: `cells of ${(pipe.length / pipe.cells).toPrecision(3)} m, whose steps of ${step.toPrecision(3)} s make ${work.toPrecision(3)} cell updates in all`,
      allowed: `at most ${MAX_WORK.toPrecision(1)} cell updates: fewer cells, a longer pipe or a shorter duration`,
    });
  });
  return problems;
}
