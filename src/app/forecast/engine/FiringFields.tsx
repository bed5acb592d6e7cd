/** How many cylinders, in which banks, and the order they fire in; and the speeds the engine is used at. */
import {
  readBanks,
  readCylinders,
  setCylinders,
  setFields,
  setFiringOrder,
  writeBanks,
  writeCylinders,
} from '../../../../shared/design/edit';
import { CYLINDERS } from '../../../../shared/design/ranges';
import { formFields } from '../../../../shared/engine/formFields';
import { useDocument } from '../../document';
import { applyEdit } from '../../inspect/applyEdit';
import { NumberField } from '../../inspect/NumberField';
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
          label="Cylinders"
          quantity="count"
          range={CYLINDERS}
          meaning="a firing order of another number is taken away with it"
          value={engine.cylinders ?? null}
          fallback={fallback('engine/cylinders')}
          onCommit={(value) => applyEdit((design) => setCylinders(design, value), 'Set cylinders', 'engine/cylinders')}
        />
        {taken('engine/cylinders', engine.cylinders !== undefined)}
      </div>
      <div data-path="engine/banks">
        <TextField
          label="Banks"
          meaning="cylinders of each bank: 1-2-3-4 | 5-6-7-8"
          value={engine.banks ? writeBanks(engine.banks) : null}
          fallback={fallback('engine/banks') === 'not given' ? 'one' : fallback('engine/banks')}
          onCommit={(text) => {
            const banks = readBanks(text);
            if (!banks) return 'Cylinder numbers are wanted, with a bar between banks: 1-2-3-4 | 5-6-7-8.';
            return setAt('engine/banks', banks, 'Set banks');
          }}
          onClear={() => setAt('engine/banks', undefined, 'Take banks away')}
        />
      </div>
      <div data-path="engine/firingOrder">
        <TextField
          label="Firing order"
          meaning="a full order of another number sets the cylinders too"
          value={engine.firingOrder ? writeCylinders(engine.firingOrder) : null}
          fallback={fallback('engine/firingOrder')}
          onCommit={(text) => {
            const order = readCylinders(text);
            if (!order) return 'Cylinder numbers are wanted, such as 1-3-4-2.';
            return applyEdit((design) => setFiringOrder(design, order), 'Set firing order', 'engine/firingOrder');
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
