/** The tightest places as a short table: what is near what, by how much, where on the tube, and when where it moves. */
import type { GapEntry, GapReport, Header } from '../../../../geometry';
import { placeWords } from '../../../shop/fitting/words';
import { type Align, columns } from '../columns';
import { measuresIn } from '../measures';

/** More are for `--json` and the shop's table. */
const MOST = 8;

export function gapTable(header: Header, { gaps }: GapReport): string {
  // With nothing around, the tightest place of each kind is all there is to say.
  if (header.surroundings.length === 0 || gaps.length === 0) return '';
  const { gap, length, unit } = measuresIn(header.design.display);
  const shown = gaps.slice(0, MOST);
  const moves = shown.some(({ pose }) => pose);
  const rows = shown.map((entry) => [
    entry.between.join(' and '),
    gap(entry.gap),
    gap(entry.required),
    gap(entry.margin),
    where(entry),
    ...(moves
      ? [entry.pose ? `${entry.pose.rock.toFixed(1)}°` : '', entry.pose ? heatWords(entry.pose.heat) : '']
      : []),
  ]);
  const head = [
    'between',
    'gap',
    'needed',
    'to spare',
    `on the tube, ${unit} along`,
    ...(moves ? ['engine', 'heat'] : []),
  ];
  const align: readonly Align[] = ['left', 'right', 'right', 'right', 'left', 'right', 'left'];
  const more = gaps.length > MOST ? `; ${gaps.length - MOST} more with --json` : '';
  return `Least gaps, ${unit}${moves ? ', over the motion' : ''}${more}\n${columns([head, ...rows], align)}`;

  function where({ between: [id], station }: GapEntry): string {
    return station === null ? '' : `${id} ${placeWords(header, id, station)}, ${length(station)}`;
  }
}

/** Of the way from cold to hot. */
function heatWords(heat: number): string {
  if (heat <= 0.005) return 'cold';
  return heat >= 0.995 ? 'hot' : `${Math.round(heat * 100)} %`;
}
