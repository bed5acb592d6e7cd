/** Rule `balance`: within tolerance of the group's length, or of each other; what lies in the head counts. */
import { describe, expect, test } from 'vitest';
import { centerline, check } from '../../../geometry';
import { header, pointsOf } from './header';

const { length } = centerline(pointsOf(-1), [60, 60]);
const found = (design: ReturnType<typeof header>) => check(design).problems;

describe('a group with a length', () => {
  test.each([
    [-1, 'longer', 'shorten'],
    [1, 'shorter', 'lengthen'],
  ])('off by its tolerance, sign %d', (sign, word, remedy) => {
    const by = (off: number) => header({ group: { length: length + sign * off, tolerance: 1 } });
    expect(found(by(0.9999))).toEqual([]);
    const problems = found(by(1.0001));
    expect(problems.map((p) => p.where)).toEqual(['groups/primaries/r1', 'groups/primaries/r2']);
    expect(problems[0]).toMatchObject({ rule: 'balance', message: expect.stringContaining(word) });
    expect(problems[0]!.message).toContain(`${remedy} it`);
    expect(problems[0]!.found).toBeCloseTo(length, 9);
    expect(problems[0]!.allowed).toEqual([length + sign * 1.0001 - 1, length + sign * 1.0001 + 1]);
  });
  test('the head’s part counts', () => {
    expect(found(header({ port: { lengthInHead: 90 }, group: { length: length + 90, tolerance: 1e-4 } }))).toEqual([]);
    expect(found(header({ port: { lengthInHead: 90 }, group: { length, tolerance: 1 } }))).toHaveLength(2);
  });
});

describe('a group of any length', () => {
  const spread = (by: number) => {
    const design = header();
    return { ...design, ports: [design.ports[0]!, { ...design.ports[1]!, lengthInHead: by }] };
  };
  test('may spread over twice its tolerance', () => {
    expect(found(spread(1.9999))).toEqual([]);
    const [problem, ...rest] = found(spread(2.0001));
    expect(rest).toEqual([]);
    expect(problem).toMatchObject({ rule: 'balance', where: 'groups/primaries', allowed: 2 });
    expect(problem!.found).toBeCloseTo(2.0001, 8);
    expect(problem!.message).toMatch(/spreads over 2 mm; 2 mm is allowed: .+/);
  });
  test('is reported with mean, least, greatest and spread', () => {
    const [group] = check(spread(1)).groups;
    expect(group).toEqual({
      id: 'primaries',
      mean: expect.closeTo(length + 0.5, 9),
      min: expect.closeTo(length, 9),
      max: expect.closeTo(length + 1, 9),
      spread: expect.closeTo(1, 9),
    });
  });
});

test('a runner in no group is not held to one', () => {
  const design = header({ group: { length: 10, tolerance: 1 } });
  const { group: _, ...free } = design.runners[0]!;
  expect(found({ ...design, runners: [free, design.runners[1]!] }).map((p) => p.where)).toEqual([
    'groups/primaries/r2',
  ]);
});
