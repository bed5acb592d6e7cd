/** What stands under the crosshair, in one line of numbers; read aloud where keys moved it. */
import { gaugeOf, lengthUnit, QUANTITY_KEYS, type Quantity, timeUnit, valueText, wordsFor } from './quantities';
import { valueAt } from './sample';
import { decimalsFor, tickText } from './scale';
import type { Cursor, Seen } from './shown';
import { timeText } from './words';

const HINT = globalThis.matchMedia?.('(pointer: coarse)').matches
  ? 'Touch the picture to read it.'
  : 'Point at the picture, or use the arrow keys on it, to read it.';

type Props = {
  readonly seen: Seen;
  readonly quantity: Quantity;
  readonly cursor: Cursor | null;
  readonly aloud: boolean;
};

export function Readout({ seen, quantity, cursor, aloud }: Props) {
  const pipe = cursor ? seen.rig.pipes[cursor.pipe] : undefined;
  return (
    <p id="waves-readout" className="waves-readout" aria-live={aloud ? 'polite' : 'off'}>
      {cursor && pipe && seen.run.picture ? (
        <>
          <span>
            pipe <b>{pipe.id}</b>
          </span>
          <Value name="x" value={placeText(cursor.x, pipe.length)} unit={lengthUnit(seen.rig).unit} />
          <Value name="time" value={timeText(cursor.time, seen.rig)} unit={timeUnit(seen.rig).unit} />
          {QUANTITY_KEYS.map((key) => {
            const value = valueAt(seen.run.picture!, seen.rows, cursor.pipe, cursor.x, cursor.time, key);
            const { name, unit, factor } = wordsFor(key, seen.rig);
            const text = value === null ? '–' : valueText(key, value * factor, gaugeOf(key, seen.rig).decimals);
            return <Value key={key} name={name.toLowerCase()} value={text} unit={unit} strong={key === quantity} />;
          })}
        </>
      ) : (
        <span className="quiet">{HINT}</span>
      )}
    </p>
  );
}

/** A place beside the pipe's length; cells that an end correction adds lie beyond it. */
function placeText(x: number, length: number): string {
  const decimals = decimalsFor(length);
  const place = `${tickText(x, decimals)} of ${tickText(length, decimals)}`;
  return x < 0 || x > length ? `${place} (beyond the metal)` : place;
}

type ValueProps = { readonly name: string; readonly value: string; readonly unit: string; readonly strong?: boolean };

function Value({ name, value, unit, strong = false }: ValueProps) {
  return (
    <span>
      <span className="quiet">{name} </span>
      {strong ? <b>{value}</b> : value} <span className="unit">{unit}</span>
    </span>
  );
}
