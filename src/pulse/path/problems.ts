/**
 * Whether a gas path can be followed: its pipes neither too short nor too narrow, every end of every pipe once. Whoever makes a path
 * asks this last; places are those of the design where a pipe is drawn. SI units, said in mm.
 */
import type { Refusal } from '../../../shared/design/refusal';
import { LEAST_LENGTH } from './bores';
import { metres, millimetres } from './metres';
import { BORES, LEAST, LONGEST } from './plainProblems';
import type { GasPath, PathPipe, PipeEnd } from './types';

export const pathProblems = (path: GasPath): Refusal[] => [
  ...path.pipes.flatMap(pipeProblems),
  ...endProblems(path),
  ...valveProblems(path),
];

/** In the design where it is drawn there. */
const placeOf = ({ id, part }: PathPipe): string =>
  part === null ? `pipes/${id}` : 'runner' in part ? `runners/${part.runner}` : `merges/${part.merge}`;

const say = (m: number): string => `${Number(millimetres(m).toFixed(2))} mm`;

function pipeProblems(pipe: PathPipe): Refusal[] {
  const path = placeOf(pipe);
  const problems: Refusal[] = [];
  const { length, inHead, diameter } = pipe;
  const outside = length - inHead;
  // To a thousandth of a micrometre: sums of decimals are not exact.
  if (!(outside >= LEAST_LENGTH - 1e-9 && length <= metres(LONGEST)))
    problems.push({ path, found: `a pipe of ${say(outside)}`, allowed: `${LEAST} to ${LONGEST} mm outside the head` });
  const bores = diameter.map(([, d]) => d);
  const wrong = bores.find((d) => !(d >= metres(BORES[0]) && d <= metres(BORES[1])));
  if (wrong !== undefined)
    problems.push({ path, found: `a bore of ${say(wrong)}`, allowed: `${BORES[0]} to ${BORES[1]} mm` });
  const isRising = diameter.every(([x], i) => (i === 0 ? x === 0 : x > diameter[i - 1]![0]));
  if (!isRising || diameter.at(-1)![0] !== length)
    problems.push({ path, found: 'bores out of order', allowed: 'one at 0, then farther and farther, one at the end' });
  return problems;
}

function endProblems({ pipes, ends, valves }: GasPath): Refusal[] {
  const used = new Map<string, number>();
  const use = ([id, side]: PipeEnd): void => {
    used.set(`${side} of ${id}`, (used.get(`${side} of ${id}`) ?? 0) + 1);
  };
  for (const { pipe } of valves) use([pipe, 'start']);
  for (const end of ends) {
    if (end.kind === 'junction' || end.kind === 'restriction') for (const place of end.at) use(place);
    else use(end.at);
  }
  return pipes.flatMap((pipe) =>
    (['start', 'finish'] as const).flatMap((side): Refusal[] => {
      const times = used.get(`${side} of ${pipe.id}`) ?? 0;
      if (times === 1) return [];
      return [{ path: placeOf(pipe), found: `its ${side} joined ${times} times`, allowed: 'each end joined once' }];
    }),
  );
}

function valveProblems({ valves }: GasPath): Refusal[] {
  if (valves.length === 0) return [{ path: 'ports', found: 'none', allowed: 'a cylinder that breathes into it' }];
  return [...new Set(valves.map(({ cylinder }) => cylinder))].flatMap((cylinder): Refusal[] => {
    const sum = valves.reduce((all, valve) => all + (valve.cylinder === cylinder ? valve.share : 0), 0);
    if (Math.abs(sum - 1) < 1e-9) return [];
    return [{ path: 'ports', found: `${sum} of cylinder ${cylinder}'s valves`, allowed: 'all of them, once' }];
  });
}
