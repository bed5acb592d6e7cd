/** A plan in whole numbers out of plans in fractions: what is nearly whole is settled, and the rest of the pieces asked again. */
import type { Column, Master, Taken } from './master';
import { relax } from './relax';
import { costOf, type Kind, type Search } from './search';

/** Whole times of columns are settled, the rest is asked again, and so on; each dive begins with another column. */
export function diveOnce(
  m: Master,
  search: Search,
  wanted: readonly number[],
  kinds: readonly Kind[],
  dive: number,
): Taken | null {
  const rest = [...wanted];
  const limits = kinds.map(({ limit }) => limit);
  const settled: [Column, number][] = [];
  const settle = (column: Column, times: number) => {
    settled.push([column, times]);
    limits[column.kind]! -= times;
    for (const [type, n] of column.counts) rest[type] = Math.max(0, rest[type]! - n * times);
  };
  const fits = ({ kind, counts }: Column) => limits[kind]! >= 1 && counts.every(([type, n]) => rest[type]! >= n);
  try {
    for (let turn = 0; rest.some((n) => n > 0); turn++) {
      m.want(rest, limits);
      const relaxed = relax(m, search, rest, kinds, true);
      if (!relaxed || search.left() <= 0 || !search.hopeful(costOf(settled, kinds) + relaxed.value)) return null;
      const { times } = relaxed;
      const falling = search.columns.map((_, i) => i).filter((i) => times[i]! > 1e-6);
      falling.sort((a, b) => times[b]! - times[a]! || a - b);
      const before = settled.length;
      for (const i of falling) if (times[i]! >= 1 - 1e-6) settle(search.columns[i]!, Math.floor(times[i]! + 1e-6));
      if (turn === 0 && dive > 0) settle(search.columns[falling[dive % falling.length]!]!, 1);
      for (const i of falling) if (times[i]! % 1 > 0.9 && fits(search.columns[i]!)) settle(search.columns[i]!, 1);
      if (settled.length === before) settle(search.columns[falling[0]!]!, 1);
    }
    return settled.every(([{ kind }]) => limits[kind]! >= 0) ? settled : null;
  } finally {
    m.want(
      wanted,
      kinds.map(({ limit }) => limit),
    );
  }
}
