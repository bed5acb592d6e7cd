/** The sizes as cells with their numbers; the best, what is as good within the error, what the user has, and what rules of thumb point at. */
import type { Display } from '../../../../shared/design/types';
import { contrast } from '../../contrast';
import { lengthNumber } from '../../format';
import { ARM, ramp } from '../../pulse/ramp';
import { type Theme, TOKENS } from '../../theme';
import { apart, type Box, bestOf, decimalsOf, planMap, sameSize, seenOf, shareOf, triedOf } from './mapPlan';
import { tubeText } from './tubeText';
import type { MapArrangement, MapCell, MapSize } from './types';

const LEFT = 84;
const RIGHT = 22;
const TOP = 24;
const BOTTOM = 44;
/** A rule's letter needs as much. */
const LETTER = 13;

type Props = {
  readonly arrangement: MapArrangement;
  readonly now: MapSize | null;
  readonly picked: MapSize | null;
  /** N m: sizes within it of the best are as good; null: not known. */
  readonly error: number | null;
  readonly theme: Theme;
  readonly display: Display;
  readonly width: number;
  readonly height: number;
  readonly onPick: (size: MapSize) => void;
  /** Of all maps that share one scale of shades, N m: so that a better outlet is darker too. */
  readonly among: readonly { readonly torque: number }[];
};

/** "A", "B": how rules are called on the map. */
export const ruleLetter = (index: number): string => String.fromCharCode(65 + index);

export function MapPlot(props: Props) {
  const { arrangement, now, picked, error, theme, display, width, height, onPick, among } = props;
  const { cells, rules } = arrangement;
  const room: Box = { left: LEFT, top: TOP, width: width - LEFT - RIGHT, height: height - TOP - BOTTOM };
  const plan = planMap(cells, room);
  const best = bestOf(arrangement);
  const decimals = among.length > 0 ? decimalsOf(among) : 0;
  const { tried, all } = triedOf(arrangement);
  const isOver = tried === all;
  const shadeOf = (torque: number): string => {
    const share = shareOf(torque, among, error);
    return `rgb(${ramp(theme)[ARM + Math.round(share * 0.72 * ARM)]!.join(' ')})`;
  };
  const right = LEFT + room.width;
  const bottom = TOP + room.height;
  const isByTube = cells.every(({ tube }) => tube !== undefined);
  const tubeOn = (bore: number): string => {
    const tube = isByTube && cells.find((cell) => sameSize(cell, { ...cell, bore }))?.tube;
    return tube ? tubeText(tube, display) : lengthNumber(bore * 1000, display, 1);
  };
  const seen = rules.map((rule) => ({
    length: rule.length && seenOf(rule.length, plan.across),
    bore: rule.bore && seenOf(rule.bore, plan.up),
  }));
  // Letters of rules that point at one place stand beside each other.
  const nearest = ({ low, high }: { low: number; high: number }, middle: number) =>
    Math.min(high, Math.max(low, middle));
  const lettersAt = (key: 'length' | 'bore', toPx: (at: number) => number, from: number, to: number) => {
    const there = rules.flatMap((rule, k) => {
      const range = seen[k]![key];
      return range ? [{ k, at: toPx(nearest(range, rule[key]!.middle)) }] : [];
    });
    const moved = apart(
      there.map(({ at }) => at),
      LETTER,
      from,
      to,
    );
    return new Map(there.map(({ k }, i) => [k, moved[i]!]));
  };
  const above = lettersAt('length', plan.toX, LEFT, right);
  const beside = lettersAt('bore', plan.toY, TOP, bottom);
  return (
    <svg width={width} height={height} role="img" aria-label={`Mean torque of ${cells.length} sizes`}>
      <defs>
        <pattern id="map-failed" width={6} height={6} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="map-hatch" x1={0} x2={0} y1={0} y2={6} />
        </pattern>
      </defs>
      {cells.map((cell) => (
        <Cell
          key={`${cell.length} ${cell.bore}`}
          cell={cell}
          box={plan.boxOf(cell)!}
          shade={cell.torque === null ? null : shadeOf(cell.torque)}
          theme={theme}
          tied={cell.torque !== null && best !== null && error !== null && best.torque - cell.torque <= error}
          best={isOver && best !== null && sameSize(cell, best)}
          picked={picked !== null && sameSize(cell, picked)}
          onPick={onPick}
        />
      ))}
      {rules.map((rule, k) => {
        const { length, bore } = seen[k]!;
        return (
          <g key={rule.name} className="map-rule">
            {length && (
              <>
                <rect
                  x={plan.toX(length.low)}
                  y={TOP - 5}
                  width={Math.max(1, plan.toX(length.high) - plan.toX(length.low))}
                  height={5}
                />
                {length.middle && (
                  <line
                    x1={plan.toX(rule.length!.middle)}
                    x2={plan.toX(rule.length!.middle)}
                    y1={TOP - 5}
                    y2={bottom}
                  />
                )}
                <text className="map-letter" x={above.get(k)} y={TOP - 12}>
                  {ruleLetter(k)}
                </text>
              </>
            )}
            {bore && (
              <>
                <rect
                  x={right}
                  y={plan.toY(bore.high)}
                  width={5}
                  height={Math.max(1, plan.toY(bore.low) - plan.toY(bore.high))}
                />
                {bore.middle && (
                  <line x1={LEFT} x2={right + 5} y1={plan.toY(rule.bore!.middle)} y2={plan.toY(rule.bore!.middle)} />
                )}
                <text className="map-letter" x={right + 14} y={beside.get(k)}>
                  {ruleLetter(k)}
                </text>
              </>
            )}
          </g>
        );
      })}
      {cells.map((cell) => (
        <CellNumber
          key={`${cell.length} ${cell.bore}`}
          cell={cell}
          box={plan.boxOf(cell)!}
          shade={cell.torque === null ? null : shadeOf(cell.torque)}
          theme={theme}
          best={isOver && best !== null && sameSize(cell, best)}
          decimals={decimals}
          mark={now && [plan.toX(now.length), plan.toY(now.bore)]}
        />
      ))}
      {now && <Now x={plan.toX(now.length)} y={plan.toY(now.bore)} room={room} />}
      {plan.across.values.map((length) => (
        <text key={length} className="map-across" x={plan.toX(length)} y={bottom + 13}>
          {lengthNumber(length * 1000, display, 0)}
        </text>
      ))}
      {plan.up.values.map((bore) => (
        <text key={bore} className="map-up" x={LEFT - 6} y={plan.toY(bore)}>
          {tubeOn(bore)}
        </text>
      ))}
      <text className="map-name map-across" x={LEFT + room.width / 2} y={height - 9}>
        primary length, {display}
      </text>
      <text className="map-name map-across" transform={`translate(9 ${TOP + room.height / 2}) rotate(-90)`}>
        {isByTube ? 'primary tube, outside × wall' : 'primary bore'}, {display}
      </text>
    </svg>
  );
}

const tubeWords = ({ bore, tube }: MapCell): string =>
  tube ? `${tube.outsideDiameter} × ${tube.wall} mm` : `${(bore * 1000).toFixed(1)} mm bore`;

type CellProps = {
  readonly cell: MapCell;
  readonly box: Box;
  readonly shade: string | null;
  readonly theme: Theme;
  readonly tied: boolean;
  readonly best: boolean;
  readonly picked: boolean;
  readonly onPick: (size: MapSize) => void;
};

function Cell({ cell, box, shade, theme, tied, best, picked, onPick }: CellProps) {
  const { left, top, width, height } = box;
  const inset = 1;
  const words = `${(cell.length * 1000).toFixed(0)} × ${tubeWords(cell)}: ${cell.failed ?? (cell.torque === null ? 'not followed yet' : `${cell.torque.toFixed(1)} N m`)}`;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys that do the same are the plot's
    <g className="map-cell" data-picked={picked} onClick={() => onPick(cell)}>
      <title>{words}</title>
      <rect
        x={left + inset}
        y={top + inset}
        width={width - 2 * inset}
        height={height - 2 * inset}
        style={{ fill: shade ?? (cell.failed ? 'url(#map-failed)' : 'none') }}
      />
      {(best || tied) && (
        <rect
          className={best ? 'map-best' : 'map-tied'}
          style={best || !shade ? undefined : { stroke: inkOn(shade, theme) }}
          x={left + 3.5}
          y={top + 3.5}
          width={width - 7}
          height={height - 7}
        />
      )}
    </g>
  );
}

type NumberProps = Pick<CellProps, 'cell' | 'box' | 'shade' | 'theme' | 'best'> & {
  readonly decimals: number;
  /** Where the mark of what the user has stands. */
  readonly mark: readonly [x: number, y: number] | null;
};

/** Over the rules' lines, on a little of its cell's colour. */
function CellNumber({ cell, box, shade, theme, best, decimals, mark }: NumberProps) {
  const { left, top, width, height } = box;
  if (width <= 26) return null;
  const [x, y] = [left + width / 2, top + height / 2];
  const isCovered = mark !== null && Math.abs(mark[0] - x) < 26 && Math.abs(mark[1] - y) < 15;
  const look = shade ? { fill: inkOn(shade, theme), stroke: shade } : {};
  return (
    <text
      className="map-number"
      data-best={best}
      data-roomy={width > 70}
      x={x}
      y={isCovered ? mark[1] - 17 : y}
      style={look}
    >
      {cell.torque === null ? (cell.failed ? '–' : '') : cell.torque.toFixed(width > 38 ? decimals : 0)}
    </text>
  );
}

/** Whichever of both papers' inks stands out more. */
function inkOn(shade: string, theme: Theme): string {
  const hex = `#${shade
    .match(/\d+/g)!
    .map((part) => Number(part).toString(16).padStart(2, '0'))
    .join('')}`;
  const [own, other] = [TOKENS[theme].ink, TOKENS[theme].paper];
  return contrast(own, hex) >= contrast(other, hex) ? own : other;
}

/** What the user has; at the edge where it lies beyond. */
function Now({ x, y, room }: { readonly x: number; readonly y: number; readonly room: Box }) {
  const [px, py] = [
    Math.min(room.left + room.width, Math.max(room.left, x)),
    Math.min(room.top + room.height, Math.max(room.top, y)),
  ];
  return (
    <path className="map-now" d={`M${px} ${py - 7}l7 7l-7 7l-7 -7z`}>
      <title>What you have now</title>
    </path>
  );
}
