/** A place (mm) or a direction, its three numbers on one line. */
import { useId } from 'react';
import { COMPONENT, COORDINATE } from '../../../shared/design/ranges';
import type { Vec3 } from '../../../shared/vec3';
import { useDisplay } from '../actions/display';
import { FieldFoot } from './fields/FieldFoot';
import type { FieldWords } from './fields/FieldRow';
import { unitOf, useQuantity } from './fields/QuantityInput';
import type { Quantity } from './fields/quantity';
import { Reset } from './fields/Reset';
import { aboutWords } from './NumberField';

type Part = number | null;
type Props = FieldWords & {
  /** Null where there is none, or where things differ. */
  readonly value: Vec3 | readonly [Part, Part, Part] | null;
  /** `length` for a place, `plain` for a direction. */
  readonly quantity: 'length' | 'plain';
  readonly fallback?: Vec3 | undefined;
  /** Takes one changed number, so that several things can share the edit without sharing the rest. */
  readonly onCommit: (axis: 0 | 1 | 2, value: number) => string | null;
  /** Goes back to the default. */
  readonly onClear?: (() => string | null) | undefined;
  readonly disabled?: boolean | undefined;
};

const AXES = ['X', 'Y', 'Z'] as const;

export function VectorField({
  label,
  meaning,
  bare,
  explain,
  value,
  quantity,
  fallback,
  onCommit,
  onClear,
  disabled,
}: Props) {
  const id = useId();
  const display = useDisplay();
  const about = aboutWords(meaning, undefined);
  const parts = ([0, 1, 2] as const).map((axis) => ({
    axis,
    value: value?.[axis] ?? null,
    fallback: fallback?.[axis],
    commit: (next: number) => onCommit(axis, next),
  }));
  const x = usePart(`${id}-0`, `${label} X`, about, quantity, parts[0]!, disabled);
  const y = usePart(`${id}-1`, `${label} Y`, about, quantity, parts[1]!, disabled);
  const z = usePart(`${id}-2`, `${label} Z`, about, quantity, parts[2]!, disabled);
  const all = [x, y, z];
  const problem = all.find((part) => part.problem !== null)?.problem ?? null;
  const unit = unitOf(quantity, display);
  return (
    <fieldset className={`field vector${bare ? ' bare' : ''}${problem === null ? '' : ' refused'}`}>
      <legend className={bare ? 'unseen' : 'field-label'}>
        {label}
        {unit !== '' && <span className="unit"> {unit}</span>}
      </legend>
      <div className="field-control">
        {all.map((part, axis) => (
          <span className="entry" key={AXES[axis]}>
            <span className="unit entry-axis" aria-hidden="true">
              {AXES[axis]}
            </span>
            <input
              {...part.input}
              className="entry-text"
              aria-label={`${label} ${AXES[axis]}`}
              aria-describedby={`${id}-problem ${id}-about`}
            />
          </span>
        ))}
        <Reset show={onClear !== undefined} onReset={onClear} label={label} />
      </div>
      <FieldFoot id={id} problem={problem} about={about} explain={explain} />
    </fieldset>
  );
}

type PartProps = {
  readonly value: number | null;
  readonly fallback: number | undefined;
  commit(value: number): string | null;
};

function usePart(id: string, label: string, about: string, quantity: Quantity, part: PartProps, disabled?: boolean) {
  const { value, fallback, commit } = part;
  const range = quantity === 'length' ? COORDINATE : COMPONENT;
  return useQuantity(id, label, about, {
    value,
    quantity,
    range,
    fallback,
    onCommit: commit,
    disabled,
    step: quantity === 'plain' ? 0.1 : undefined,
  });
}
