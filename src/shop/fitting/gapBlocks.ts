/** The tightest places for the bench: to be measured with a feeler, a rod or a rule, least first, with a place to write it down. */
import type { GapEntry, GapReport, Header } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';
import type { Block, FlowColumn } from '../sheet/flow';
import { placeWords, startWords, tapeWords } from './words';

/** What a builder has the patience to measure; the table has the rest. */
const MOST = 10;

/** @param bench the same header cold and at rest, as it stands on the bench; absent where it never moves */
export function gapBlocks(header: Header, { gaps }: GapReport, display: Display, bench?: GapReport): Block[] {
  if (gaps.length === 0) return [];
  const still = gaps.some(({ pose }) => pose) ? bench : undefined;
  const figure = (mm: number): string => lengthParts(mm, display).number.replace('-', '−');
  // The least of each pair is the last to be entered.
  const atRest = new Map(still?.gaps.toReversed().map((gap) => [keyOf(gap), gap]));
  const shown = gaps.slice(0, MOST);
  const more = gaps.length - shown.length;
  const rows = shown.map((gap) => {
    const now = still ? atRest.get(keyOf(gap)) : gap;
    return [
      gap.between.join(' – '),
      now ? figure(now.gap) : '',
      ...(still ? [figure(gap.gap)] : []),
      figure(gap.required),
      placeOf(header, now ?? gap, display),
      '',
    ];
  });
  const columns: FlowColumn[] = [
    { head: 'between', share: 46, bold: true },
    { head: still ? 'at rest' : 'gap', share: 19, figure: true },
    ...(still ? [{ head: 'least', share: 19, figure: true } as const] : []),
    { head: 'needed', share: 19, figure: true },
    { head: 'where', share: 62 },
    { head: 'measured', share: 22 },
  ];
  return [
    { kind: 'heading', words: `Gaps to check, ${display}` },
    {
      kind: 'words',
      words: `Least to spare first. A feeler, a drill’s shank or a rod of known size tells a small gap, a rule a wide one. Distances run along the middle of the first tube.${
        still
          ? ' Measure cold and at rest; “least” is what is left of it when the engine rocks and the tubes are hot, and is what must not be less than needed.'
          : ''
      }`,
    },
    { kind: 'table', columns, rows },
    ...(more > 0 ? [{ kind: 'words', words: `${more} wider ones are in clearances.csv.` } as const] : []),
  ];
}

const keyOf = ({ kind, between }: GapEntry): string => JSON.stringify([kind, ...between]);

function placeOf(header: Header, { between: [id], station }: GapEntry, display: Display): string {
  return station === null
    ? ''
    : `${placeWords(header, id, station)}, ${tapeWords(station, display)} ${startWords(header, id)}`;
}
