/** What a gas path is made of, once read: the path, and what nobody gave. */
import { insist } from '../../../shared/design/refusal';
import type { Assumed } from '../engine/types';
import { pathProblems } from './problems';
import type { GasPath, PathEnd, PathPipe, PipeEnd, ValvePlace } from './types';

export type PathReading = { readonly path: GasPath; readonly assumed: readonly Assumed[] };

/** A path while it is put together. */
export type PathParts = { readonly pipes: PathPipe[]; readonly ends: PathEnd[]; readonly valves: ValvePlace[] };

/** @throws DesignError where it cannot be followed */
export function wholePath(title: string, parts: PathParts, assumed: readonly Assumed[]): PathReading {
  const path = { title, ...parts };
  insist(pathProblems(path));
  return { path, assumed };
}

export const noParts = (): PathParts => ({ pipes: [], ends: [], valves: [] });

/** The cylinders that breathe through it, in order. An engine is followed with these alone. */
export const coveredCylinders = ({ valves }: Pick<GasPath, 'valves'>): number[] =>
  [...new Set(valves.map(({ cylinder }) => cylinder))].sort((a, b) => a - b);

/** All that flow in at one pressure into the one that begins there. A joint of two equal bores passes waves as if it were none. */
export function joined(finishing: readonly string[], starting: string): PathEnd {
  const at: PipeEnd[] = [...finishing.map((pipe): PipeEnd => [pipe, 'finish']), [starting, 'start']];
  return { kind: 'junction', at, model: 'equal-pressure' };
}

/** m, where the pipe ends. */
export const finishDiameter = ({ diameter }: Pick<PathPipe, 'diameter'>): number => diameter.at(-1)![1];
