/** Gas paths of headers that are lengths and bores alone. */
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import type { Design, Engine, HeaderSketch } from '../../../shared/design/types';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { lengthsOf } from '../../../src/pulse/path/lengths';
import { sketchPath } from '../../../src/pulse/path/sketch';
import type { GasPath, PathPipe } from '../../../src/pulse/path/types';
import { random } from '../../random';
import { example } from './designs';
import { rigged } from './rigged';

const four: HeaderSketch = {
  arrangement: 'all-into-one',
  primary: { length: 800, bore: 40 },
  collector: { length: 120, bore: 55 },
};
const pairs: HeaderSketch = {
  arrangement: 'pairs-then-one',
  primary: { length: 450, bore: 38 },
  secondary: { length: 420, bore: 42 },
  collector: { length: 110, bore: 52 },
};

const engineAlone = (engine: Engine): Design => ({
  format: 'evenrun-design',
  version: 1,
  engine,
  ports: [],
  tubes: {},
  tooling: {},
  merges: [],
  runners: [],
  groups: {},
});

const inline = engineAlone({ cylinders: 4, firingOrder: [1, 3, 4, 2] });
const eight = engineAlone({
  cylinders: 8,
  banks: [
    [1, 3, 5, 7],
    [2, 4, 6, 8],
  ],
  firingOrder: [1, 8, 4, 3, 6, 5, 7, 2],
});

const roles = (path: GasPath): string[] => path.pipes.map(({ id, role }) => `${role}: ${id}`);
const pipe = (path: GasPath, id: string): PathPipe => path.pipes.find((one) => one.id === id)!;
/** Which first pipes flow into it. */
const into = (path: GasPath, id: string): string[] =>
  path.ends.flatMap((end) =>
    end.kind === 'junction' && end.at.some(([to, side]) => to === id && side === 'start')
      ? end.at.flatMap(([from, side]) => (side === 'finish' ? [from] : []))
      : [],
  );

function refusal(sketch: HeaderSketch, design: Design): DesignError {
  try {
    sketchPath(sketch, design);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return error as DesignError;
  }
  throw new Error('was accepted');
}

test('four into one: the port in the head is part of the length', () => {
  const { path, assumed } = sketchPath(four, inline);
  expect(roles(path).slice(3)).toEqual(['primary: primary 4', 'collector: collector', 'tailpipe: tailpipe']);
  expect(pipe(path, 'primary 1')).toMatchObject({ length: 0.8, inHead: 0.08 });
  expect(pipe(path, 'collector').diameter).toEqual([
    [0, expect.closeTo(0.08, 12)],
    [0.12, 0.055],
  ]);
  expect(assumed.map((one) => one.path)).toEqual(['ports', 'exhaust/tailpipe']);
  for (const { toFirstJoin, toMouth } of lengthsOf(path)) {
    expect(toFirstJoin).toBe(0.8);
    expect(toMouth).toBeCloseTo(2.92, 12);
  }
  expect(rigged(path).pipes).toHaveLength(6);
});

test('pairs of 1-3-4-2 are 1-4 and 2-3, 360° apart', () => {
  const { path } = sketchPath(pairs, inline);
  expect(into(path, 'secondary 1-4')).toEqual(['primary 1', 'primary 4']);
  expect(into(path, 'secondary 2-3')).toEqual(['primary 2', 'primary 3']);
  expect(into(path, 'collector')).toEqual(['secondary 1-4', 'secondary 2-3']);
  expect(pipe(path, 'secondary 1-4').diameter).toEqual([
    [0, expect.closeTo(0.038 * Math.SQRT2, 12)],
    [0.09, 0.042],
    [0.42, 0.042],
  ]);
  expect(rigged(path).pipes).toHaveLength(8);
});

test('the order decides: 1-2-4-3 pairs 1-4 and 2-3 too, 1-4-3-2 pairs 1-3 and 2-4', () => {
  const names = (firingOrder: number[]): string[] =>
    sketchPath(pairs, engineAlone({ cylinders: 4, firingOrder }))
      .path.pipes.filter(({ role }) => role === 'secondary')
      .map(({ id }) => id);
  expect(names([1, 2, 4, 3])).toEqual(['secondary 1-4', 'secondary 2-3']);
  expect(names([1, 4, 3, 2])).toEqual(['secondary 1-3', 'secondary 2-4']);
});

test('two banks have a collector and a tailpipe each', () => {
  const { path } = sketchPath(four, eight);
  expect(into(path, 'collector 1')).toEqual(['primary 1', 'primary 3', 'primary 5', 'primary 7']);
  expect(into(path, 'collector 2')).toEqual(['primary 2', 'primary 4', 'primary 6', 'primary 8']);
  expect(path.pipes.filter(({ role }) => role === 'tailpipe')).toHaveLength(2);
  expect(rigged(path).pipes).toHaveLength(12);
});

test('where the engine says no more than its cylinders, usual banks and firing order', () => {
  const usual = sketchPath(pairs, engineAlone({ cylinders: 8 }));
  expect(usual.path).toEqual(sketchPath(pairs, eight).path);
  expect(usual.assumed[0]).toMatchObject({ path: 'engine/banks', taken: '1-3-5-7 | 2-4-6-8' });
  const inline = sketchPath(pairs, engineAlone({ cylinders: 4 }));
  expect(into(inline.path, 'secondary 1-4')).toEqual(['primary 1', 'primary 4']);
  expect(inline.assumed.map((one) => one.path)).toEqual(['ports', 'exhaust/tailpipe']);
});

test('a straight six: two threes into one each, or threes first into one', () => {
  const six = engineAlone({ cylinders: 6, firingOrder: [1, 5, 3, 6, 2, 4] });
  const apart = sketchPath(four, six).path;
  expect(into(apart, 'collector 1')).toEqual(['primary 1', 'primary 2', 'primary 3']);
  const joined = sketchPath({ ...pairs, arrangement: 'threes-then-one' }, six).path;
  expect(into(joined, 'secondary 1-2-3')).toHaveLength(3);
  expect(into(joined, 'collector')).toEqual(['secondary 1-2-3', 'secondary 4-5-6']);
});

describe('of a design with ports', () => {
  const design = example('four-4-1');

  test('each has its own length in the head and its own opening', () => {
    const ports = design.ports.map((port, i) => ({ ...port, lengthInHead: 70 + 10 * i }));
    const { path } = sketchPath(four, { ...design, ports });
    expect(path.valves.map(({ pipe: id }) => pipe(path, id).inHead)).toEqual([0.07, 0.08, 0.09, 0.1]);
    expect(pipe(path, 'primary 1').diameter[1]).toEqual([0.07, 0.037]);
  });

  test('what is as the laid-out header has it is followed alike: the same primaries, but for their walls', () => {
    const laid = laidOutPath(design).path.pipes.filter(({ role }) => role === 'primary');
    const drawn = sketchPath({ ...four, primary: { length: 820, bore: 39.4 } }, design).path.pipes;
    laid.forEach(({ diameter, inHead }, i) => {
      expect(drawn[i]!.inHead).toBe(inHead);
      drawn[i]!.diameter.slice(0, 3).forEach(([x, d], k) => {
        expect([x, d]).toEqual([expect.closeTo(diameter[k]![0], 12), expect.closeTo(diameter[k]![1], 12)]);
      });
    });
  });

  test('only the cylinders that it has ports of', () => {
    const one = sketchPath(four, example('v8-left-bank-4-1')).path;
    expect(one.valves.map(({ cylinder }) => cylinder)).toEqual([1, 3, 5, 7]);
  });

  test('two ports of one cylinder are two primaries', () => {
    const ports = [design.ports[0]!, { ...design.ports[1]!, cylinder: 1 }];
    const { path } = sketchPath(four, { ...design, ports });
    expect(path.valves).toEqual([
      { cylinder: 1, pipe: 'primary 1', share: 0.5 },
      { cylinder: 1, pipe: 'primary 1 2', share: 0.5 },
    ]);
    expect(rigged(path).pipes).toHaveLength(4);
  });
});

test('what cannot be followed is refused with its place', () => {
  expect(refusal(four, engineAlone({})).path).toBe('engine/cylinders');
  const short = engineAlone({ cylinders: 4, firingOrder: [1, 3, 2] });
  expect(refusal(pairs, short)).toMatchObject({ path: 'engine/firingOrder', found: '1-3-2, without cylinder 4' });
  expect(refusal(pairs, engineAlone({ cylinders: 3, firingOrder: [1, 3, 2] })).path).toBe('exhaust/sketch/arrangement');
  const { secondary: _, ...none } = pairs;
  expect(refusal(none, inline).path).toBe('exhaust/sketch/secondary');
  expect(refusal({ ...four, primary: { length: 85, bore: 40 } }, inline)).toMatchObject({
    path: 'exhaust/sketch/primary/length',
    found: '85 mm',
    allowed: '90 to 20000 mm: the port in the head is part of it',
  });
  expect(refusal({ ...four, collector: { length: 100, bore: 2 } }, inline).path).toBe('exhaust/sketch/collector/bore');
  const tail = { ...inline, exhaust: { tailpipe: { length: 3, bore: 50 } } };
  expect(refusal(four, tail).path).toBe('exhaust/tailpipe/length');
});

test('any sketch is a rig that nothing is refused of; its lengths come back (seed 4701)', () => {
  const draw = random(4701);
  for (let k = 0; k < 200; k++) {
    const arrangement = (['all-into-one', 'pairs-then-one', 'threes-then-one'] as const)[draw.whole(0, 2)]!;
    const size = { 'all-into-one': draw.whole(1, 8), 'pairs-then-one': 2 * draw.whole(2, 4), 'threes-then-one': 6 }[
      arrangement
    ];
    const firingOrder = Array.from({ length: size }, (_, i) => ({ c: i + 1, at: draw() }))
      .sort((a, b) => a.at - b.at)
      .map(({ c }) => c);
    const sketch: HeaderSketch = {
      arrangement,
      primary: { length: draw.between(91, 1500), bore: draw.between(20, 70) },
      secondary: { length: draw.between(10, 1500), bore: draw.between(20, 90) },
      collector: { length: draw.between(10, 400), bore: draw.between(20, 120) },
    };
    const { path } = sketchPath(sketch, engineAlone({ cylinders: size, firingOrder }));
    rigged(path);
    for (const { legs } of lengthsOf(path)) {
      expect(legs[0]!.length).toBe(sketch.primary.length / 1000);
      expect(legs.map(({ role }) => role)).toEqual([
        'primary',
        ...(arrangement === 'all-into-one' ? [] : ['secondary']),
        'collector',
        'tailpipe',
      ]);
    }
  }
});
