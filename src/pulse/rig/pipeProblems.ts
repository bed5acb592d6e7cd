/** What the numbers of a pipe owe each other: its table of diameters, its roughness, the stretches that it begins with. m. */
import type { Refusal } from '../../../shared/design/refusal';
import { describe, oneOf } from '../../../shared/design/refusal';
import { SAME } from './limits';
import { didYouMean } from './nearest';
import { ID_RULE, isGoodPipeId } from './paths';
import type { ShapedPipe, ShapedRig } from './shape';

/** Everything else names pipes by their ids, so these come first. */
export function idProblems({ pipes }: ShapedRig): Refusal[] {
  const seen = new Set<string>();
  return pipes.flatMap(({ id }, i): Refusal[] => {
    const path = `pipes/${i}/id`;
    if (!isGoodPipeId(id)) return [{ path, found: describe(id), allowed: ID_RULE }];
    if (seen.has(id)) return [{ path, found: `${describe(id)} again`, allowed: 'an id that no other pipe has' }];
    seen.add(id);
    return [];
  });
}

export const pipeProblems = ({ pipes }: ShapedRig): Refusal[] =>
  pipes.flatMap((pipe) => [
    ...diameterProblems(pipe, `pipes/${pipe.id}`),
    ...stretchProblems(pipe, `pipes/${pipe.id}`),
  ]);

function diameterProblems({ diameter, length, friction }: ShapedPipe, path: string): Refusal[] {
  const problems: Refusal[] = [];
  const near = SAME * length;
  const say = (line: number, found: string, allowed: string): void => {
    problems.push({ path: `${path}/diameter/${line}`, found, allowed });
  };
  diameter.forEach(([x], line) => {
    const before = diameter[line - 1]?.[0];
    if (before === undefined) {
      if (x > near) say(line, `x = ${x}`, 'x = 0, where the pipe starts');
    } else if (Math.abs(x - before) <= near) {
      say(
        line,
        `two diameters at x = ${x}`,
        'x above the line before; for a step, let the bore change within a cell, or divide the pipe there and join the two: a widening with a "pressure-loss" junction, a narrowing with a "restriction" as wide as the narrower pipe',
      );
    } else if (x < before) say(line, `x = ${x} after ${before}`, 'x above the line before');
  });
  const last = diameter.length - 1;
  const ends = diameter[last]![0];
  if (Math.abs(ends - length) > near) say(last, `x = ${ends}`, `x = ${length}, the length of the pipe`);

  const radius = Math.min(...diameter.map(([, d]) => d)) / 2;
  if (typeof friction === 'object' && friction.roughness > radius) {
    const allowed = `at most ${radius} m, the pipe's least radius`;
    problems.push({ path: `${path}/friction/roughness`, found: String(friction.roughness), allowed });
  }
  return problems;
}

/** From the pipe's start to its finish, each place once, in whatever order they are given. */
function stretchProblems({ initial, length }: ShapedPipe, path: string): Refusal[] {
  const problems: Refusal[] = [];
  const near = SAME * length;
  const say = (i: number, field: string, found: string, allowed: string): void => {
    problems.push({ path: `${path}/initial/${i}${field}`, found, allowed });
  };
  initial.forEach(({ from, to }, i) => {
    if (to - from <= near) say(i, '/to', `${to}, from ${from}`, `more than ${from}, where the stretch begins`);
    else if (to > length + near) say(i, '/to', String(to), `at most ${length} m, the length of the pipe`);
  });
  if (problems.length > 0) return problems;

  let reached = 0;
  let before = -1;
  for (const i of initial.map((_, k) => k).sort((a, b) => initial[a]!.from - initial[b]!.from)) {
    const { from, to } = initial[i]!;
    if (from > reached + near)
      say(i, '/from', `nothing from ${reached} to ${from} m`, `a state there, or "from": ${reached}`);
    if (from < reached - near) {
      say(
        i,
        '/from',
        `${from}, where initial/${before} reaches to ${reached} m`,
        `"from": ${reached}, each place once`,
      );
    }
    if (to > reached) {
      reached = to;
      before = i;
    }
  }
  if (reached < length - near) {
    say(
      before,
      '/to',
      `nothing from ${reached} to ${length} m`,
      `a state as far as the pipe's finish, "to": ${length}`,
    );
  }
  return problems;
}

export function probeProblems({ pipes, probes = [] }: ShapedRig): Refusal[] {
  const lengths = new Map(pipes.map(({ id, length }) => [id, length]));
  const seen = new Map<string, number>();
  return probes.flatMap(({ pipe, x }, i): Refusal[] => {
    const length = lengths.get(pipe);
    if (length === undefined) {
      const allowed = `${oneOf(lengths.keys())}${didYouMean(pipe, lengths.keys())}`;
      return [{ path: `probes/${i}/pipe`, found: describe(pipe), allowed }];
    }
    if (x > length * (1 + SAME)) {
      return [
        { path: `probes/${i}/x`, found: String(x), allowed: `from 0 to ${length} m, the length of pipe "${pipe}"` },
      ];
    }
    const first = seen.get(`${pipe}@${x}`);
    if (first !== undefined) {
      return [{ path: `probes/${i}`, found: `the place of probes/${first} again`, allowed: 'each place once' }];
    }
    seen.set(`${pipe}@${x}`, i);
    return [];
  });
}
