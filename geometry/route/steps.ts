/**
 * Long work in steps: whoever asks for the next one may look after other things in between. What it comes to is told at the
 * end and does not depend on how it was asked for.
 */
export type Steps<T> = Generator<undefined, T, undefined>;

/** All steps, one after the other. */
export function allOf<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
