/**
 * Answers remembered by what they are of. What is asked about is immutable, so an answer once found stays true; when one
 * runner of eight moves, only what follows from that one is worked out anew. Nothing is kept alive by being remembered.
 */

/** @param work a pure function of its argument */
export function remembered<A extends object, B>(work: (of: A) => B): (of: A) => B {
  const known = new WeakMap<A, { readonly answer: B }>();
  return (of) => {
    const kept = known.get(of);
    if (kept) return kept.answer;
    const answer = work(of);
    known.set(of, { answer });
    return answer;
  };
}

/** @param work a pure function of its two arguments */
export function rememberedOfTwo<A extends object, B extends object, C>(work: (a: A, b: B) => C): (a: A, b: B) => C {
  const own = remembered((a: A) => remembered((b: B) => work(a, b)));
  return (a, b) => own(a)(b);
}

/** How many answers `rememberedByParts` keeps: for the header, and for what is seen of it while some of it is hidden. */
const FEW = 2;

/**
 * For what follows from some parts of a thing that is itself made anew at each step. The last few answers are kept.
 *
 * @param partsOf all that the answer follows from, compared by identity
 */
export function rememberedByParts<A, B>(partsOf: (of: A) => readonly unknown[], work: (of: A) => B): (of: A) => B {
  const known: { readonly parts: readonly unknown[]; readonly answer: B }[] = [];
  return (of) => {
    const parts = partsOf(of);
    const kept = known.find((k) => k.parts.length === parts.length && k.parts.every((part, i) => part === parts[i]));
    if (kept) return kept.answer;
    const answer = work(of);
    known.unshift({ parts, answer });
    known.length = Math.min(known.length, FEW);
    return answer;
  };
}
