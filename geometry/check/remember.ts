/**
 * Measurements remembered by what they are of: everything measured is immutable, so that an answer once found stays true,
 * and when one runner of eight moves, only what concerns that one is measured anew.
 */

export { remembered } from '../../shared/remember';

/** @param work a pure function of its two arguments */
export function rememberedOfTwo<A extends object, B extends object, C>(work: (a: A, b: B) => C): (a: A, b: B) => C {
  const own = remembered((a: A) => remembered((b: B) => work(a, b)));
  return (a, b) => own(a)(b);
}

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
