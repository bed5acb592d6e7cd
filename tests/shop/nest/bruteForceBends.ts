/** Every way to share few pieces among few bends, and every order on each: slow, and without any of the search's ideas. */
import type { BendProblem } from '../../../src/shop/nest/bends';

type Piece = BendProblem['pieces'][number];
type Bend = BendProblem['stock'][number];
const NIL = 1e-6;

const turned = ([before, after]: Piece['legs']): Piece['legs'] => [after, before];
const waysRound = ({ legs }: Piece) => [legs, turned(legs)];

/** Whether these can lie on it, tried in every order and either way round. */
function canLie(pieces: readonly Piece[], bend: Bend, lost: number): boolean {
  const [only] = pieces;
  const legsFit = ([first, second]: Piece['legs']) => first <= bend.legs[0] + NIL && second <= bend.legs[1] + NIL;
  if (pieces.length === 1 && Math.abs(only!.angle - bend.angle) <= 0.05) return waysRound(only!).some(legsFit);
  const sum = pieces.reduce((total, { angle }) => total + angle, 0) + lost * (pieces.length - 1);
  if (sum > bend.angle + NIL) return false;
  return orders(pieces).some((order) => {
    const [first, ...rest] = order;
    const last = rest.at(-1);
    const plain = ({ legs }: Piece) => Math.max(...legs) <= 0.01;
    const at = (piece: Piece, end: 0 | 1) =>
      waysRound(piece).some((legs) => legs[1 - end]! <= 0.01 && legs[end]! <= bend.legs[end]! + NIL);
    if (!last) return at(first!, 0) || at(first!, 1);
    return at(first!, 0) && at(last, 1) && rest.slice(0, -1).every(plain);
  });
}

function orders<T>(things: readonly T[]): T[][] {
  if (things.length < 2) return [[...things]];
  return things.flatMap((one, i) => orders(things.toSpliced(i, 1)).map((rest) => [one, ...rest]));
}

/** Fewest pieces left over, then least bought. */
export function leastBends({ pieces, stock, radius, kerf }: BendProblem): { over: number; value: number } {
  const lost = (kerf / radius) * (180 / Math.PI);
  const money = stock.every(({ buy, price }) => !buy || price !== undefined);
  const shelf = stock.map(({ count }) => count);
  let best = { over: pieces.length + 1, value: 0 };
  const walk = (i: number, open: { bend: Bend; has: Piece[] }[], over: number, value: number): void => {
    if (over > best.over || (over === best.over && value >= best.value - 1e-9)) return;
    if (i === pieces.length) {
      best = { over, value };
      return;
    }
    const next = pieces[i]!;
    for (const [k, { bend, has }] of open.entries()) {
      const more = [...has, next];
      if (canLie(more, bend, lost)) walk(i + 1, open.with(k, { bend, has: more }), over, value);
    }
    for (const [s, bend] of stock.entries()) {
      if (!canLie([next], bend, lost)) continue;
      if (shelf[s]! > 0) {
        shelf[s]!--;
        walk(i + 1, [...open, { bend, has: [next] }], over, value);
        shelf[s]!++;
      }
      if (bend.buy) walk(i + 1, [...open, { bend, has: [next] }], over, value + (money ? bend.price! : 1));
    }
    walk(i + 1, open, over + 1, value);
  };
  walk(0, [], 0, 0);
  return best;
}
