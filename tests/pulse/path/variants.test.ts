/** Equal lengths, given differences and other sizes: what changes, and that everything else stays. m. */
import { describe, expect, test } from 'vitest';
import { castPath } from '../../../src/pulse/path/cast';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { pathProblems } from '../../../src/pulse/path/problems';
import { sketchPath } from '../../../src/pulse/path/sketch';
import type { GasPath, PathPipe, PipeRole } from '../../../src/pulse/path/types';
import { equalised, withImbalance, withSizes } from '../../../src/pulse/path/variants';
import { random } from '../../random';
import { example, routed } from './designs';
import { rigged } from './rigged';

const ORDER = [1, 3, 4, 2];
const of = (path: GasPath, ...roles: PipeRole[]): PathPipe[] => path.pipes.filter(({ role }) => roles.includes(role));
const lengths = (path: GasPath, ...roles: PipeRole[]): number[] => of(path, ...roles).map(({ length }) => length);
const mean = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0) / numbers.length;
const spread = (numbers: readonly number[]): number => Math.max(...numbers) - Math.min(...numbers);
const bore = (pipe: PathPipe): number => pipe.diameter.at(-1)![1];
const headOf = ({ diameter, inHead }: PathPipe): unknown => diameter.filter(([x]) => x <= inHead);

const tacked = laidOutPath(example('four-4-1-as-tacked')).path;
const pairs = laidOutPath(example('four-4-2-1')).path;

describe.each(routed)('$name', ({ design }) => {
  const { path } = laidOutPath(design);
  const even = equalised(path);

  test('equalised: means stay, differences go, heads, bores and joints stay', () => {
    rigged(even);
    for (const role of ['primary', 'secondary'] as const) {
      if (of(path, role).length === 0) continue;
      expect(spread(lengths(even, role))).toBe(0);
      expect(mean(lengths(even, role))).toBeCloseTo(mean(lengths(path, role)), 12);
    }
    even.pipes.forEach((pipe, i) => {
      expect(bore(pipe)).toBe(bore(path.pipes[i]!));
      expect(headOf(pipe)).toEqual(headOf(path.pipes[i]!));
    });
    expect([even.ends, even.valves]).toEqual([path.ends, path.valves]);
    expect(even.pipes.map(({ id }) => id)).toEqual(path.pipes.map(({ id }) => id));
  });

  test('sizes as they are change nothing', () => {
    const same = withSizes(path, { primary: { length: mean(lengths(path, 'primary')) } });
    same.pipes.forEach((pipe, i) => {
      expect(pipe.length).toBeCloseTo(path.pipes[i]!.length, 12);
      pipe.diameter.forEach(([x, d], k) => {
        expect(x).toBeCloseTo(path.pipes[i]!.diameter[k]![0], 12);
        expect(d).toBeCloseTo(path.pipes[i]!.diameter[k]![1], 12);
      });
    });
  });
});

describe('a given imbalance', () => {
  test('spreads evenly about the mean, and neighbours in the firing order take turns', () => {
    const path = withImbalance(tacked, 0.06, ORDER);
    const middle = mean(lengths(tacked, 'primary'));
    const byOrder = ORDER.map((c) => {
      const { pipe } = path.valves.find(({ cylinder }) => cylinder === c)!;
      return path.pipes.find(({ id }) => id === pipe)!.length - middle;
    });
    const expected = [-0.03, 0.01, -0.01, 0.03];
    byOrder.forEach((off, i) => {
      expect(off).toBeCloseTo(expected[i]!, 12);
    });
    rigged(path);
  });

  test('of cylinders with two ports: both have one length, and cylinders take turns', () => {
    const twins: GasPath = {
      ...tacked,
      pipes: tacked.pipes.flatMap((pipe) =>
        pipe.role === 'primary' ? [pipe, { ...pipe, id: `${pipe.id}b` }] : [pipe],
      ),
      valves: tacked.valves.flatMap((v) => [v, { ...v, pipe: `${v.pipe}b` }].map((one) => ({ ...one, share: 0.5 }))),
    };
    const path = withImbalance(twins, 0.06, ORDER);
    const middle = mean(lengths(twins, 'primary'));
    expect(mean(lengths(path, 'primary'))).toBeCloseTo(middle, 12);
    const offsOf = (cylinder: number): number[] =>
      path.valves
        .filter((valve) => valve.cylinder === cylinder)
        .map(({ pipe }) => path.pipes.find(({ id }) => id === pipe)!.length - middle);
    for (const [i, off] of [-0.03, 0.01, -0.01, 0.03].entries())
      expect(offsOf(ORDER[i]!)).toEqual([expect.closeTo(off, 12), expect.closeTo(off, 12)]);
  });

  test('of which one cylinder alone has two ports, the mean and the spread stay', () => {
    const [first, ...rest] = tacked.valves;
    const odd: GasPath = {
      ...tacked,
      pipes: [...tacked.pipes, { ...tacked.pipes.find(({ id }) => id === first!.pipe)!, id: 'twin' }],
      valves: [{ ...first!, share: 0.5 }, { ...first!, pipe: 'twin', share: 0.5 }, ...rest],
    };
    const now = lengths(withImbalance(odd, 0.06, ORDER), 'primary');
    expect(mean(now)).toBeCloseTo(mean(lengths(odd, 'primary')), 12);
    expect(spread(now)).toBeCloseTo(0.06, 12);
  });

  test('0 is equalised, but for the secondaries', () => {
    const path = withImbalance(pairs, 0, ORDER);
    expect(lengths(path, 'primary')).toEqual(lengths(equalised(pairs), 'primary'));
    expect(lengths(path, 'secondary')).toEqual(lengths(pairs, 'secondary'));
  });

  test('of any engine: spread as asked, mean kept, as often short as long (seed 4702)', () => {
    const draw = random(4702);
    for (let k = 0; k < 100; k++) {
      const count = draw.whole(2, 9);
      const firingOrder = Array.from({ length: count }, (_, i) => i + 1);
      const { path } = sketchPath(
        {
          arrangement: 'all-into-one',
          primary: { length: draw.between(500, 1000), bore: 40 },
          collector: { length: 100, bore: 55 },
        },
        {
          format: 'evenrun-design',
          version: 1,
          engine: { firingOrder, banks: [firingOrder] },
          ports: [],
          tubes: {},
          tooling: {},
          merges: [],
          runners: [],
          groups: {},
        },
      );
      const asked = draw.between(0, 0.3);
      const uneven = withImbalance(path, asked, firingOrder);
      rigged(uneven);
      const now = lengths(uneven, 'primary');
      // A straight six goes into two collectors: the spread is over all of it.
      expect(spread(now)).toBeCloseTo(asked, 12);
      expect(mean(now)).toBeCloseTo(mean(lengths(path, 'primary')), 12);
      now.slice(1).forEach((length, i) => {
        expect(Math.sign(length - now[i]!)).toBe(i % 2 === 0 ? 1 : -1);
      });
    }
  });

  test('is refused where there is one primary, a cylinder without a turn, or no tube left', () => {
    expect(() => withImbalance(tacked, -0.01, ORDER)).toThrow(RangeError);
    expect(() => withImbalance(tacked, 0.01, [1, 3, 4])).toThrow(/Cylinder 2 is not in the firing order/);
    expect(() => withImbalance(tacked, 1.6, ORDER)).toThrow(/lie in the head/);
    const single = { ...tacked, valves: tacked.valves.slice(0, 1) };
    expect(() => withImbalance(single, 0.01, ORDER)).toThrow(/alone/);
  });
});

describe('other sizes', () => {
  test('a primary’s length is the mean: differences stay', () => {
    const path = withSizes(tacked, { primary: { length: 0.6 } });
    expect(mean(lengths(path, 'primary'))).toBeCloseTo(0.6, 12);
    const offs = (p: GasPath) => lengths(p, 'primary').map((l) => l - mean(lengths(p, 'primary')));
    offs(path).forEach((off, i) => {
      expect(off).toBeCloseTo(offs(tacked)[i]!, 12);
    });
  });

  test('a primary’s bore leaves the port and widens the collector’s beginning', () => {
    const path = withSizes(tacked, { primary: { bore: 0.045 } });
    rigged(path);
    for (const [i, pipe] of of(path, 'primary').entries()) {
      expect(bore(pipe)).toBe(0.045);
      expect(headOf(pipe)).toEqual(headOf(of(tacked, 'primary')[i]!));
    }
    const [cone] = of(path, 'collector');
    expect(cone!.diameter[0]![1]).toBeCloseTo(0.09, 12);
    expect(bore(cone!)).toBe(bore(of(tacked, 'collector')[0]!));
  });

  test('secondaries: the pairs’ outlets stay, a taper leads on; only the last collector takes the outlet asked for', () => {
    const path = withSizes(pairs, {
      secondary: { length: 0.5, bore: 0.05 },
      collector: { length: 0.2, bore: 0.06 },
      tailpipe: { length: 1, bore: 0.055 },
    });
    rigged(path);
    const [first, second] = of(path, 'secondary');
    expect(mean([first!.length, second!.length])).toBeCloseTo(0.5, 12);
    expect([first!.diameter[0]![1], bore(first!)]).toEqual([expect.closeTo(0.042, 12), 0.05]);
    const cones = of(path, 'collector');
    expect(cones.map(({ length }) => length)).toEqual([0.095, 0.095, 0.2]);
    expect(cones[2]!.diameter).toEqual([
      [0, expect.closeTo(0.05 * Math.SQRT2, 12)],
      [0.2, 0.06],
    ]);
    expect(of(path, 'tailpipe')[0]!.diameter[0]![1]).toBe(0.06);
    expect(of(path, 'tailpipe')[0]).toMatchObject({ length: 1 });
  });

  test('of a casting the branches; its passage stays', () => {
    const { path } = castPath(example('four-4-1'));
    const wider = withSizes(path, { primary: { length: 0.3, bore: 0.041 } });
    rigged(wider);
    expect(lengths(wider, 'branch').every((length) => Math.abs(length - 0.3) < 1e-12)).toBe(true);
    expect(of(wider, 'shared')).toEqual(of(path, 'shared'));
  });

  test('what leaves no tube is a caller’s mistake', () => {
    expect(() => withSizes(tacked, { primary: { length: 0.09 } })).toThrow(RangeError);
    expect(() => withSizes(tacked, { primary: { bore: 0 } })).toThrow(RangeError);
    expect(() => withSizes(tacked, { collector: { length: 0.001 } })).toThrow(RangeError);
  });

  test('any sizes of any header are a path that can be followed, and mean what was asked (seed 4703)', () => {
    const draw = random(4703);
    for (const { name, design } of routed) {
      const { path } = laidOutPath(design);
      const [shortest] = lengths(path, 'primary').sort((a, b) => a - b);
      const head = Math.max(...of(path, 'primary').map(({ inHead }) => inHead));
      const most = mean(lengths(path, 'primary')) - shortest!;
      const length = head + 0.01 + most + draw.between(1e-6, 1.5);
      const wide = draw.between(0.01, 0.1);
      const outlet = draw.between(0.01, 0.2);
      const sized = withSizes(path, { primary: { length, bore: wide }, collector: { bore: outlet } });
      expect(pathProblems(sized), name).toEqual([]);
      expect(mean(lengths(sized, 'primary'))).toBeCloseTo(length, 12);
      expect(of(sized, 'primary').every((pipe) => bore(pipe) === wide)).toBe(true);
      for (const pipe of of(sized, 'tailpipe')) expect(pipe.diameter[0]![1]).toBe(outlet);
      expect([sized.ends, sized.valves]).toEqual([path.ends, path.valves]);
    }
  });
});
