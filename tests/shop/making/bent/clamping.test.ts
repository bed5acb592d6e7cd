/** What can be clamped, where a split is offered, and what splits make; offered splits against trying every set of splits. */
import { describe, expect, test } from 'vitest';
import type { Runner } from '../../../../shared/design/types';
import { benderOf } from '../../../../src/shop/making/bent/bender';
import { rowsFromMachine } from '../../../../src/shop/making/bent/rebuildRows';
import type { BentTube } from '../../../../src/shop/making/report';
import { random } from '../../../random';
import { oneRunner } from '../../designs';
import { designOf, type Shape, tubesOf } from '../designs';

const bend = (length: number, rotation = 90): Shape => ({ length, rotation, angle: 60, radius: 60 });
const tubes = (
  lengths: readonly number[],
  bender: { clamp: number; tail: number },
  { splits, trimStart = 0, trimEnd = 0 }: { splits?: number[]; trimStart?: number; trimEnd?: number } = {},
): BentTube[] =>
  tubesOf(
    designOf(
      lengths.slice(0, -1).map((length, i) => bend(length, i === 0 ? 0 : 90)),
      lengths.at(-1)!,
      { runner: splits ? { splits } : {}, tooling: { bender, trimStart, trimEnd } },
    ),
  );
const canBeMade = (made: readonly BentTube[]): boolean =>
  made.every(({ clampable }) => clampable.fromStart || clampable.fromEnd);
const stops = (made: readonly BentTube[]): string[] =>
  made.flatMap(({ remarks }) => remarks.filter((r) => r.stops).map((r) => r.message));

describe('one tube', () => {
  test('from both ends, from one alone, and which', () => {
    const bender = { clamp: 40, tail: 20 };
    const both = (lengths: number[], trims = {}) => tubes(lengths, bender, trims)[0]!.clampable;
    expect(both([40, 40, 40])).toEqual({ fromStart: true, fromEnd: true });
    expect(both([40, 40, 20])).toEqual({ fromStart: true, fromEnd: false });
    expect(both([20, 40, 40])).toEqual({ fromStart: false, fromEnd: true });
    expect(both([20, 40, 39.5])).toEqual({ fromStart: false, fromEnd: false });
    expect(both([20, 40, 30], { trimEnd: 10 })).toEqual({ fromStart: false, fromEnd: true });
    expect(both([30, 40, 20], { trimStart: 10 })).toEqual({ fromStart: true, fromEnd: false });
    expect(both([40, 39.9, 40])).toEqual({ fromStart: false, fromEnd: false });
    // The rules' own slack on straights.
    expect(both([40, 39.995, 40])).toEqual({ fromStart: true, fromEnd: true });
  });

  test('which row lacks its clamp, and what the last is judged by', () => {
    const [tube] = tubes([50, 30, 50, 25], { clamp: 40, tail: 30 });
    expect(tube!.fromStart.map(({ clamps }) => clamps)).toEqual([true, false, true, false]);
    expect(tube!.fromEnd.map(({ clamps }) => clamps)).toEqual([false, true, false, true]);
  });

  test('defaults are the straights of the tooling', () => {
    const design = designOf([bend(30, 0), bend(20)], 15, { tooling: { betweenStraight: 25, lastStraight: 15 } });
    const [tube] = tubesOf(design);
    expect(tube!.fromStart.map(({ clamps }) => clamps)).toEqual([true, false, true]);
  });

  test('a short straight between bends is offered as a split, with numbers', () => {
    const [tube] = tubes([60, 60, 12, 60, 30, 60], { clamp: 40, tail: 40 });
    expect(tube!.offered).toEqual([3, 5]);
    expect(stops([tube!])).toEqual([
      'r1 has 12 mm between bends 2 and 3 and 30 mm between bends 4 and 5, and the clamp needs 40 mm, from whichever end it is bent: ' +
        'split it before bends 3 and 5, or make the straights there up to 28 mm longer.',
    ]);
  });

  test('a short end is mended by sawing more on, the cheaper way round, or by a split at the longest straight', () => {
    const [tube] = tubes([30, 60, 80, 35], { clamp: 40, tail: 20 });
    expect(tube!.offered).toEqual([3]);
    expect(stops([tube!])).toEqual([
      'r1 has 30 mm of straight before its first bend and 35 mm after its last, trims included; the clamp needs 40 mm, the tail 20 mm: ' +
        'saw on 5 mm more at its other end (tooling/primary/trimEnd), and bend it from its other end, or split it before bend 3.',
    ]);
    expect(canBeMade(tubes([30, 60, 80, 35], { clamp: 40, tail: 20 }, { trimEnd: 5 }))).toBe(true);
  });

  test('a split does not help where an end serves for neither clamp nor tail', () => {
    const [tube] = tubes([10, 60, 12, 60], { clamp: 40, tail: 20 });
    expect(tube!.offered).toEqual([]);
    const [between, ends] = stops([tube!]);
    expect(between).toMatch(/12 mm between bends 2 and 3/);
    expect(ends).toMatch(/saw on 10 mm more at its start/);
    expect(canBeMade(tubes([10, 60, 12, 60], { clamp: 40, tail: 20 }, { splits: [3], trimStart: 10 }))).toBe(true);
  });

  test('a clamp longer than every straight: with the clamp, the longest straight, and what would make it work', () => {
    const [tube] = tubes([30, 45, 20, 40], { clamp: 120, tail: 20 });
    expect(tube!.remarks).toEqual([
      {
        where: 'tooling/primary/bender/clamp',
        stops: true,
        message:
          'The clamp grips 120 mm and the longest straight of r1, trims included, is 45 mm: use a die whose clamp needs no more than that, ' +
          'make its straights 75 mm longer, split it before bends 2 and 3, or weld it up from stock bends.',
      },
    ]);
    expect(canBeMade(tubes([30, 45, 20, 40], { clamp: 120, tail: 20 }, { splits: [2, 3] }))).toBe(true);
    const [short] = stops(tubes([10, 45, 20, 40], { clamp: 120, tail: 20 }));
    expect(short).toMatch(
      /split it before bends 2 and 3 and saw on 10 mm more at its start \(tooling\/primary\/trimStart\), or weld/,
    );
    const [single] = stops(tubes([30, 45], { clamp: 120, tail: 20 }));
    expect(single).toMatch(
      /is 45 mm: .*75 mm longer, saw on 75 mm more at its other end \(tooling\/primary\/trimEnd\), or weld/,
    );
    expect(canBeMade(tubes([30, 45], { clamp: 120, tail: 20 }, { trimEnd: 75 }))).toBe(true);
  });
});

test('what is offered is the least that helps, and nothing where no splits do (seeds 1 to 150, every set of splits)', () => {
  let offeredAny = 0;
  let helpless = 0;
  for (let seed = 1; seed <= 150; seed++) {
    const chance = random(seed);
    const lengths = Array.from({ length: chance.whole(2, 6) }, () => chance.between(5, 70));
    const bender = { clamp: chance.between(10, 45), tail: chance.between(10, 45) };
    const [whole] = tubes(lengths, bender);
    const bends = lengths.length - 1;
    const sets = Array.from({ length: 2 ** Math.max(0, bends - 1) }, (_, bits) =>
      Array.from({ length: bends - 1 }, (_, i) => i + 2).filter((_, i) => bits & (1 << i)),
    );
    const helping = sets.filter((splits) => canBeMade(tubes(lengths, bender, { splits })));
    const least = Math.min(...helping.map((splits) => splits.length));
    const { offered } = whole!;
    if (helping.length === 0) {
      expect(offered, `seed ${seed}`).toEqual([]);
      expect(stops([whole!]).length, `seed ${seed}`).toBeGreaterThan(0);
      helpless++;
      continue;
    }
    expect(offered.length, `seed ${seed}`).toBe(least);
    expect(canBeMade(tubes(lengths, bender, { splits: [...offered] })), `seed ${seed}`).toBe(true);
    expect(stops([whole!]).length > 0, `seed ${seed}`).toBe(least > 0);
    if (least > 0) offeredAny++;
  }
  expect(offeredAny).toBeGreaterThan(20);
  expect(helpless).toBeGreaterThan(5);
});

describe('split', () => {
  const made = tubes([60, 60, 30, 60, 60], { clamp: 40, tail: 25 }, { splits: [3], trimStart: 8, trimEnd: 9 });
  const [whole] = tubes([60, 60, 30, 60, 60], { clamp: 40, tail: 25 }, { trimStart: 8, trimEnd: 9 });

  test('two tubes with ids, stations and trims of their own; the joint in the middle of the straight', () => {
    expect(made.map(({ id, runner }) => [id, runner])).toEqual([
      ['r1a', 'r1'],
      ['r1b', 'r1'],
    ]);
    const [a, b] = made as [BentTube, BentTube];
    const arc = 20 * Math.PI;
    expect([a.from, a.to, b.to]).toEqual([0, 60 + 60 + 2 * arc + 15, 270 + 4 * arc].map((x) => expect.closeTo(x, 8)));
    expect(b.from).toBe(a.to);
    expect([a.trimStart, a.trimEnd, b.trimStart, b.trimEnd]).toEqual([8, 25, 25, 9].map((x) => expect.closeTo(x, 8)));
    expect(a.fromStart.at(-1)!.length).toBeCloseTo(15, 8);
    expect(b.fromStart[0]!.length).toBeCloseTo(15, 8);
    expect(a.cutLength + b.cutLength).toBeCloseTo(whole!.cutLength + 50, 8);
    expect(a.clampable).toEqual({ fromStart: true, fromEnd: true });
    expect(b.thinned.map(({ bend }) => bend)).toEqual([3, 4]);
    expect(stops(made)).toEqual([]);
    expect(made.flatMap(({ offered }) => offered)).toEqual([]);
  });

  test('the second is turned from the first’s last bend as the rows of the whole say, and its own rows begin at 0', () => {
    expect(made[1]!.clocking).toBeCloseTo(whole!.fromStart[2]!.rotation, 10);
    expect(made[0]!.clocking).toBe(whole!.clocking);
    expect([made[1]!.fromStart[0]!.rotation, made[1]!.fromStart[0]!.dial]).toEqual([0, 0]);
    expect(made[1]!.fromStart[1]!.rotation).toBeCloseTo(90, 8);
  });

  test('welded together by their clocking they are the whole tube again, from their machine columns', () => {
    const bender = benderOf(
      { ...oneRunner({}).tooling.primary!, bender: { clamp: 40, tail: 25 } },
      { rotation: 'right-handed' },
    );
    const rows = made.map((tube) =>
      rowsFromMachine(tube.fromStart, { ahead: tube.trimStart, behind: tube.trimEnd }, bender),
    );
    const [a, b] = rows as [(typeof rows)[0], (typeof rows)[0]];
    const joined = { ...b[0]!, length: a.at(-1)!.length + b[0]!.length, rotation: made[1]!.clocking };
    const again = [...a.slice(0, -1), joined, ...b.slice(1)];
    for (const [i, { length, rotation, angle, radius }] of whole!.fromStart.entries())
      expect(again[i]).toEqual({
        length: expect.closeTo(length, 8),
        rotation: expect.closeTo(rotation, 8),
        angle: expect.closeTo(angle, 8),
        radius,
      });
  });

  test('in any order and twice over; what is still short is offered by the runner’s own count', () => {
    const again = tubes([60, 12, 60, 12, 60, 60], { clamp: 40, tail: 25 }, { splits: [4, 3, 4] });
    expect(again.map(({ id, offered }) => [id, offered])).toEqual([
      ['r1a', [2]],
      ['r1b', []],
      ['r1c', []],
    ]);
    expect(stops(again)).toEqual([
      expect.stringMatching(/^r1a has 12 mm between bends 1 and 2,.*split it before bend 2/),
    ]);
  });

  test('before a bend that the runner lacks: with numbers, and what would do', () => {
    const about = (lengths: number[], splits: number[]) =>
      tubes(lengths, { clamp: 10, tail: 10 }, { splits })[0]!.remarks.map(
        ({ where, message }) => `${where}: ${message}`,
      );
    expect(about([60, 60, 60, 60], [7])).toEqual([
      'runners/r1/splits: r1 is split before bend 7, and it has 3 bends: name a bend from 2 to 3. It is made without this split.',
    ]);
    expect(about([60, 60], [2])).toEqual([expect.stringMatching(/it has 1 bend: take the split out/)]);
    expect(tubes([60, 60, 60], { clamp: 10, tail: 10 }, { splits: [3] }).map(({ id }) => id)).toEqual(['r1']);
  });

  test('nearer to bends than welds are kept: told, not stopped', () => {
    const [tube] = tubes([60, 12, 60], { clamp: 10, tail: 10 }, { splits: [2] });
    expect(tube!.remarks).toEqual([
      {
        where: 'runners/r1/splits',
        stops: false,
        message:
          "r1's split before bend 2 is welded 6 mm from the bends at either side, nearer than 10 mm: make the straight there 8 mm longer, or split elsewhere.",
      },
    ]);
  });

  test('what the weld takes and its gap gives is told for the ends that it joins', () => {
    const design = designOf([bend(60, 0), bend(60)], 60, { runner: { splits: [2] } });
    const about = (weldShrinkage: number, weldGap: number): string[] =>
      tubesOf({ ...design, workshop: { weldShrinkage, weldGap } })[0]!.remarks.map(({ message }) => message);
    expect(about(0, 0)).toEqual([]);
    expect(about(1, 0.4)).toEqual([
      expect.stringMatching(/takes 1 mm and its gap gives 0\.4 mm: trim each 0\.3 mm beyond/),
    ]);
    expect(about(0, 1)).toEqual([expect.stringMatching(/trim each 0\.5 mm before its mark/)]);
  });

  test('an id that another runner has is not given again', () => {
    const design = designOf([bend(60, 0), bend(60)], 60, { runner: { splits: [2] } });
    const other: Runner = { id: 'R1A', tube: 'primary', from: { port: 'p1' }, to: { merge: 'm1' } };
    expect(tubesOf({ ...design, runners: [...design.runners, other] }).map(({ id }) => id)).toEqual(['r1-a', 'r1-b']);
  });
});
