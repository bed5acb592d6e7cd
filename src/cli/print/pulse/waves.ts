/** One speed alone, told of more closely: what the first cylinder's overlap holds, where that comes from, and what tells two exhausts apart. */
import { isAnswer, type Subject } from '../../../pulse/forecast/curve';
import { differenceWords, type SourcedRun, sourcesWords } from '../../../pulse/forecast/sourceWords';
import type { TorqueCurve } from '../../../pulse/forecast/types';
import { overlapMeans, overlapWords } from '../../../pulse/forecast/waveOverlap';
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
  const measured = overlapWords(runs, cylinder);
  const sourced = runs.flatMap((run): SourcedRun[] => {
    const sources = overlapSources(run, cylinder);
    return sources ? [{ ...run, sources }] : [];
  });
  if (measured === '' && sourced.length === 0) return [];
  const [one, other] = sourced;
  const difference = one && other ? differenceWords(one, other, cylinder) : '';
  return [
    `Waves at cylinder ${cylinder}: ${measured}`,
    ...sourced.map((run) => `  ${run.name}: ${sourcesWords(run, cylinder, run.sources, overlapMeans(run, cylinder))}`),
    ...(difference === '' ? [] : [`  ${difference}`]),
  ];
}
