/** What tones a recorded pressure holds. s, Hz. */

/** Strength of one frequency in evenly spaced samples. With `window` they are faded in and out, so that other tones do not leak in. */
export function strengthAt(samples: ArrayLike<number>, step: number, frequency: number, window = true): number {
  const n = samples.length;
  let mean = 0;
  if (window) for (let i = 0; i < n; i++) mean += samples[i]! / n;
  let [re, im] = [0, 0];
  for (let i = 0; i < n; i++) {
    const weight = window ? 0.5 * (1 - Math.cos((2 * Math.PI * (i + 0.5)) / n)) : 1;
    const angle = 2 * Math.PI * frequency * i * step;
    re += weight * (samples[i]! - mean) * Math.cos(angle);
    im -= weight * (samples[i]! - mean) * Math.sin(angle);
  }
  return Math.hypot(re, im) * step;
}

/** The strongest frequency between two, by golden section: there must be one peak between them. */
export function toneBetween(samples: ArrayLike<number>, step: number, low: number, high: number): number {
  const golden = 0.5 * (Math.sqrt(5) - 1);
  let [a, b] = [low, high];
  let c = b - golden * (b - a);
  let d = a + golden * (b - a);
  let [atC, atD] = [strengthAt(samples, step, c), strengthAt(samples, step, d)];
  while (b - a > 1e-3) {
    if (atC > atD) {
      [b, d, atD] = [d, c, atC];
      c = b - golden * (b - a);
      atC = strengthAt(samples, step, c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + golden * (b - a);
      atD = strengthAt(samples, step, d);
    }
  }
  return 0.5 * (a + b);
}

/** Where samples pass their mean upward. */
export function risingCrossings(samples: ArrayLike<number>, step: number, level: number): number[] {
  const found: number[] = [];
  for (let i = 1; i < samples.length; i++) {
    const [a, b] = [samples[i - 1]! - level, samples[i]! - level];
    if (a < 0 && b >= 0) found.push((i - 1 + a / (a - b)) * step);
  }
  return found;
}
