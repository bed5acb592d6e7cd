/** Repeatable random numbers for tests (mulberry32, public domain): the seed stands in the test's name. */
export type Random = {
  (): number;
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
};

export function random(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  return Object.assign(next, { between, whole });
}
