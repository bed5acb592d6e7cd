/** Things on the graphics card belong to the component that made them and are freed with it. */
import { type DependencyList, useEffect, useMemo } from 'react';

/** Like useMemo, for something that must be disposed of when it is replaced or its component goes. */
export function useOwned<T extends { dispose(): void }>(make: () => T, deps: DependencyList): T {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller lists them
  const thing = useMemo(make, deps);
  useEffect(() => () => thing.dispose(), [thing]);
  return thing;
}
