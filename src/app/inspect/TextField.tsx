/** A line of text: a name, a title, a list of numbers. Applied as a number field is. */
import { useId } from 'react';
import { describedBy, FieldRow, type FieldWords } from './fields/FieldRow';
import { hideHint, showHint } from './fields/hint';
import type { Commit } from './fields/QuantityInput';
import { Reset } from './fields/Reset';
import { useDraft } from './fields/useDraft';
import { aboutWords } from './NumberField';

type Props = FieldWords & {
  /** Null: nothing there, or things that differ. */
  readonly value: string | null;
  readonly fallback?: string | undefined;
  readonly onCommit: Commit<string>;
  /** Emptying the field takes the value away; without it empty text is given to `onCommit`. */
  readonly onClear?: (() => string | null) | undefined;
  /** Offered while typing. */
  readonly offers?: readonly string[] | undefined;
};

export function TextField({ label, meaning, bare, explain, value, fallback, onCommit, onClear, offers }: Props) {
  const id = useId();
  const about = aboutWords(meaning, undefined);
  const { problem, input } = useDraft({
    shown: value ?? '',
    accept: (text) => (text.trim() === '' && onClear ? onClear() : onCommit(text.trim())),
  });
  return (
    <FieldRow id={id} label={label} bare={bare} explain={explain} problem={problem} about={about}>
      <span className="entry">
        <input
          {...input}
          id={id}
          type="text"
          className="entry-text words"
          autoComplete="off"
          spellCheck={false}
          placeholder={fallback ?? ''}
          list={offers ? `${id}-offers` : undefined}
          aria-invalid={problem !== null}
          aria-describedby={describedBy(id, problem)}
          onFocus={(event) => {
            input.onFocus(event);
            showHint({ of: id, label, text: about });
          }}
          onBlur={() => {
            input.onBlur();
            hideHint(id);
          }}
        />
        {!bare && <Reset show={onClear !== undefined && value !== null} onReset={onClear} label={label} />}
      </span>
      {offers && (
        <datalist id={`${id}-offers`}>
          {offers.map((offer) => (
            <option key={offer} value={offer} />
          ))}
        </datalist>
      )}
    </FieldRow>
  );
}
