/** Mean torque in the band over length and bore of the primaries, one arrangement at a time; a size is picked, looked at, and taken. */
import './map.css';
import '../waves/faces.css';
import { useState } from 'react';
import { errorOfBoth } from '../../../pulse/forecast/studyDoubt';
import { useDisplay } from '../../actions/display';
import { useTheme } from '../../colours';
import { lengthNumber } from '../../format';
import { listText } from '../sizes/lengthList';
import { usePlotBox } from '../usePlotBox';
import { Choice } from '../waves/Choice';
import { MapPlot, ruleLetter } from './MapPlot';
import { bestOf, edgeWays, followedOf, planMap, sameSize, seenOf, stepFrom, triedOf } from './mapPlan';
import { tubeText } from './tubeText';
import type { MapArrangement, MapCell, MapNow, MapProps, MapRule, MapSize, RuleRange } from './types';

export function MapFace({ arrangements, band, coarseError, speedsError, now = null, onChoose }: MapProps) {
  const display = useDisplay();
  const theme = useTheme();
  const apart = errorOfBoth(coarseError, speedsError);
  const [asked, setAsked] = useState<string | null>(null);
  const [outlet, setOutlet] = useState<number | null>(null);
  const [picked, setPicked] = useState<MapSize | null>(null);
  const key = asked !== null && arrangements.some((one) => one.key === asked) ? asked : leader(arrangements)?.key;
  const withOutlets = arrangements.filter((one) => one.key === key);
  const arrangement = withOutlets.find((one) => outlet !== null && one.outlet === outlet) ?? leader(withOutlets);
  const bestOfWhat = withOutlets.length > 1 ? 'outlet' : 'arrangement';
  const names = new Map(arrangements.map((one) => [one.key, one.name]));
  const box = usePlotBox({
    label: 'Map of sizes. Arrow keys pick the size beside.',
    onKey(key) {
      const next = arrangement && stepFrom(arrangement.cells, shown ?? arrangement.cells[0]!, key);
      if (next) setPicked(next);
      return Boolean(next);
    },
  });
  const { width, height } = box.size;
  if (!arrangement || arrangement.cells.length === 0)
    return <p className="quiet face-none">Follow a study of sizes, and their map stands here.</p>;
  const best = bestOf(arrangement);
  const own = now && now.arrangement === arrangement.key && isOutletOf(now, arrangement) ? now : null;
  const shown = (picked && arrangement.cells.find((cell) => sameSize(cell, picked))) ?? best;
  const { tried, all } = triedOf(arrangement);
  const isOver = tried === all;
  const beyond = isOver && best ? edgeWays(best, arrangement.cells) : [];
  const sizeText = ({ length, bore, tube }: MapSize & Pick<MapCell, 'tube'>) => {
    const [long, wide] = [lengthNumber(length * 1000, display, 0), lengthNumber(bore * 1000, display, 1)];
    return tube ? `${long} of ${tubeText(tube, display)}` : `${long}, bore ${wide}`;
  };
  return (
    <section className="map-face" aria-label="Map of sizes">
      <div className="face-bar">
        {names.size > 1 && (
          <Choice
            label="Arrangement"
            options={[...names].map(([key, name]) => ({ key, name }))}
            value={arrangement.key}
            onChoose={setAsked}
          />
        )}
        {withOutlets.length > 1 && (
          <Choice
            label={`Outlet, ${display}`}
            shown
            options={withOutlets.map((one) => ({ key: one.outlet ?? 0, name: outletText(one.outlet ?? 0) }))}
            value={arrangement.outlet ?? 0}
            onChoose={setOutlet}
          />
        )}
        <p className="map-title">
          Mean torque, <span className="unit">N m</span>, {band[0]} to {band[1]} rpm
          {!isOver && (
            <b>
              {' '}
              · so far, {tried} of {all}
            </b>
          )}
          {apart !== null && <span className="quiet"> · {doubtWords(coarseError, speedsError)}</span>}
        </p>
      </div>
      <div className="map-body">
        <div className="map-plot" {...box.props}>
          {width > 0 && height > 0 && (
            <MapPlot
              arrangement={arrangement}
              now={own}
              picked={shown}
              error={apart}
              theme={theme}
              display={display}
              width={width}
              height={height}
              onPick={setPicked}
              among={withOutlets.flatMap(followedOf)}
            />
          )}
        </div>
        <div className="map-side">
          {withOutlets.length > 1 && (
            <OutletList maps={withOutlets} shown={arrangement} apart={apart} text={outletText} onChoose={setOutlet} />
          )}
          {shown && (
            <div className="map-picked" aria-live="polite">
              <h4>
                {sizeText(shown)} <span className="unit">{display}</span>
              </h4>
              {shown.tube && (
                <p className="quiet">
                  bore {lengthNumber(shown.bore * 1000, display, 1)} <span className="unit">{display}</span>
                  {arrangement.outlet !== null && (
                    <>
                      , outlet {outletText(arrangement.outlet)} <span className="unit">{display}</span>
                    </>
                  )}
                </p>
              )}
              <p>
                {shown.torque === null ? (
                  (shown.failed ?? 'Not followed yet.')
                ) : (
                  <>
                    <b>{shown.torque.toFixed(1)}</b> <span className="unit">N m</span>{' '}
                    {besideBest(shown, best, apart, isOver ? '' : ' so far', bestOfWhat)}
                  </>
                )}
              </p>
              <button
                type="button"
                className="button strong"
                disabled={shown.torque === null}
                onClick={() => {
                  const { key: joined, outlet: through } = arrangement;
                  onChoose({ length: shown.length, bore: shown.bore, arrangement: joined, outlet: through });
                }}
              >
                Take this size
              </button>
            </div>
          )}
          {beyond.length > 0 && (
            <p className="map-edge">
              <b>The best lies at the edge of the map:</b> {beyond.join(' or ')} than what was tried may be better.
            </p>
          )}
          <ul className="map-key">
            {isOver && (
              <li>
                <svg width={22} height={16} aria-hidden="true">
                  <rect className="map-best" x={2} y={2} width={18} height={12} />
                </svg>
                the best of this {bestOfWhat}
              </li>
            )}
            {apart !== null && (
              <li>
                <svg width={22} height={16} aria-hidden="true">
                  <rect className="map-tied" x={2} y={2} width={18} height={12} />
                </svg>
                as good, within {apart.toFixed(1)} N m: not to be told apart here
              </li>
            )}
            {own && (
              <li>
                <svg width={22} height={16} aria-hidden="true">
                  <path className="map-now" d="M11 1l7 7l-7 7l-7 -7z" />
                </svg>
                what you have: {sizeText(own)} <span className="unit">{display}</span>
              </li>
            )}
          </ul>
          {arrangement.rules.length > 0 && (
            <>
              <h4>Rules of thumb, with how far their published forms lie apart</h4>
              <ol className="map-rules">
                {arrangement.rules.map((rule, k) => (
                  <Rule
                    key={rule.name}
                    rule={rule}
                    letter={ruleLetter(k)}
                    text={rangeText}
                    off={isOff(rule, arrangement.cells)}
                  />
                ))}
              </ol>
            </>
          )}
        </div>
      </div>
    </section>
  );

  function outletText(metres: number): string {
    return listText([metres * 1000], display);
  }

  function rangeText({ low, middle, high }: RuleRange, decimals: number): string {
    const number = (value: number) => lengthNumber(value * 1000, display, decimals);
    const [least, most] = [number(low), number(high)];
    return least === most ? number(middle) : `${number(middle)} (${least} to ${most})`;
  }
}

/** N m; an error that rounds to none is still one. */
const errText = (error: number): string => (error < 0.05 ? 'less than 0.1' : error.toFixed(1));

function doubtWords(cells: number | null, speeds: number | null): string {
  const each = [
    ...(cells === null ? [] : [`coarse cells err by ${errText(cells)}`]),
    ...(speeds === null ? [] : [`so few speeds by ${errText(speeds)}`]),
  ];
  return `sizes within ${errText(errorOfBoth(cells, speeds)!)} N m cannot be told apart (${each.join(', ')})`;
}

/** The map with the best size of all. */
function leader(maps: readonly MapArrangement[]): MapArrangement | undefined {
  const most = (one: MapArrangement) => bestOf(one)?.torque ?? -Infinity;
  return maps.reduce<MapArrangement | undefined>((a, b) => (a && most(a) >= most(b) ? a : b), undefined);
}

/** Half a millimetre of an outlet is no other one. */
const isOutletOf = (now: MapNow, { outlet }: MapArrangement): boolean =>
  outlet === null || now.outlet === null || Math.abs(now.outlet - outlet) < 5e-4;

type OutletListProps = {
  readonly maps: readonly MapArrangement[];
  readonly shown: MapArrangement;
  readonly apart: number | null;
  readonly text: (metres: number) => string;
  readonly onChoose: (outlet: number) => void;
};

/** Which outlet does best is told by the best size with each. */
function OutletList({ maps, shown, apart, text, onChoose }: OutletListProps) {
  const display = useDisplay();
  const bests = maps.flatMap((map) => bestOf(map)?.torque ?? []);
  const areAlike = apart !== null && bests.length > 1 && Math.max(...bests) - Math.min(...bests) <= apart;
  return (
    <>
      <table className="map-outlets">
        <thead>
          <tr>
            <th scope="col">
              Outlet <span className="unit">{display}</span>
            </th>
            <th scope="col">
              Best <span className="unit">N m</span>
            </th>
            <th scope="col">
              primaries, length × bore <span className="unit">{display}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {maps.map((map) => {
            const best = bestOf(map);
            return (
              <tr key={map.outlet} aria-current={map === shown} onClick={() => onChoose(map.outlet ?? 0)}>
                <th scope="row">{text(map.outlet ?? 0)}</th>
                <td>{best ? best.torque.toFixed(1) : '–'}</td>
                <td>
                  {best &&
                    `${lengthNumber(best.length * 1000, display, 0)} × ${lengthNumber(best.bore * 1000, display, 1)}`}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {areAlike && <p className="map-alike">These outlets cannot be told apart by this study.</p>}
    </>
  );
}

function besideBest(
  shown: { readonly torque: number | null },
  best: { readonly torque: number } | null,
  apart: number | null,
  soFar: '' | ' so far',
  ofWhat: string,
): string {
  if (!best || shown.torque === null) return '';
  const less = best.torque - shown.torque;
  if (less <= 0) return soFar === '' ? `the best of this ${ofWhat}` : 'the best so far: others may still do better';
  const words = `${less.toFixed(1)} less than the best${soFar}`;
  return apart !== null && less <= apart ? `${words}: no difference that could be told here` : words;
}

type RuleProps = {
  readonly rule: MapRule;
  readonly letter: string;
  readonly text: (range: RuleRange, decimals: number) => string;
  /** Nothing of what it asks for lies on the map. */
  readonly off: boolean;
};

function isOff({ length, bore }: MapRule, cells: MapArrangement['cells']): boolean {
  const { across, up } = planMap(cells, { left: 0, top: 0, width: 1, height: 1 });
  return !((length && seenOf(length, across)) || (bore && seenOf(bore, up)));
}

const Rule = ({ rule, letter, text, off }: RuleProps) => (
  <li>
    <b>{letter}</b>
    <span>
      {rule.name}
      {rule.length && `, length ${text(rule.length, 0)}`}
      {rule.bore && `, bore ${text(rule.bore, 1)}`}
      {off && ', off the map'} <span className="quiet">{rule.source}</span>
    </span>
  </li>
);
