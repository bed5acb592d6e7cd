/**
 * A hand that drags bends about: what one answer costs, and how near to the asked place the header is by it. Bends and ways
 * are seeded and taken as they come: free, pressed against neighbours, or stopped by a rule. After each drag the hand
 * rests until nothing more comes, which is what the answers on the way are held against.
 */
import { type Answer, check, follower } from '../../geometry';
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { random } from '../random';
import { inWords, spread } from './statistics';

const DRAGS = 40;
const STEPS = 10;
/** Of the hand between two asks, mm: a calm pointer's. */
const STEP = 4;
const WARM_UP = 4;

export function benchFollow(design: Design, unit: number): string[] {
  const next = random(1);
  const times: number[] = [];
  const rests: number[] = [];
  const gained: number[] = [];
  const shorts: number[] = [];
  let stopped = 0;
  let broken = 0;
  for (let drag = 0; drag < WARM_UP + DRAGS; drag++) {
    const runner = design.runners[next.whole(0, design.runners.length - 1)]!;
    const point = next.whole(1, runner.points!.length - 2);
    const hand = follower(design, new Map(), { kind: 'points', runner: runner.id, points: [point] });
    const way = direction(next);
    const timed = (work: () => Answer, into: number[]): Answer => {
      const start = performance.now();
      const answer = work();
      if (drag >= WARM_UP) into.push(performance.now() - start);
      return answer;
    };
    let answer = hand.start;
    for (let step = 1; step <= STEPS; step++) {
      // As a worker hears it: a copy that shares nothing with what it knows.
      const asked = structuredClone(moved(design, runner.id, point, way, step * STEP));
      answer = timed(() => hand.ask(asked), times);
      if (answer.short > 0.3) stopped++;
      if (!check(structuredClone(answer.design)).ok) broken++;
    }
    const before = answer.short;
    for (let more = 0; more < 40 && answer.more; more++) answer = timed(() => hand.further(), rests);
    gained.push(before - answer.short);
    shorts.push(answer.short);
  }
  return [
    `follow     ${inWords(spread(times), unit)}`,
    `           resting ${rests.length} answers, ${rests.length ? inWords(spread(rests), unit) : ''}`,
    `           ${times.length} asks, ${stopped} short, ${broken} with a broken rule; by resting nearer: median ${spread(gained).median.toFixed(3)}, 95th percentile ${spread(gained).high.toFixed(2)}, greatest ${spread(gained).greatest.toFixed(2)} mm; mean left ${(shorts.reduce((a, b) => a + b) / shorts.length).toFixed(3)} mm`,
  ];
}

function direction(next: ReturnType<typeof random>): Vec3 {
  const v: Vec3 = [next.between(-1, 1), next.between(-1, 1), next.between(-1, 1)];
  const size = Math.hypot(...v);
  return [v[0] / size, v[1] / size, v[2] / size];
}

const moved = (design: Design, id: string, index: number, [x, y, z]: Vec3, by: number): Design => ({
  ...design,
  runners: design.runners.map((r) =>
    r.id === id
      ? {
          ...r,
          points: r.points!.map((p, i): Vec3 => (i === index ? [p[0] + by * x, p[1] + by * y, p[2] + by * z] : p)),
        }
      : r,
  ),
});
