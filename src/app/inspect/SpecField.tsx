/** One field of an inspector, for one thing or for several that share it. */
import { headerOf } from '../derived';
import { applyEdit } from './applyEdit';
import { ChoiceField } from './ChoiceField';
import { NumberField } from './NumberField';
import {
  type AnyContext,
  type AnySpec,
  fieldOf,
  labelOf,
  pathOfField,
  rangeOver,
  setAxis,
  setOn,
  sharedOf,
} from './shared';
import { find } from './specs/spec';
import { TextField } from './TextField';
import { VectorField } from './VectorField';

const DIFFERS = 'differs';

type Props = { readonly spec: AnySpec; readonly contexts: readonly AnyContext[] };

export function SpecField({ spec, contexts }: Props) {
  const [context] = contexts;
  if (!context) return null;
  const things = contexts.map(({ thing }) => thing);
  const values = contexts.map((c) => fieldOf(c, spec.at));
  const shared = sharedOf(values);
  const own = pathOfField(things, spec);
  const commit = (value: unknown) =>
    applyEdit((design) => setOn(design, headerOf(design), things, spec, value), labelOf(spec, contexts, value), own);
  const clear = spec.optional ? () => commit(undefined) : undefined;
  const words = { label: spec.label, meaning: spec.meaning };

  switch (spec.type) {
    case 'number': {
      const fallback =
        shared.kind === 'differ' ? DIFFERS : spec.fallback !== undefined ? find(spec.fallback, context) : undefined;
      const offers = spec.offers ? find(spec.offers.of, context) : [];
      return (
        <NumberField
          {...words}
          quantity={spec.quantity}
          value={shared.kind === 'one' ? (shared.value as number) : null}
          range={rangeOver((c) => find(spec.range, c), contexts)}
          fallback={fallback}
          unit={spec.unit}
          step={spec.step}
          offers={offers.length > 0 ? { name: spec.offers!.name, of: offers } : undefined}
          onCommit={commit}
          onClear={clear}
        />
      );
    }
    case 'place':
    case 'direction': {
      const axes = [0, 1, 2].map((axis) => sharedOf(values.map((v) => (v as readonly number[] | undefined)?.[axis])));
      const given = axes.map((axis) => (axis.kind === 'one' ? axis.value : null)) as [
        number | null,
        number | null,
        number | null,
      ];
      return (
        <VectorField
          {...words}
          quantity={spec.type === 'place' ? 'length' : 'plain'}
          value={given}
          fallback={spec.fallback && find(spec.fallback, context)}
          onClear={shared.kind === 'none' ? undefined : clear}
          onCommit={(axis, value) =>
            applyEdit(
              (design) => setAxis(design, headerOf(design), things, spec, axis, value),
              labelOf(spec, contexts, value, axis),
              own && `${own}/${axis}`,
            )
          }
        />
      );
    }
    case 'choice': {
      const chosen = spec.get ? sharedOf(contexts.map((c) => spec.get!(c))) : shared;
      const fallback =
        chosen.kind === 'differ' ? DIFFERS : spec.fallback !== undefined ? find(spec.fallback, context) : undefined;
      return (
        <ChoiceField
          {...words}
          value={chosen.kind === 'one' ? String(chosen.value) : null}
          choices={find(spec.choices, context)}
          fallback={fallback}
          onCommit={commit}
          onClear={clear}
        />
      );
    }
    case 'text':
      return (
        <TextField
          {...words}
          value={shared.kind === 'one' ? String(shared.value) : null}
          fallback={
            shared.kind === 'differ' ? DIFFERS : spec.fallback !== undefined ? find(spec.fallback, context) : undefined
          }
          offers={spec.offers}
          onCommit={commit}
          onClear={clear}
        />
      );
    case 'line':
      return (
        <TextField
          {...words}
          value={shared.kind === 'one' ? spec.write(shared.value, context.display) : null}
          fallback={
            shared.kind === 'differ' ? DIFFERS : spec.fallback !== undefined ? find(spec.fallback, context) : undefined
          }
          onCommit={(text) => {
            const reading = spec.read(text, context.display);
            return reading.ok ? commit(reading.value) : reading.problem;
          }}
          onClear={clear}
        />
      );
  }
}
