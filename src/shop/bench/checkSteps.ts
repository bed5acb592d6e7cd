/** Proving a runner's shape with a ruler before it is welded: end to end, then lying on a flat plate. mm */
import type { Header } from '../../../geometry';
import type { CheckHeights, Making } from '../making/report';
import type { Figure, Step } from './step';
import type { Units } from './units';

export function checkSteps(making: Making, header: Header, runner: string, units: Units): Step[] {
  const found = making.heights.find((h) => h.runner === runner);
  if (!found) return [];
  const tube = header.runners.find((r) => r.runner.id === runner)?.tube;
  return [chord(found, units), heights(found, tube?.outsideDiameter ?? 0, units)];
}

const chord = ({ runner, chord }: CheckHeights, units: Units): Step => ({
  id: `${runner}/chord`,
  runner,
  task: 'check',
  title: `Measure tube ${runner} from end to end`,
  figures: [units.length('Straight across', chord)],
  beside: [],
  says: ['Between the middles of its two ends, in a straight line.'],
  care: [],
  drawing: null,
});

/** `Start`, `Bend 2`, `End` */
export const heightName = (at: CheckHeights['heights'][number]['at']): string =>
  at === 'start' ? 'Start' : at === 'end' ? 'End' : `Bend ${at}`;

function heights({ runner, heights, span, points }: CheckHeights, diameter: number, units: Units): Step {
  const named = heights.map(({ at, height }) => ({ name: heightName(at), height }));
  const figures: Figure[] = named.map(({ name, height }) => units.length(name, height));
  return {
    id: `${runner}/heights`,
    runner,
    task: 'check',
    title: `Lay tube ${runner} on a flat plate`,
    figures: [...figures, units.length('End to end', span)],
    beside: [],
    says: [
      'It lies by itself. Measure how high its underside stands over the plate, at both ends and in the middle of each bend; from end to end along the plate.',
    ],
    care: [],
    drawing: { kind: 'plate', points, diameter, heights: named },
  };
}
