/** What is taken where nobody gave a number: of the engine and of every way of its gas that is shown. */
import { useMemo } from 'react';
import type { Assumed } from '../../../pulse/engine/types';
import { useDocument } from '../../document';
import { assumedOf } from '../ground';

export function useAssumed(): readonly Assumed[] {
  const design = useDocument((s) => s.settled);
  return useMemo(() => (design ? assumedOf(design) : []), [design]);
}
