/** One number of the engine form: label, unit, bounds and meaning come from the form's own list, by path. */
import type { Range } from '../../../shared/design/ranges';
import { formFields } from '../../../shared/engine/formFields';
import { always } from '../inspect/fields/always';
import type { Quantity } from '../inspect/fields/quantity';
import { NumberField } from '../inspect/NumberField';

type Props = {
  /** In the engine form, such as `port/angle`. */
  readonly path: string;
  readonly label?: string;
  readonly meaning?: string;
  readonly value: number | null;
  /** What counts while nothing is typed. */
  readonly usual?: number | string | undefined;
  readonly onPut: (value: number) => void;
  /** Back to the usual. */
  readonly onClear?: (() => void) | undefined;
  readonly range?: Partial<Range>;
};

const QUANTITY: Readonly<Record<string, Quantity>> = { mm: 'length', '°': 'angle' };

export function FormNumber({ path, label, meaning, value, usual, onPut, onClear, range }: Props) {
  const field = formFields(path)!;
  const { least, most, whole, unit } = field;
  return (
    <NumberField
      label={label ?? field.name}
      meaning={meaning ?? field.meaning}
      quantity={QUANTITY[unit] ?? (whole ? 'count' : 'plain')}
      unit={unit === 'rpm' ? 'rpm' : undefined}
      range={{ least, most, ...(whole && { whole }), ...range }}
      value={value}
      fallback={usual}
      onCommit={always(onPut)}
      onClear={onClear && always(onClear)}
    />
  );
}
