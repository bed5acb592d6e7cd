/**
 * The tubes that go into the bender: a runner as a whole, or what is between two of its splits. A split lies in the middle of the
 * straight before its bend; there so much is sawn on that the machine has its clamp or its tail, and trimmed off once bent.
 * mm along the runner's centerline; degrees.
 */
import type { BendRow } from '../../../../geometry';
import { arcLength } from '../../arcs';
import type { BenderSettings } from './bender';

export type Blank = {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Its first bend, counted from 1 along the runner. */
  readonly firstBend: number;
  readonly clocking: number;
  readonly rows: readonly BendRow[];
  readonly trimStart: number;
  readonly trimEnd: number;
};

export type Whole = Omit<Blank, 'firstBend'>;

/**
 * @param splits bends of the runner, from 2, rising
 * @param bender `drawn`: how much nearer the weld at a split draws its two tubes than it leaves open
 * @param isTaken whether a runner has this id, which a part may then not have
 */
export function blanksOf(
  whole: Whole,
  splits: readonly number[],
  bender: Pick<BenderSettings, 'clamp' | 'tail'> & { readonly drawn?: number },
  isTaken: (id: string) => boolean = () => false,
): Blank[] {
  if (splits.length === 0) return [{ ...whole, firstBend: 1 }];
  const firsts = [1, ...splits];
  const letters = firsts.map((_, i) => letter(i));
  const between = ['', '-', '_', '--'].find((dash) => !letters.some((l) => isTaken(whole.id + dash + l))) ?? '__';
  let from = whole.from;
  return firsts.map((firstBend, i): Blank => {
    const next = firsts[i + 1];
    const rows = whole.rows.slice(firstBend - 1, next === undefined ? undefined : next - 1).map((row) => ({ ...row }));
    const [first] = rows;
    const clocking = i === 0 ? whole.clocking : first!.rotation;
    if (i > 0) rows[0] = { ...first!, length: first!.length / 2, rotation: 0 };
    const half = next === undefined ? 0 : whole.rows[next - 1]!.length / 2;
    if (next !== undefined) rows.push({ length: half, rotation: 0, angle: 0, radius: 0 });
    const to = next === undefined ? whole.to : from + rows.reduce((sum, row) => sum + row.length + arcLength(row), 0);
    const blank = {
      id: whole.id + between + letters[i],
      from,
      to,
      firstBend,
      clocking,
      rows,
      trimStart: i === 0 ? whole.trimStart : sawnOn(rows[0]!.length, bender),
      trimEnd: next === undefined ? whole.trimEnd : sawnOn(half, bender),
    };
    from = to;
    return blank;
  });
}

/** Enough for either, so that the tube may be bent from this end or toward it; and for what the weld there draws in. */
const sawnOn = (
  straight: number,
  { clamp, tail, drawn = 0 }: Pick<BenderSettings, 'clamp' | 'tail'> & { readonly drawn?: number },
): number => Math.max(0, drawn / 2, Math.max(clamp, tail) - straight);

/** a … z, then aa, ab … */
const letter = (i: number): string =>
  (i >= 26 ? letter(Math.floor(i / 26) - 1) : '') + String.fromCharCode('a'.charCodeAt(0) + (i % 26));
