/**
 * What welding up takes with legs of other lengths: long ones save welds and use up bends, short ones let a bend give several pieces.
 * Which is better hangs on what bends cost and how one likes to weld, so the choices are laid side by side. mm.
 */
import type { Header } from '../../../geometry';
import type { Tube, Workshop } from '../../../shared/design/types';
import { assumedBend, settingsOf } from '../../../shared/stock/workshop';
import { sameTube } from '../nest/sameTube';
import { stockPlan } from '../nest/stockPlan';
import type { Part } from '../part';
import type { LegChoice, WeldedTube } from './report';
import { weldedPieces } from './stockPieces';
import { type Asked, weldedTotals } from './totals/wayTotals';
import { weldedTube } from './welded/weldedTube';

/** To compare by, a good plan does; what is made is planned to the proved least. For each search. */
const SECONDS = 2;
/** Lengths tried beside all that stock has. */
const MOST = 4;

export type Tried = Pick<LegChoice, 'bought' | 'totals'>;

export const triedOf = (asked: Asked, welded: readonly WeldedTube[]): Tried => ({
  bought: asked.plan.buy.reduce((sum, { count }) => sum + count, 0),
  totals: weldedTotals(asked, welded),
});

/**
 * @param tube its name in `tubes`
 * @param asSet what the length that is set takes, which is known
 */
export async function legChoices(
  header: Header,
  tube: string,
  parts: readonly Part[],
  asSet: Tried,
): Promise<LegChoice[]> {
  const { workshop, tubes, display = 'mm' } = header.design;
  const own = parts.filter(({ resolved }) => resolved.runner.tube === tube);
  const choices: LegChoice[] = [];
  for (const longestLeg of lengthsToTry(workshop, tubes[tube]!)) {
    const isChosen = (workshop?.longestLeg ?? null) === longestLeg;
    if (isChosen) {
      choices.push({ longestLeg, isChosen, ...asSet });
      continue;
    }
    const tried = withLongest(workshop, longestLeg);
    const triedHeader = { ...header, design: { ...header.design, workshop: tried } };
    const welded = own.map((part) => weldedTube(triedHeader, part));
    const pieces = weldedPieces(welded, () => tubes[tube]!);
    const plan = await stockPlan(tried, pieces.bars, pieces.bends, { display, seconds: SECONDS });
    choices.push({ longestLeg, isChosen, ...triedOf({ tube: tubes[tube]!, workshop: tried, plan }, welded) });
  }
  return choices;
}

/** As they are, then each length of leg that the stock of this tube has but the longest, what a weld keeps off a bend, and what is set. */
function lengthsToTry(workshop: Workshop | undefined, tube: Tube): (number | null)[] {
  const listed = (workshop?.bends ?? []).filter((bend) => sameTube(bend, tube));
  const stock = listed.length > 0 ? listed : [assumedBend(tube, tube.outsideDiameter, 'assumed')];
  const legs = stock.flatMap((bend) => bend.legs);
  const longest = Math.max(...legs);
  const { weldSetback, longestLeg } = settingsOf(workshop);
  const shorter = [...legs, weldSetback, ...(longestLeg === undefined ? [] : [longestLeg])];
  const tried = [...new Set(shorter)].filter((leg) => leg < longest || leg === longestLeg);
  return [
    null,
    ...spread(
      tried.sort((a, b) => b - a),
      longestLeg,
    ),
  ];
}

/** As many as may be, the ends among them, and the one that is set. */
function spread(lengths: readonly number[], kept: number | undefined): number[] {
  if (lengths.length <= MOST) return [...lengths];
  const step = (lengths.length - 1) / (MOST - 1);
  const some = new Set(Array.from({ length: MOST }, (_, i) => lengths[Math.round(i * step)]!));
  return lengths.filter((length) => some.has(length) || length === kept);
}

function withLongest(workshop: Workshop | undefined, longestLeg: number | null): Workshop {
  const { longestLeg: _, ...rest } = workshop ?? {};
  return longestLeg === null ? rest : { ...rest, longestLeg };
}
