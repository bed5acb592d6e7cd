/** Mean torque in the band over length and bore of the primaries, one arrangement at a time; a size is picked, looked at, and taken. */
import './map.css';
import '../waves/faces.css';
import { useState } from 'react';
import { useDisplay } from '../../actions/display';
import { useTheme } from '../../colours';
import { lengthNumber } from '../../format';
import { usePlotBox } from '../usePlotBox';
import { Choice } from '../waves/Choice';
import { MapPlot, ruleLetter } from './MapPlot';
import { bestOf, edgeWays, planMap, sameSize, seenOf, stepFrom, triedOf } from './mapPlan';
import { tubeText } from './tubeText';
import type { MapArrangement, MapCell, MapProps, MapRule, MapSize, RuleRange } from './types';

export function MapFace({ arrangements, band, coarseError, now = null, onChoose }: MapProps) {
  const display = useDisplay();
  const theme = useTheme();
  const [asked, setAsked] = useState<string | null>(null);
  const [picked, setPicked] = useState<MapSize | null>(null);
  const box = usePlotBox({
    label: 'Map of sizes. Arrow keys pick the size beside.',
    onKey(key) {
      const next = arrangement && stepFrom(arrangement.cells, shown ?? arrangement.cells[0]!, key);
      if (next) setPicked(next);
      return Boolean(next);
    },
  });
  const { width, height } = box.size;
  const arrangement =
    arrangements.find(({ key }) => key === asked) ?? arrangements.find(({ key }) => key === leader(arrangements));
  if (!arrangement || arrangement.cells.length === 0)
    return <p className="quiet face-none">Follow a study of sizes, and their map stands here.</p>;
  const best = bestOf(arrangement);
  const own = now && now.arrangement === arrangement.key ? now : null;
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
        {arrangements.length > 1 && (
          <Choice
            label="Arrangement"
            options={arrangements.map(({ key, name }) => ({ key, name }))}
            value={arrangement.key}
            onChoose={setAsked}
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
          {coarseError !== null && (
            <span className="quiet"> · on coarse cells, within {coarseError.toFixed(1)} N m of fine ones</span>
          )}
        </p>
      </div>
      <div className="map-body">
        <div className="map-plot" {...box.props}>
          {width > 0 && height > 0 && (
            <MapPlot
              arrangement={arrangement}
              now={own}
              picked={shown}
              coarseError={coarseError}
              theme={theme}
              display={display}
              width={width}
              height={height}
              onPick={setPicked}
            />
          )}
        </div>
        <div className="map-side">
          {shown && (
            <div className="map-picked" aria-live="polite">
              <h4>
                {sizeText(shown)} <span className="unit">{display}</span>
              </h4>
              {shown.tube && (
                <p className="quiet">
                  bore {lengthNumber(shown.bore * 1000, display, 1)} <span className="unit">{display}</span>
                </p>
              )}
              <p>
                {shown.torque === null ? (
                  (shown.failed ?? 'Not followed yet.')
                ) : (
                  <>
                    <b>{shown.torque.toFixed(1)}</b> <span className="unit">N m</span>{' '}
                    {besideBest(shown, best, coarseError, isOver ? '' : ' so far')}
                  </>
                )}
              </p>
              <button
                type="button"
                className="button strong"
                disabled={shown.torque === null}
                onClick={() => onChoose({ length: shown.length, bore: shown.bore, arrangement: arrangement.key })}
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
                the best of this arrangement
              </li>
            )}
            {coarseError !== null && (
              <li>
                <svg width={22} height={16} aria-hidden="true">
                  <rect className="map-tied" x={2} y={2} width={18} height={12} />
                </svg>
                as good, within the error of coarse cells
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

  function rangeText({ low, middle, high }: RuleRange, decimals: number): string {
    const number = (value: number) => lengthNumber(value * 1000, display, decimals);
    return `${number(middle)} (${number(low)} to ${number(high)})`;
  }
}

/** The arrangement with the best size of all. */
function leader(arrangements: readonly MapArrangement[]): string | undefined {
  const most = (one: MapArrangement) => bestOf(one)?.torque ?? -Infinity;
  return arrangements.reduce<MapArrangement | undefined>((a, b) => (a && most(a) >= most(b) ? a : b), undefined)?.key;
}

function besideBest(
  shown: { readonly torque: number | null },
  best: { readonly torque: number } | null,
  coarseError: number | null,
  soFar: '' | ' so far',
): string {
  if (!best || shown.torque === null) return '';
  const less = best.torque - shown.torque;
  if (less <= 0) return soFar === '' ? 'the best of this arrangement' : 'the best so far: others may still do better';
  const words = `${less.toFixed(1)} less than the best${soFar}`;
  return coarseError !== null && less <= coarseError ? `${words}: no difference that coarse cells could tell` : words;
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
