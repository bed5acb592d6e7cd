/** A comparison as rows to read: what is measured, before, after and by how much. Lengths mm, angles °, masses kg. */
import type { Comparison } from '../../../geometry';

export type Unit = 'length' | 'angle' | 'mass' | 'count';

/** Null: not to be had on that side. */
export type Difference = {
  readonly what: string;
  readonly unit: Unit;
  readonly before: number | null;
  readonly after: number | null;
};

export type Section = { readonly heading: string; readonly rows: readonly Difference[] };

/** The header as a whole first, then each runner. */
export function sectionsOf({ runners, groups, mass, findings }: Comparison): Section[] {
  const whole: Difference[] = [
    ...groups.flatMap(({ id, before, after }): Difference[] => [
      { what: `Mean length, ${id}`, unit: 'length', before: before?.mean ?? null, after: after?.mean ?? null },
      { what: `Spread, ${id}`, unit: 'length', before: before?.spread ?? null, after: after?.spread ?? null },
    ]),
    { what: 'Mass of the tubes', unit: 'mass', before: mass.before, after: mass.after },
    { what: 'Problems', unit: 'count', before: findings.before, after: findings.after },
  ];
  const each = runners.map(({ id, before, after }): Section => {
    const row = (what: string, unit: Unit, pick: (r: NonNullable<typeof before>) => number | null): Difference => ({
      what,
      unit,
      before: before && pick(before),
      after: after && pick(after),
    });
    return {
      heading: id,
      rows: [
        row('Length', 'length', (r) => r.length),
        row('Bends', 'count', (r) => r.bends),
        row('Bent in all', 'angle', (r) => r.turned),
        row('Clearance to spare', 'length', (r) => r.tightest?.margin ?? null),
      ],
    };
  });
  return [{ heading: 'Header', rows: whole }, ...each];
}

/** What does not show at the decimals drawn is no difference to a reader. */
const SHOWN: Readonly<Record<Unit, number>> = { length: 0.005, angle: 0.05, mass: 0.0005, count: 0.5 };

export const differs = ({ before, after, unit }: Difference): boolean =>
  before === null || after === null ? before !== after : Math.abs(after - before) >= SHOWN[unit];
