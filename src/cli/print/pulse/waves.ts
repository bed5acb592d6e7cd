/** One speed alone, told of more closely: what the first cylinder's overlap holds, where that comes from, and what tells two exhausts apart. */
import { isAnswer, type Subject } from '../../../pulse/forecast/curve';
import { overlapTold } from '../../../pulse/forecast/sourceWords';
import type { TorqueCurve } from '../../../pulse/forecast/types';
import type { PathRun } from '../../../pulse/forecast/wavePath';
import { overlapSources } from '../../../pulse/forecast/waveSources';

export type Waved = { readonly name: string; readonly subject: Subject; readonly curve: TorqueCurve };

/** Nothing where no waves were kept. */
export function waveLines(all: readonly Waved[]): string[] {
  const runs = all.flatMap(({ name, subject: { engine, path }, curve }): (PathRun & { name: string })[] => {
    const [answer] = curve;
    return answer && isAnswer(answer) && answer.waves ? [{ name, engine, path, answer }] : [];
  });
  const cylinder = runs[0]?.engine.cylinders[0];
  if (cylinder === undefined) return [];
  const { measured, difference, each } = overlapTold(
    runs.map((run) => ({ ...run, sources: overlapSources(run, cylinder) })),
    cylinder,
  );
  if (measured === '' && each.length === 0) return [];
  return [
    `Waves at cylinder ${cylinder}: ${measured}`,
    ...each.map(({ name, words }) => `  ${name}: ${words}`),
    ...(difference === '' ? [] : [`  ${difference}`]),
  ];
}
