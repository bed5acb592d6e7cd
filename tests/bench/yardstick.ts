/** What the machine can do just now: a fixed piece of the kernel's own arithmetic, timed in the same run. */
import { type Closest, closestOnSegments } from '../../geometry/clearance/segments';
import { random } from '../random';

const ROUNDS = 9;
const PAIRS = 1000;

/** Milliseconds for a million pairs, the best of nine rounds. */
export function yardstick(): number {
  const next = random(1);
  const P = Float64Array.from({ length: 6 * PAIRS }, () => next.between(-300, 300));
  const slot: Closest = { squared: 0, s: 0, t: 0 };
  let best = Number.POSITIVE_INFINITY;
  let checksum = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    for (let i = 0; i < PAIRS; i++)
      for (let k = 0; k < PAIRS; k++) {
        closestOnSegments(P, 2 * i, 2 * i + 1, P, 2 * k, 2 * k + 1, slot);
        checksum += slot.squared;
      }
    best = Math.min(best, performance.now() - start);
  }
  if (!(checksum > 0)) throw new Error('The yardstick measured nothing.');
  return best;
}
