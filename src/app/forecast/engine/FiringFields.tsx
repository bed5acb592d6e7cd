/** How many cylinders, in which banks, and the order they fire in; and the speeds the engine is used at. */
import { setCylinders, setFields, setFiringOrder } from '../../../../shared/design/edit';
import { formFields } from '../../../../shared/engine/formFields';
import { useDocument } from '../../document';
import { applyEdit } from '../../inspect/applyEdit';
import { NumberField } from '../../inspect/NumberField';
import {
  BANKS_FIELD,
  banksText,
  CYLINDERS_FIELD,
  ORDER_FIELD,
  orderText,
  readBanksText,
  readOrderText,
} from '../../inspect/specs/firing';
import { TextField } from '../../inspect/TextField';
import { assumedFor, setAt } from './given';
import { TakenWords } from './SetupField';
import { useAssumed } from './useAssumed';

/** As the engine is refused by. */
const { least, most } = formFields('rpm/0')!;
const SPEEDS = { least, most };

export function FiringFields() {
  const engine = useDocument((s) => s.settled?.engine) ?? {};
  const assumed = useAssumed();
  const taken = (path: string, given: boolean) => {
    const found = given ? null : assumedFor(assumed, path);
    return found && <TakenWords why={found.why} />;
  };
  const fallback = (path: string) => assumedFor(assumed, path)?.taken ?? 'not given';
  const rpm = (end: 0 | 1, label: string) => (
    <NumberField
      label={label}
      quantity="plain"
      unit="rpm"
      range={SPEEDS}
      step={250}
      meaning="the speeds the engine is used at, and followed at"
      value={engine.rpm?.[end] ?? null}
      fallback={fallback('engine/rpm')}
      onCommit={(value) => {
        const [low, high] = engine.rpm ?? (end === 0 ? [value, value + 4000] : [Math.max(1, value / 4), value]);
        return setAt('engine/rpm', end === 0 ? [value, high] : [low, value], 'Set the speeds');
      }}
    />
  );
  return (
    <>
      <div data-path="engine/cylinders">
        <NumberField
          {...CYLINDERS_FIELD}
          value={engine.cylinders ?? null}
          fallback={fallback('engine/cylinders')}
          onCommit={(value) => applyEdit((design) => setCylinders(design, value), 'Set cylinders', 'engine/cylinders')}
        />
        {taken('engine/cylinders', engine.cylinders !== undefined)}
      </div>
      <div data-path="engine/banks">
        <TextField
          {...BANKS_FIELD}
          value={engine.banks ? banksText(engine.banks) : null}
          fallback={assumedFor(assumed, 'engine/banks')?.taken ?? BANKS_FIELD.fallback}
          onCommit={(text) => {
            const read = readBanksText(text);
            return read.ok ? setAt('engine/banks', read.value, 'Set banks') : read.problem;
          }}
          onClear={() => setAt('engine/banks', undefined, 'Take banks away')}
        />
      </div>
      <div data-path="engine/firingOrder">
        <TextField
          {...ORDER_FIELD}
          value={engine.firingOrder ? orderText(engine.firingOrder) : null}
          fallback={fallback('engine/firingOrder')}
          onCommit={(text) => {
            const read = readOrderText(text);
            if (!read.ok) return read.problem;
            return applyEdit((design) => setFiringOrder(design, read.value), 'Set firing order', 'engine/firingOrder');
          }}
          onClear={() =>
            applyEdit((design) => setFields(design, [[['engine', 'firingOrder'], undefined]]), 'Take firing order away')
          }
        />
        {taken('engine/firingOrder', engine.firingOrder !== undefined)}
      </div>
      <div data-path="engine/firingAngles">
        <TextField
          label="Fires at"
          meaning="crank degrees in the firing order, the first at 0, below 720; empty: evenly"
          value={engine.firingAngles?.join(' ') ?? null}
          fallback="evenly"
          onCommit={(text) => {
            const angles = text.split(/[\s,;]+/).map(Number);
            if (!angles.every(Number.isFinite)) return 'Crank degrees are wanted, such as 0 180 450 630.';
            return setAt('engine/firingAngles', angles, 'Set firing angles');
          }}
          onClear={() => setAt('engine/firingAngles', undefined, 'Fire evenly')}
        />
      </div>
      <div data-path="engine/rpm">
        {rpm(0, 'Used from')}
        {rpm(1, 'Used to')}
        {taken('engine/rpm', engine.rpm !== undefined)}
      </div>
    </>
  );
}
