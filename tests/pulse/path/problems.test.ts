/** A good path with one thing spoilt: what is refused, and where. */
import { expect, test } from 'vitest';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { pathProblems } from '../../../src/pulse/path/problems';
import type { GasPath, PathPipe } from '../../../src/pulse/path/types';
import { example } from './designs';

const { path } = laidOutPath(example('four-4-1'));
const spoilt = (id: string, change: Partial<PathPipe>): GasPath => ({
  ...path,
  pipes: path.pipes.map((pipe) => (pipe.id === id ? { ...pipe, ...change } : pipe)),
});
const told = (of: GasPath): string[] => pathProblems(of).map((p) => `${p.path}: ${p.found}`);

test('a good one has none', () => {
  expect(pathProblems(path)).toEqual([]);
});

const narrow: PathPipe['diameter'] = [
  [0, 0.004],
  [2, 0.004],
];
const backwards: PathPipe['diameter'] = [
  [0, 0.05],
  [1.5, 0.05],
  [1, 0.05],
  [2, 0.05],
];

test.each([
  [
    'a stub',
    spoilt('collector', {
      length: 0.009,
      diameter: [
        [0, 0.07],
        [0.009, 0.05],
      ],
    }),
    'merges/collector: a pipe of 9 mm',
  ],
  ['all of it in the head', spoilt('r1', { inHead: path.pipes[0]!.length }), 'runners/r1: a pipe of 0 mm'],
  ['narrow', spoilt('tailpipe', { diameter: narrow }), 'pipes/tailpipe: a bore of 4 mm'],
  ['out of order', spoilt('tailpipe', { diameter: backwards }), 'pipes/tailpipe: bores out of order'],
  ['no end', { ...path, ends: path.ends.slice(0, -1) }, 'pipes/tailpipe: its finish joined 0 times'],
  ['an end twice', { ...path, ends: [...path.ends, path.ends.at(-1)!] }, 'pipes/tailpipe: its finish joined 2 times'],
  ['no valves at a primary', { ...path, valves: path.valves.slice(1) }, 'runners/r1: its start joined 0 times'],
  [
    'half a cylinder',
    { ...path, valves: path.valves.map((v) => ({ ...v, share: 0.5 })) },
    "ports: 0.5 of cylinder 1's valves",
  ],
] as const)('%s', (_, of, expected) => {
  expect(told(of)).toContain(expected);
});
