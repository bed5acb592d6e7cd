/** Order statistics of timings: the minimum says what the code can do, the 95th percentile what a user feels. */
export type Spread = {
  readonly least: number;
  readonly median: number;
  readonly high: number;
  readonly greatest: number;
};

export function spread(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return { least: sorted[0]!, median: at(0.5), high: at(0.95), greatest: sorted.at(-1)! };
}

export const inWords = ({ least, median, high, greatest }: Spread, unit: number): string =>
  `least ${least.toFixed(2)}  median ${median.toFixed(2)}  95th percentile ${high.toFixed(2)}  greatest ${greatest.toFixed(2)} ms` +
  `  = ${(median / unit).toFixed(3)} and ${(high / unit).toFixed(3)} yardsticks`;
