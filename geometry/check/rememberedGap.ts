/** Least gaps remembered by the two things between which they are: immutable, so that an answer once found stays true. */

/**
 * For least gaps, which are sought only below a limit: "none below 5" answers "none below 3", and a gap found answers all.
 *
 * @param work the least gap of two things where it is below the limit, else null
 * @param gapOf its size, mm
 */
export function rememberedGap<A extends object, B extends object, G>(
  work: (a: A, b: B, below: number) => G | null,
  gapOf: (found: G) => number,
): (a: A, b: B, below: number) => G | null {
  const known = new WeakMap<A, WeakMap<B, { readonly below: number; readonly found: G | null }>>();
  return (a, b, below) => {
    let own = known.get(a);
    if (!own) {
      own = new WeakMap();
      known.set(a, own);
    }
    const kept = own.get(b);
    if (kept?.found) return gapOf(kept.found) < below ? kept.found : null;
    if (kept && kept.below >= below) return null;
    const found = work(a, b, below);
    own.set(b, { below, found });
    return found;
  };
}
