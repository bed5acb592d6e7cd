/** The text input of one number, with its unit inside; what every number field and table cell is made of. */
import type { Range } from '../../../../shared/design/ranges';
import { useDisplay } from '../../actions/display';
import { decimalsFor } from '../../format';
import { hideHint, showHint } from './hint';
import { type Quantity, readQuantity, showQuantity, stepQuantity } from './quantity';
import { useDraft } from './useDraft';

/** What a field does with a value: answers why it cannot be, or null. */
export type Commit<T> = (value: T) => string | null;

export type QuantityProps = {
  /** Null: nothing there, or things that differ. */
  readonly value: number | null;
  readonly quantity: Quantity;
  readonly range?: Range | undefined;
  /** What counts while nothing is given: shown lightly in its place. */
  readonly fallback?: number | string | undefined;
  readonly onCommit: Commit<number>;
  /** Emptying the field goes back to the default; without it an empty field is refused. */
  readonly onClear?: (() => string | null) | undefined;
  /** Step of the arrow keys, in the document's unit. */
  readonly step?: number | undefined;
  /** Shown inside the field in place of the quantity's own unit. */
  readonly unit?: string | undefined;
  readonly disabled?: boolean | undefined;
  /** Decimals of a mm or degree, in a column; inches get one more. */
  readonly decimals?: number | undefined;
};

/** State and props of the input element, and what was refused. */
export function useQuantity(
  id: string,
  label: string,
  about: string,
  { value, quantity, range, fallback, onCommit, onClear, step, disabled = false, decimals }: QuantityProps,
) {
  const display = useDisplay();
  const digits = decimals === undefined || quantity !== 'length' ? decimals : decimalsFor(display, decimals);
  const show = (mm: number) => showQuantity(mm, quantity, display, digits);
  const { problem, refuse, input } = useDraft({
    shown: value === null ? '' : show(value),
    accept(text) {
      if (text.trim() === '' && onClear) return onClear();
      const reading = readQuantity(text, quantity, display, range);
      return reading.ok ? onCommit(reading.value) : reading.problem;
    },
    step(text, direction, size) {
      const from = text.trim() === '' && typeof fallback === 'number' ? fallback : null;
      const reading = from === null ? readQuantity(text, quantity, display) : { ok: true as const, value: from };
      if (!reading.ok) return null;
      const next = stepQuantity(reading.value, direction, size, quantity, display, range, step);
      return showQuantity(next, quantity, display);
    },
  });
  return {
    problem,
    refuse,
    input: {
      ...input,
      id,
      disabled,
      type: 'text',
      inputMode: 'text' as const,
      autoComplete: 'off',
      spellCheck: false,
      placeholder: typeof fallback === 'number' ? show(fallback) : (fallback ?? ''),
      'aria-invalid': problem !== null,
      onFocus: (event: Parameters<typeof input.onFocus>[0]) => {
        input.onFocus(event);
        showHint({ of: id, label, text: about });
      },
      onBlur: () => {
        input.onBlur();
        hideHint(id);
      },
    },
  };
}

export const unitOf = (quantity: Quantity, display: 'mm' | 'in', unit?: string): string =>
  unit ?? (quantity === 'length' ? display : quantity === 'angle' ? '°' : '');
