/** A comparison as rows: what is missing on a side stays missing, and what would not show at the decimals drawn is alike. */
import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../../geometry';
import { type Difference, differs, sectionsOf, type Unit } from '../../../src/app/versions/differences';
import { versionName } from '../../../src/app/versions/keep';

type Measures = NonNullable<Comparison['runners'][number]['before']>;
const runner = (id: string, more: Partial<Measures> = {}): Measures => ({
  id,
  length: 800,
  bends: 3,
  turned: 190,
  mass: 1.2,
  tightest: { gap: 9, required: 5, margin: 4, between: [id, 'shaft'], at: [0, 0, 0] },
  ...more,
});

const comparison: Comparison = {
  same: false,
  changes: [],
  runners: [
    { id: 'r1', before: runner('r1'), after: runner('r1', { length: 812, bends: 4, turned: 175.5, tightest: null }) },
    { id: 'r2', before: null, after: runner('r2') },
  ],
  groups: [
    { id: 'primaries', before: { mean: 800, spread: 0.5 }, after: { mean: 806, spread: 12 } },
    { id: 'secondaries', before: { mean: 400, spread: 0 }, after: null },
    { id: 'stubs', before: null, after: { mean: 90, spread: 2 } },
  ],
  mass: { before: null, after: 2.4 },
  findings: { before: 0, after: 3 },
};

describe('sections', () => {
  const [whole, ...each] = sectionsOf(comparison);
  const numbers = (rows: readonly Difference[]) => rows.map((r) => [r.what, r.unit, r.before, r.after]);

  it('begin with the header as a whole, group by group', () => {
    expect(whole!.heading).toBe('Header');
    expect(numbers(whole!.rows)).toEqual([
      ['Mean length, primaries', 'length', 800, 806],
      ['Spread, primaries', 'length', 0.5, 12],
      ['Mean length, secondaries', 'length', 400, null],
      ['Spread, secondaries', 'length', 0, null],
      ['Mean length, stubs', 'length', null, 90],
      ['Spread, stubs', 'length', null, 2],
      ['Mass of the tubes', 'mass', null, 2.4],
      ['Problems', 'count', 0, 3],
    ]);
  });

  it('then tell each runner, also one that is on one side only or has nothing near it', () => {
    expect(each.map(({ heading }) => heading)).toEqual(['r1', 'r2']);
    expect(numbers(each[0]!.rows)).toEqual([
      ['Length', 'length', 800, 812],
      ['Bends', 'count', 3, 4],
      ['Bent in all', 'angle', 190, 175.5],
      ['Clearance to spare', 'length', 4, null],
    ]);
    expect(numbers(each[1]!.rows)).toEqual([
      ['Length', 'length', null, 800],
      ['Bends', 'count', null, 3],
      ['Bent in all', 'angle', null, 190],
      ['Clearance to spare', 'length', null, 4],
    ]);
  });
});

describe('what differs', () => {
  const row = (unit: Unit, before: number | null, after: number | null) => ({ what: '', unit, before, after });

  // Drawn with 2 decimals of a mm, 1 of a degree, 3 of a kg, none of a count: half of the last one shows.
  it.each([
    ['length', 0.01],
    ['angle', 0.1],
    ['mass', 0.001],
    ['count', 1],
  ] as const)('%s: what shows at its decimals, up or down', (unit, last) => {
    expect(differs(row(unit, 5, 5))).toBe(false);
    for (const sign of [1, -1]) {
      expect(differs(row(unit, 5, 5 + sign * 0.49 * last))).toBe(false);
      expect(differs(row(unit, 5, 5 + sign * 0.51 * last))).toBe(true);
    }
  });

  it('what is on one side only differs; what is on neither does not', () => {
    expect(differs(row('mass', null, 0))).toBe(true);
    expect(differs(row('mass', 0, null))).toBe(true);
    expect(differs(row('mass', null, null))).toBe(false);
  });
});

describe('a version that was given no name', () => {
  it('is called by the step that it was reached by, or as opened', () => {
    expect(versionName('Balance', [])).toBe('Balance');
    expect(versionName(undefined, ['Balance'])).toBe('As opened');
  });

  it('takes the first number that is free', () => {
    expect(versionName('Balance', ['Balance'])).toBe('Balance 2');
    expect(versionName('Balance', ['Balance', 'Balance 2', 'Balance 4'])).toBe('Balance 3');
    expect(versionName(undefined, ['As opened'])).toBe('As opened 2');
  });
});
