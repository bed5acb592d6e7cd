/** How often a plan's stock is sawn through. */
import type { StockBend } from '../../../../shared/design/types';
import { arcAngle } from '../../arcs';
import { isBend } from '../../stockLayout';
import type { UsedStock } from '../report';

/** Nearer than this two faces are one: half a degree's hundredth, half a millimetre's. */
const SAME = 0.005;

/** @param kerf and @param endTrim mm */
export function cutsOf(used: UsedStock, kerf: number, endTrim: number): number {
  return isBend(used.of) ? bendCuts(used, used.of, arcAngle(kerf, used.of.radius)) : barCuts(used, endTrim);
}

/** A bar: once where its end is trimmed, then once behind each piece that something is left after. */
function barCuts({ cuts, left }: UsedStock, endTrim: number): number {
  const trimmed = endTrim > 0 ? 1 : 0;
  return trimmed + cuts.length - (left > SAME || endTrim > 0 ? 0 : 1);
}

/** A bend: at each of its legs that is not used whole, and between neighbours, once where only the kerf parts them. */
function bendCuts({ cuts }: UsedStock, stock: StockBend, kerfAngle: number): number {
  const [first, last] = [cuts[0], cuts.at(-1)];
  if (!first || !last) return 0;
  const between = cuts.slice(1).map(({ from }, i) => (from - cuts[i]!.to <= kerfAngle + SAME ? 1 : 2));
  const start = first.from <= SAME && (first.legs?.[0] ?? 0) >= stock.legs[0] - SAME ? 0 : 1;
  const end = last.to >= stock.angle - SAME && (last.legs?.[1] ?? 0) >= stock.legs[1] - SAME ? 0 : 1;
  return start + end + between.reduce((sum, n) => sum + n, 0);
}
