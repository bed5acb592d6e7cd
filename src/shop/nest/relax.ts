/**
 * The least cost in fractions, by column generation: pieces get a worth from the plan in fractions, and fillings worth more than
 * they cost join it, until there are none.
 */
import { bestFill } from './fill';
import type { Master, Relaxed } from './master';
import { type Kind, NEAR, type Search } from './search';

/** Steps of one search for a column while any good one does; then, where none is found so, with what may be missed by. */
const QUICK = 5_000;
const THOROUGH = [
  [300_000, 0],
  [100_000, 1e-4],
  [100_000, 1e-3],
  [100_000, 1e-2],
] as const;
const DIVE_ROUNDS = 10;

/** Columns are added until none would lower the cost in fractions; of a rest of the pieces, for so many rounds. */
export function relax(
  m: Master,
  search: Search,
  wanted: readonly number[],
  kinds: readonly Kind[],
  rest: boolean,
): Relaxed | null {
  for (let round = 0; ; round++) {
    const relaxed = m.solve();
    if (!relaxed || search.left() <= 0 || (rest && round >= DIVE_ROUNDS)) return relaxed;
    const found = price(relaxed, wanted, kinds, rest ? [] : THOROUGH);
    if (!rest) search.weigh(relaxed.worths, found.most);
    if (search.insert(m, found.columns) === 0 || (!rest && search.done())) return relaxed;
  }
}

/** The best filling of each kind that is worth more than it costs; searched the harder the less there is. */
function price(
  { worths, rents }: Relaxed,
  wanted: readonly number[],
  kinds: readonly Kind[],
  thorough: typeof THOROUGH | [],
) {
  const beats = kinds.map(({ cost }, k) => cost + rents[k]!);
  const fillings = kinds.map(({ stock }, k) => bestFill(stock, worths, wanted, { beat: beats[k]!, steps: QUICK }));
  for (const [steps, slack] of thorough) {
    if (fillings.some(({ counts }) => counts.length > 0)) break;
    for (const [k, { stock }] of kinds.entries()) {
      if (fillings[k]!.most <= beats[k]! * (1 + slack + NEAR)) continue;
      const again = bestFill(stock, worths, wanted, { beat: beats[k]!, steps, slack });
      fillings[k] = { ...again, most: Math.min(again.most, fillings[k]!.most) };
    }
  }
  const columns = fillings.flatMap(({ counts }, kind) => (counts.length > 0 ? [{ kind, counts }] : []));
  return { columns, most: fillings.map(({ most }) => most) };
}
