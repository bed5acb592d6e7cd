/** What is taken where nobody gave a number: of the engine and of every way of its gas that is shown. */
import { useMemo } from 'react';
import type { Design } from '../../../../shared/design/types';
import type { Assumed } from '../../../pulse/engine/types';
import { useDocument } from '../../document';
import { assumedOf, engineRefusals } from '../ground';

/** Of the design that was read last, by its id on the shelf. */
let known: { readonly id: string; readonly assumed: readonly Assumed[] } | null = null;

/** While one number is refused, what was taken for all the others stays in its fields: a form that empties itself hides where to mend. */
export function assumedNow(id: string, design: Design): readonly Assumed[] {
  if (engineRefusals(design).length > 0 && known?.id === id) return known.assumed;
  const assumed = assumedOf(design);
  if (engineRefusals(design).length === 0) known = { id, assumed };
  return assumed;
}

export function useAssumed(): readonly Assumed[] {
  const design = useDocument((s) => s.settled);
  const id = useDocument((s) => s.id);
  return useMemo(() => (design ? assumedNow(id, design) : []), [id, design]);
}
