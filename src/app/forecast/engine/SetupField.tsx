/** One number of the engine or of its pipes: as given, or lightly what is taken in its place and why. */
import type { Range } from '../../../../shared/design/ranges';
import { useDocument } from '../../document';
import { always } from '../../inspect/fields/always';
import type { Quantity } from '../../inspect/fields/quantity';
import { NumberField } from '../../inspect/NumberField';
import { assumedFor, numberAt, setAt, takenNumber } from './given';
import { useAssumed } from './useAssumed';

export type FieldWish = {
  /** In the document, such as `engine/rod`. */
  readonly path: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly range: Range;
  readonly meaning: string;
  readonly unit?: string;
  readonly step?: number;
  /** Its part cannot be without it. */
  readonly needed?: boolean;
};

export function SetupField({ path, label, quantity, range, meaning, unit, step, needed = false }: FieldWish) {
  const value = useDocument((s) => (s.settled ? numberAt(s.settled, path) : null));
  const taken = assumedFor(useAssumed(), path);
  return (
    <div data-path={path}>
      <NumberField
        label={label}
        meaning={meaning}
        quantity={quantity}
        range={range}
        unit={unit}
        step={step}
        value={value}
        fallback={taken ? takenNumber(taken.taken) : 'not given'}
        onCommit={(next) => setAt(path, next, `Set ${label.toLowerCase()}`)}
        onClear={needed ? undefined : always(() => setAt(path, undefined, `Take ${label.toLowerCase()} as usual`))}
      />
      {value === null && taken && <TakenWords why={taken.why} />}
    </div>
  );
}

/** @param taken what stands for it, where no field shows that */
export function TakenWords({ taken, why }: { readonly taken?: string; readonly why: string }) {
  return <p className="gain-taken">{taken === undefined ? lowered(why) : `${taken}: ${lowered(why)}`}</p>;
}

/** Within a sentence; what begins with a short form or a name's capital stays. */
const lowered = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? `${text[0]!.toLowerCase()}${text.slice(1).replace(/\.$/, '')}` : text;
