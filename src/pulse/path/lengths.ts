/** How long the way of each cylinder's gas is: valve to the first join, and on to the open air. m. */
import type { GasPath, PathPipe, PipeRole } from './types';

export type Leg = { readonly pipe: string; readonly role: PipeRole; readonly length: number };

export type CylinderLength = {
  readonly cylinder: number;
  /** That begins at its valves. A cylinder with two ports has a line for each. */
  readonly pipe: string;
  /** Valve to the first place where other cylinders' gas joins; all the way where none does. */
  readonly toFirstJoin: number;
  /** Valve to the open air. */
  readonly toMouth: number;
  /** With the flow. */
  readonly legs: readonly Leg[];
};

/** In the order of `valves`. */
export const lengthsOf = (path: GasPath): CylinderLength[] =>
  path.valves.map(({ cylinder, pipe }) => {
    const way = wayFrom(path, pipe);
    const alone = way.findIndex((one) => !isAloneBehind(path, one));
    const legs = way.map(({ id, role, length }) => ({ pipe: id, role, length }));
    return {
      cylinder,
      pipe,
      toFirstJoin: total(alone < 0 ? legs : legs.slice(0, alone + 1)),
      toMouth: total(legs),
      legs,
    };
  });

const total = (legs: readonly Leg[]): number => legs.reduce((sum, { length }) => sum + length, 0);

/** Pipes from this one with the flow, to where nothing follows. */
export function wayFrom(path: GasPath, first: string): PathPipe[] {
  const way: PathPipe[] = [];
  let next: string | undefined = first;
  while (next !== undefined && way.length <= path.pipes.length) {
    const id: string = next;
    way.push(path.pipes.find((pipe) => pipe.id === id)!);
    next = placesBehind(path, id).find(([, side]) => side === 'start')?.[0];
  }
  return way;
}

/** Nothing else flows in where it ends. */
const isAloneBehind = (path: GasPath, { id }: PathPipe): boolean =>
  placesBehind(path, id).filter(([, side]) => side === 'finish').length <= 1;

function placesBehind({ ends }: GasPath, id: string): readonly (readonly [pipe: string, side: 'start' | 'finish'])[] {
  for (const end of ends) {
    if (end.kind !== 'junction' && end.kind !== 'restriction') continue;
    if (end.at.some(([pipe, side]) => pipe === id && side === 'finish')) return end.at;
  }
  return [];
}
