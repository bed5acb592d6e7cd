/** One of a few named things. A choice applies at once; a refused one is said and the list shows what still holds. */
import { useId, useState } from 'react';
import { describedBy, FieldRow, type FieldWords } from './fields/FieldRow';
import { hideHint, showHint } from './fields/hint';
import type { Commit } from './fields/QuantityInput';
import { aboutWords } from './NumberField';

export type Choice = { readonly value: string; readonly name: string; readonly disabled?: boolean };

type Props = FieldWords & {
  /** Null: nothing chosen, or things that differ. */
  readonly value: string | null;
  readonly choices: readonly Choice[];
  readonly onCommit: Commit<string>;
  /** Names the default, such as `default: ring`, and goes back to it. */
  readonly fallback?: string | undefined;
  readonly onClear?: (() => string | null) | undefined;
  readonly disabled?: boolean | undefined;
};

export function ChoiceField(props: Props) {
  const { label, meaning, bare, explain, value, choices, onCommit, fallback, onClear, disabled = false } = props;
  const id = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const about = aboutWords(meaning, undefined);
  const known = value !== null && choices.some((choice) => choice.value === value);
  return (
    <FieldRow id={id} label={label} bare={bare} explain={explain} problem={problem} about={about}>
      <select
        id={id}
        className="entry-choice"
        value={value ?? ''}
        disabled={disabled}
        aria-invalid={problem !== null}
        aria-describedby={describedBy(id, problem)}
        onKeyDown={(event) => event.stopPropagation()}
        onFocus={() => showHint({ of: id, label, text: about })}
        onBlur={() => hideHint(id)}
        onChange={(event) => {
          const chosen = event.target.value;
          setProblem(chosen === '' && onClear ? onClear() : onCommit(chosen));
        }}
      >
        {(onClear || value === null) && (
          <option value="" disabled={!onClear}>
            {fallback ?? 'none'}
          </option>
        )}
        {value !== null && !known && <option value={value}>{value}</option>}
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value} disabled={choice.disabled}>
            {choice.name}
          </option>
        ))}
      </select>
    </FieldRow>
  );
}
