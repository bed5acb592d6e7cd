/** What is chosen for the study of sizes: lists as people type them, how much that is to follow, and wishes that cannot be. */
import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { parseDesign } from '../../../shared/design/parse';
import { readChoice, SPEED_COUNTS } from '../../../src/app/forecast/sizes/choice';
import { listText, parseLengthList } from '../../../src/app/forecast/sizes/lengthList';
import { forgetPace, learnPace, outlook } from '../../../src/app/forecast/sizes/outlook';
import { planOf } from '../../../src/app/forecast/sizes/study';
import { wishOf } from '../../../src/app/forecast/sizes/wish';

const FOUR = parseDesign(readFileSync('public/examples/four-4-1.evenrun.json', 'utf8'));
const WIDE = [10, 300] as const;

describe('several lengths in one field', () => {
  it.each<[string, 'mm' | 'in', readonly number[]]>([
    ['46, 60', 'mm', [46, 60]],
    ['60; 46;46', 'mm', [46, 60]],
    ['46,60', 'mm', [46, 60]],
    ['42,4', 'mm', [42.4]],
    ['42,4; 45', 'mm', [42.4, 45]],
    ['2, 2 1/4', 'in', [50.8, 57.15]],
    ['2 in, 60 mm', 'mm', [50.8, 60]],
    [' , ', 'mm', []],
  ])('%s in %s', (text, display, list) => {
    const read = parseLengthList(text, display, WIDE);
    expect(read).toEqual({ ok: true, list: list.map((mm) => expect.closeTo(mm, 9)) });
  });

  it.each<[string, 'mm' | 'in', RegExp]>([
    ['46, much', 'mm', /^“much”: /],
    ['46, 5', 'mm', /^“5”: give lengths from 10 to 300 mm, with commas between them\.$/],
    ['60', 'in', /^“60”: give lengths from 0\.4 to 11\.8 in/],
    ['11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24', 'mm', /^14 are given: leave 2 out/],
  ])('%s in %s is refused, and says what would do', (text, display, problem) => {
    const read = parseLengthList(text, display, WIDE);
    expect(read.ok || read.problem).toMatch(problem);
  });

  it('is shown again as it was typed', () => {
    expect(listText([46, 42.4], 'mm')).toBe('46, 42.4');
    expect(listText([50.8, 57.15], 'in')).toBe('2, 2.25');
  });
});

describe('the wish', () => {
  it('goes over what was chosen and nothing else, and over what is usual where nothing was', () => {
    const { sizes } = wishOf('d', FOUR, {
      lengths: [600, 700],
      bores: [40],
      outlets: [50, 60],
      arrangements: ['all-into-one'],
    });
    expect(sizes).toHaveLength(4);
    expect(new Set(sizes.map(({ outlet }) => outlet))).toEqual(new Set([50, 60]));
    expect(wishOf('d', FOUR, {}).sizes).toHaveLength(48);
    expect(wishOf('d', FOUR, { outlets: [50, 60, 70] }).sizes).toHaveLength(144);
  });

  it('at more speeds has all of the fewer among them, so that nothing is followed twice', () => {
    const speedsAt = (speeds: number) => planOf(wishOf('d', FOUR, { speeds })).speeds;
    expect(wishOf('d', FOUR, {}).speeds).toBe(SPEED_COUNTS[0]);
    for (const [k, count] of SPEED_COUNTS.entries()) {
      expect(speedsAt(count)).toHaveLength(count);
      if (k > 0) expect(speedsAt(count)).toEqual(expect.arrayContaining([...speedsAt(SPEED_COUNTS[k - 1]!)]));
    }
    expect([readChoice({ speeds: 11 }), readChoice({ speeds: 7 })]).toEqual([{ speeds: 11 }, {}]);
  });

  it('of too many sizes is refused before any of it is followed', () => {
    const many = Array.from({ length: 12 }, (_, k) => 40 + k);
    expect(() => wishOf('d', FOUR, { lengths: many.map((mm) => mm * 10), bores: many, outlets: many })).toThrow(
      /study\/lengths: found 3456 sizes; allowed: at most 2000/,
    );
  });
});

describe('how long it takes', () => {
  beforeEach(forgetPace);

  it('is a guess until something was followed here, then what that took', () => {
    const guess = outlook(48, 6, 0, 4, 2);
    expect(guess).toMatchObject({ coarse: 288, fine: 18, known: 0, isGuess: true });
    // Too few runs tell nothing.
    learnPace({ seconds: 100, runs: 3, cylinders: 4 });
    expect(outlook(48, 6, 0, 4, 2)).toEqual(guess);
    learnPace({ seconds: 100, runs: 100, cylinders: 4 });
    // 288 and four times 18 runs of a second each.
    expect(outlook(48, 6, 0, 4, 2)).toMatchObject({ time: 'about 6 min', isGuess: false });
    expect(outlook(48, 6, 0, 8, 2).time).toBe('about 12 min');
    expect(outlook(48, 6, 144, 4, 2)).toMatchObject({ coarse: 144, known: 144, time: 'about 4 min' });
    expect(outlook(2, 6, 0, 4, 2).fine).toBe(12);
  });
});
