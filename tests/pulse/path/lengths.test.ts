/** The way of each cylinder's gas, by the kernel's own lengths. m. */
import { expect, test } from 'vitest';
import { check } from '../../../geometry';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { lengthsOf } from '../../../src/pulse/path/lengths';
import { example, routed } from './designs';

test('of a 4-2-1: primary to the first join, then pair, secondary, collector, tailpipe', () => {
  const design = example('four-4-2-1');
  const [first] = lengthsOf(laidOutPath(design).path);
  expect(first).toMatchObject({ cylinder: 1, pipe: 'r1' });
  expect(first!.legs.map(({ pipe }) => pipe)).toEqual(['r1', 'pair 1-4', 's14', 'collector', 'tailpipe']);
  const runners = new Map(check(design, new Map()).runners.map((r) => [r.id, r.length]));
  expect(first!.toFirstJoin).toBeCloseTo(runners.get('r1')! / 1000, 12);
  expect(first!.toMouth).toBeCloseTo((runners.get('r1')! + 95 + runners.get('s14')! + 110 + 2000) / 1000, 12);
});

test.each(routed)('$name: a line for each valve, each down to one mouth', ({ design }) => {
  const { path } = laidOutPath(design);
  const lines = lengthsOf(path);
  expect(lines.map(({ pipe }) => pipe)).toEqual(path.valves.map(({ pipe }) => pipe));
  for (const { legs, toFirstJoin, toMouth } of lines) {
    expect(legs.at(-1)!.role).toBe('tailpipe');
    expect(toFirstJoin).toBeLessThan(toMouth);
    expect(toFirstJoin).toBeGreaterThanOrEqual(legs[0]!.length);
  }
});

test('where nothing joins, the first join is the open air', () => {
  const design = example('four-4-1');
  const runners = design.runners.slice(0, 1);
  const { path } = laidOutPath({ ...design, ports: design.ports.slice(0, 1), runners });
  const [only] = lengthsOf(path);
  expect(only!.toFirstJoin).toBe(only!.toMouth);
});
