/** Live balance: eight runners of four bends, every bend point 20 mm off in a random direction, without restarts. */
import { balancePoints, check } from '../../geometry';
import type { Design } from '../../shared/design/types';
import { disturb } from '../geometry/layout/disturb';
import { inWords, spread } from './statistics';

const WARM_UP = 60;
const RUNS = 400;
const LIVE = new Map<string, never>();

export function benchBalance(design: Design, unit: number): string[] {
  const times: number[] = [];
  const steps: number[] = [];
  let held = 0;
  let widest = 0;
  for (let seed = 1; seed <= WARM_UP + RUNS; seed++) {
    const drawn = disturb(design, 20, seed);
    const start = performance.now();
    const found = balancePoints(drawn, LIVE, { restarts: 0 });
    const time = performance.now() - start;
    if (seed <= WARM_UP) continue;
    times.push(time);
    steps.push(found.iterations);
    const report = check(found.design);
    if (report.ok) held++;
    widest = Math.max(widest, ...report.groups.map((g) => g.spread));
  }
  const bends = design.runners.reduce((sum, r) => sum + r.points!.length - 2, 0);
  const iterations = spread(steps);
  return [
    `balance    ${design.runners.length} runners, ${bends} bends, ${RUNS} seeded disturbances of 20 mm`,
    `           ${inWords(spread(times), unit)}`,
    `           steps: median ${iterations.median}, greatest ${iterations.greatest}`,
    `           every rule held in ${held} of ${RUNS}; widest spread of lengths ${widest.toExponential(1)} mm`,
  ];
}
