/** A number of any quantity with its label: text that takes fractions and sums, its unit, range and meaning. */
import { useId } from 'react';
import { useDisplay } from '../actions/display';
import { describedBy, FieldRow, type FieldWords } from './fields/FieldRow';
import { Offers, type OffersProps } from './fields/Offers';
import { type QuantityProps, unitOf, useQuantity } from './fields/QuantityInput';
import { rangeWords } from './fields/quantity';
import { Reset } from './fields/Reset';

export type NumberFieldProps = FieldWords &
  QuantityProps & {
    /** Values to choose from beside the text, such as stock sizes. */
    readonly offers?: OffersProps | undefined;
  };

/** @param props.quantity `plain` or `count` for numbers without a unit; LengthField and AngleField name theirs */
export function NumberField(props: NumberFieldProps) {
  const { label, meaning, bare, explain, quantity, range, unit, value, onClear, offers } = props;
  const id = useId();
  const display = useDisplay();
  const about = aboutWords(meaning, range && rangeWords(range, quantity, display));
  const { problem, input, refuse } = useQuantity(id, label, about, props);
  const shownUnit = unitOf(quantity, display, unit);
  return (
    <FieldRow id={id} label={label} bare={bare} explain={explain} problem={problem} about={about}>
      <span className="entry">
        <input {...input} className="entry-text" aria-describedby={describedBy(id, problem)} />
        {shownUnit !== '' && !bare && <span className="unit entry-unit">{shownUnit}</span>}
        {offers && <Offers {...offers} label={label} value={value} onChoose={props.onCommit} onRefused={refuse} />}
        {!bare && <Reset show={onClear !== undefined && value !== null} onReset={onClear} label={label} />}
      </span>
    </FieldRow>
  );
}

/** `Metal thickness. Above 0, less than 21.2 mm.` */
export function aboutWords(meaning: string | undefined, range: string | undefined): string {
  const parts = [meaning, range].filter((part): part is string => part !== undefined && part !== '');
  return parts.map((part) => `${part[0]!.toUpperCase()}${part.slice(1).replace(/\.$/, '')}.`).join(' ');
}
