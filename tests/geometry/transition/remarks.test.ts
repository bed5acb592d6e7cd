/** What is refused and what is warned of: each just past its limit and not just within it, with numbers and a remedy that holds. */
import { describe, expect, test } from 'vitest';
import { ATTACHED_HALF_ANGLE, areaSchedule, headerParts, resolveHeader } from '../../../geometry';
import type { Flange, Opening, Transition } from '../../../shared/design/types';
import { published } from '../../reference/published';
import { type Case, designOf, OVAL, RECTANGLE, ROUND, TALL } from './sections';

async function said(of: Case, transition?: Transition, flange?: Partial<Flange>) {
  const { notMade, warnings, parts } = await headerParts(resolveHeader(designOf(of, transition, flange)));
  return {
    refusals: notMade.map(({ message }) => message),
    warnings: warnings.map(({ message }) => message),
    where: [...notMade, ...warnings].map(({ where }) => where),
    made: parts.some(({ kind }) => kind === 'transition'),
  };
}
const withOpening = (of: Case, opening: Opening): Case => ({ ...of, opening });
/** The number before the unit that follows these words. */
const number = (message: string, words: string): number =>
  Number(message.slice(message.indexOf(words)).match(/(\d+(\.\d+)?) mm/)![1]);

describe('refused', () => {
  // The bend's radius of 60 mm takes as much of the 120 mm leg.
  test('longer than the first straight', async () => {
    expect((await said(ROUND, { length: 60 })).refusals).toEqual([]);
    const { refusals, where, made } = await said(ROUND, { length: 60.5 });
    expect(made).toBe(false);
    expect(refusals[0]).toMatch(/^Port p1: .* 60\.5 mm long .* runner r1 goes straight for 60 mm only/);
    expect(where).toContain('ports/p1/transition/length');
  });

  test('longer than a first straight that leaves no room for any: no shorter one is asked for', async () => {
    const design = designOf(RECTANGLE, { length: 20 });
    const points = [
      [0, 0, 0],
      [0, 63, 0],
      [0, 63, -300],
    ] as const;
    const { notMade } = await headerParts(resolveHeader({ ...design, runners: [{ ...design.runners[0]!, points }] }));
    const message = notMade.find(({ part }) => part === 'port p1 transition')!.message;
    expect(message).toMatch(/goes straight for 3 mm only.* bend\. Ask for a first straight of 23 mm/);
  });

  test.each([
    ['into the bend', 70, 60],
    ['past the whole first leg', 200, 60],
  ])('%s, the tube is refused with it', async (_, length, first) => {
    const { refusals } = await said(ROUND, { length });
    expect(refusals).toHaveLength(2);
    expect(refusals[1]).toMatch(`takes ${length} mm and its first straight is ${first} mm long`);
  });

  test('longer than a runner without bends: no tube is left', async () => {
    const design = designOf(ROUND, { length: 40 });
    const points = [
      [0, 0, 0],
      [0, 30, 0],
    ] as const;
    const { parts, notMade } = await headerParts(
      resolveHeader({ ...design, runners: [{ ...design.runners[0]!, points }] }),
    );
    expect(parts.filter(({ kind }) => kind === 'tube' || kind === 'transition')).toEqual([]);
    expect(notMade.map(({ part }) => part)).toEqual(expect.arrayContaining(['port p1 transition', 'runner r1']));
  });

  // The wall moves farthest at top and bottom: 21 − 20.575 mm; at the corners √(7² + 10²) + 11 − 20.575 = 2.632 mm.
  test('shorter than its wall can be led', async () => {
    const least = (Math.hypot(7, 10) + 11 - 20.575) / Math.tan(Math.PI / 6);
    const { refusals, made } = await said(RECTANGLE, { length: least - 0.02 });
    expect(made).toBe(false);
    expect(refusals).toHaveLength(1);
    expect(refusals[0]).toMatch(/must move 2\.63 mm: steeper than 30°/);
    const asked = number(refusals[0]!, 'at least');
    expect(asked).toBeCloseTo(least, 1);
    expect((await said(RECTANGLE, { length: asked })).made).toBe(true);
  });

  test('a wall too thick, or too thin, for its length', async () => {
    const thick = await said(ROUND, { length: 10, wall: 9.5 });
    expect(thick.made).toBe(false);
    expect(thick.refusals[0]).toMatch(/wall is 9\.5 mm and the tube's 1\.5 mm/);
    expect(thick.where[0]).toBe('ports/p1/transition/wall');
    expect((await said(ROUND, { length: 10, wall: number(thick.refusals[0]!, 'Make the wall') })).made).toBe(true);
    expect((await said(ROUND, { length: number(thick.refusals[0]!, 'the transition at least'), wall: 9.5 })).made).toBe(
      true,
    );
    const thickTube = { ...ROUND, outsideDiameter: 51.4, wall: 6, bore: 39.4 };
    const thin = await said(thickTube, { length: 10, wall: 0.5 });
    expect(thin.made).toBe(false);
    expect((await said(thickTube, { length: 10, wall: number(thin.refusals[0]!, 'Make the wall') })).made).toBe(true);
  });

  test('where no runner starts', async () => {
    const design = designOf(ROUND, { length: 20 });
    const { notMade } = await headerParts(resolveHeader({ ...design, runners: [] }));
    expect(notMade[0]!.message).toMatch(/^Port p1: .*no tube to lead to/);
  });
});

describe('warned of', () => {
  test('nothing, where a round port opens into a wider tube', async () => {
    expect((await said(ROUND)).warnings).toEqual([]);
    expect((await said(ROUND, { length: 20 })).warnings).toEqual([]);
  });

  test('a bore smaller than the opening, with and without a transition', async () => {
    for (const transition of [undefined, { length: 20 }]) {
      const { warnings } = await said(RECTANGLE, transition);
      expect(warnings[0]).toMatch(
        /bore of 41\.15 mm \(1329\.9 mm²\) is 5\.6 % smaller than the opening \(1408\.1 mm²\)/,
      );
      const bore = number(warnings[0]!, 'at least');
      const wide = { ...RECTANGLE, outsideDiameter: bore + 2 * RECTANGLE.wall, bore };
      expect((await said(wide, { length: 20 })).warnings).toEqual([]);
    }
  });

  test('an edge that faces the stream at a flange without a transition, flush and stepped', async () => {
    const flush = await said(TALL);
    // 44 mm high against 39.4 mm, though its area is smaller than the bore's.
    expect(flush.warnings).toHaveLength(1);
    expect(flush.warnings[0]).toMatch(
      /up to 2\.3 mm beyond the tube's bore of 39\.4 mm at top and bottom, .* at the flange's face/,
    );
    expect((await said(TALL, undefined, { seat: 'stepped' })).warnings[0]).toMatch(/on the floor of the flange's step/);
    // Both remedies that it names hold.
    expect((await said(TALL, { length: 20 })).warnings.join()).not.toMatch(/faces the stream/);
    const length = number(flush.warnings[0]!, 'a transition of at least');
    expect((await said(TALL, { length })).made).toBe(true);
    const bore = number(flush.warnings[0]!, 'a tube of at least');
    const wide = { ...TALL, outsideDiameter: bore + 2 * TALL.wall, bore };
    expect((await said(wide)).warnings.join()).not.toMatch(/faces the stream/);
  });

  test('where the edge is: all round, at the sides, at the corners', async () => {
    const round = withOpening(ROUND, { shape: 'round', diameter: 40 });
    expect((await said(round)).warnings[1]).toMatch(/up to 0\.3 mm .* all round/);
    expect((await said(OVAL)).warnings.at(-1)).toMatch(/up to 1\.45 mm .* at its sides,/);
    const square = withOpening(ROUND, { shape: 'rounded-rectangle', width: 34, height: 34, corner: 6 });
    expect((await said(square)).warnings.at(-1)).toMatch(/ at its corners,/);
  });

  test('a port that is not round, even where it lies within the bore', async () => {
    const within = withOpening(ROUND, { shape: 'oval', width: 30, height: 36 });
    const { warnings, where } = await said(within);
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatch(/not round and its tube is/);
    expect(where).toEqual(['ports/p1/opening']);
    const length = number(warnings[0]!, 'a transition of at least');
    expect((await said(within, { length })).made).toBe(true);
  });

  test('widening faster than the stream follows', async () => {
    expect(ATTACHED_HALF_ANGLE).toBe(published<number>('diffuser.half-angle'));
    // From 18 mm radius to 19.7 mm.
    const limit = 1.7 / Math.tan((7 * Math.PI) / 180);
    expect((await said(ROUND, { length: limit + 0.01 })).warnings).toEqual([]);
    const { warnings, made } = await said(ROUND, { length: 10 });
    expect(made).toBe(true);
    expect(warnings[0]).toMatch(/as a cone of 9\.6° half-angle/);
    expect(number(warnings[0]!, 'Make it at least')).toBeCloseTo(limit, 1);
  });
});

describe("the tube's own first straight", () => {
  test.each([
    [57, null],
    [57.5, 2.5],
    [60, 0],
  ])('behind a transition of %s mm of 60 mm', async (length, left) => {
    const { warnings, where, made, refusals } = await said(ROUND, { length });
    expect([made, refusals]).toEqual([true, []]);
    if (left === null) return expect(warnings).toEqual([]);
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatch(`Port p1: its transition takes ${length} mm of the 60 mm that runner r1 goes straight`);
    expect(warnings[0]).toMatch(`has ${left} mm of straight left before its first bend; under 3 mm`);
    expect(warnings[0]).toMatch('(common practice)');
    expect(where).toEqual(['ports/p1/transition/length']);
    expect((await said(ROUND, { length: number(warnings[0]!, 'Make it') })).warnings).toEqual([]);
    expect(number(warnings[0]!, 'first straight of')).toBe(length + 3);
  });

  test('is asked for by no shorter transition where none can be made, or where the refusal says it', async () => {
    const design = designOf(RECTANGLE, { length: 5 });
    const of = (straight: number) =>
      headerParts(
        resolveHeader({
          ...design,
          runners: [
            {
              ...design.runners[0]!,
              points: [
                [0, 0, 0],
                [0, 60 + straight, 0],
                [0, 60 + straight, -300],
              ],
            },
          ],
        }),
      );
    const said = ({ warnings }: { warnings: readonly { message: string }[] }) =>
      warnings.filter(({ message }) => /clamp and weld/.test(message)).map(({ message }) => message);
    expect(said(await of(5.5))[0]).toMatch(/0\.5 mm of straight left.*\. Ask for a first straight of 8 mm/);
    const refused = await of(4);
    expect(said(refused)).toEqual([]);
    expect(refused.notMade.some(({ part }) => part === 'port p1 transition')).toBe(true);
  });

  test('what a refusal asks for draws no warning', async () => {
    const { refusals } = await said(ROUND, { length: 70 });
    expect((await said(ROUND, { length: number(refusals[0]!, 'Make it') })).warnings).toEqual([]);
  });
});

describe('in a design shown in inches', () => {
  const inInches = async (of: Case, transition?: Transition, flange?: Partial<Flange>) => {
    const design = { ...designOf(of, transition, flange), display: 'in' as const };
    const { notMade, warnings } = await headerParts(resolveHeader(design));
    return [...notMade, ...warnings].filter(({ where }) => !where.startsWith('flanges')).map(({ message }) => message);
  };
  const inches = (message: string, words: string): number =>
    25.4 * Number(message.slice(message.indexOf(words)).match(/(\d+(\.\d+)?) in/)![1]);

  test.each([
    ['longer than the first straight', ROUND, { length: 70 }],
    ['steep walls', RECTANGLE, { length: 2 }],
    ['a thick wall', ROUND, { length: 10, wall: 9.5 }],
    ['little straight left', ROUND, { length: 59 }],
    ['an edge', TALL, undefined],
    ['a narrow bore', RECTANGLE, { length: 20 }],
    ['a wide cone', ROUND, { length: 10 }],
    ['not round', withOpening(ROUND, { shape: 'oval', width: 30, height: 36 }), undefined],
  ] as const)('%s: inches throughout', async (_, of, transition) => {
    const messages = await inInches(of, transition);
    expect(messages.length).toBeGreaterThan(0);
    for (const message of messages) {
      expect(message).toMatch(/\d in/);
      expect(message).not.toMatch(/\bmm/);
    }
  });

  test('what is asked for is rounded to the side that holds', async () => {
    const [steep = ''] = await inInches(RECTANGLE, { length: 2 });
    expect((await said(RECTANGLE, { length: inches(steep, 'at least') })).made).toBe(true);
    const [wide = ''] = await inInches(ROUND, { length: 10 });
    expect((await said(ROUND, { length: inches(wide, 'at least') })).warnings).toEqual([]);
    const [near = ''] = await inInches(ROUND, { length: 59 });
    expect((await said(ROUND, { length: inches(near, 'Make it') })).warnings).toEqual([]);
  });
});

describe('the area schedule', () => {
  test.each([ROUND, RECTANGLE, OVAL, TALL])('$name: 21 stations, even to far under half a per cent', async (of) => {
    const schedule = (await areaSchedule(resolveHeader(designOf(of, { length: 20 })), 'p1'))!;
    expect(schedule.stations).toHaveLength(21);
    expect(schedule.uneven).toBeLessThan(0.01);
    expect(schedule.stations[0]!.area).toBeCloseTo(schedule.openingArea, 4);
    expect(schedule.stations.at(-1)!.area).toBeCloseTo(schedule.boreArea, 4);
    expect(schedule.stations.map(({ z }) => z)).toEqual(expect.arrayContaining([0, 20]));
  });

  test('half-angle, positive where it widens', async () => {
    const round = await areaSchedule(resolveHeader(designOf(ROUND, { length: 20 })), 'p1');
    expect(round!.halfAngle).toBeCloseTo((Math.atan(1.7 / 20) * 180) / Math.PI, 9);
    const narrowing = await areaSchedule(resolveHeader(designOf(RECTANGLE, { length: 20 })), 'p1');
    expect(narrowing!.halfAngle).toBeLessThan(0);
  });

  test('without a transition: the step, and what is to be said of it', async () => {
    const step = (await areaSchedule(resolveHeader(designOf(OVAL, undefined)), 'p1'))!;
    expect(step.stations.map(({ z }) => z)).toEqual([0, 0]);
    expect([step.length, step.halfAngle]).toEqual([0, null]);
    expect(step.warnings.map(({ message }) => message)).toEqual((await said(OVAL)).warnings);
  });

  test('none where no runner starts', async () => {
    expect(await areaSchedule(resolveHeader({ ...designOf(ROUND, undefined), runners: [] }), 'p1')).toBeNull();
  });
});
