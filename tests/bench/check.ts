/** A full check of the same header: what a user waits for after an edit. */
import { check } from '../../geometry';
import type { Design } from '../../shared/design/types';
import { inWords, spread } from './statistics';

const RUNS = 60;

export function benchCheck(design: Design, unit: number): string[] {
  const times: number[] = [];
  let checksum = 0;
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now();
    const report = check(design);
    times.push(performance.now() - start);
    checksum += report.clearance.tubeToTube?.gap ?? 0;
  }
  return [
    `check      ${inWords(spread(times.slice(10)), unit)}`,
    `           least gap between tubes ${(checksum / RUNS).toFixed(4)} mm`,
  ];
}
