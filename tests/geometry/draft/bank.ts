import { draftHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { newForm } from '../../../shared/engine/formDefaults';

/** Bank 1 of an engine of two drawn alone, with its engine: four cylinders of an eight where nothing else is said. */
export function oneBank(arrangement: 'all-into-one' | 'pairs-then-one' = 'all-into-one', inlets = 4): Design {
  const { design } = draftHeader(newForm({ cylinders: inlets, arrangement }));
  const cylinders = Array.from({ length: inlets }, (_, i) => i + 1);
  const banks = [cylinders, cylinders.map((c) => c + inlets)];
  const { firingOrder: _, ...engine } = design.engine!;
  return { ...design, engine: { ...engine, cylinders: 2 * inlets, banks } };
}
