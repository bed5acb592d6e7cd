/**
 * Length windows: four runners as they are, eight among thirty surroundings put there by chance; and on crowded layouts how
 * many of the lengths known to be buildable lie inside what was found from nothing.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { check, lengthWindows } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import type { Design, Surrounding } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { random } from '../random';
import { inWords, spread } from './statistics';

const KNOWN = 'tests/layouts/known';
const SURROUNDINGS = 30;
const SEEDS = [1, 2, 3, 4, 5];
/** Ports keep this much room, or nobody gets out, mm. */
const ROOM = 130;

export function benchWindows(four: Design, eight: Design, unit: number): string[] {
  const timed = (design: Design): number => {
    const before = process.cpuUsage();
    lengthWindows(design);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  };
  const alone = Array.from({ length: 9 }, () => timed(unrouted(four)));
  const crowded = SEEDS.map((seed) => timed(crowd(unrouted(eight), seed)));
  let inside = 0;
  let all = 0;
  for (const file of readdirSync(KNOWN).filter((name) => name.includes('-hard.'))) {
    const design = parseDesign(readFileSync(`${KNOWN}/${file}`, 'utf8'));
    const lengths = new Map(check(design).runners.map((r) => [r.id, r.length]));
    for (const r of lengthWindows(unrouted(design)).runners) {
      const length = lengths.get(r.id)!;
      all++;
      if (r.shortest !== null && r.shortest < length + 0.05 && (r.longest ?? length) > length - 0.05) inside++;
    }
  }
  return [
    `windows    ${four.runners.length} runners, ${four.surroundings?.length ?? 0} surroundings, processor time`,
    `           ${inWords(spread(alone), unit)}`,
    `           ${eight.runners.length} runners, ${SURROUNDINGS} surroundings, ${SEEDS.length} seeds, processor time`,
    `           ${inWords(spread(crowded), unit)}`,
    `           ${inside} of ${all} known lengths in crowded layouts lie inside`,
  ];
}

const unrouted = (design: Design): Design => ({
  ...design,
  runners: design.runners.map(({ points: _points, radii: _radii, ...r }) => r),
});

function crowd(design: Design, seed: number): Design {
  const draw = random(seed);
  const places = [...design.ports, ...design.merges].map((p) => p.position);
  const bound = (pick: (...xs: number[]) => number, by: number): Vec3 => [
    pick(...places.map((p) => p[0])) + by,
    pick(...places.map((p) => p[1])) + by,
    pick(...places.map((p) => p[2])) + by,
  ];
  const [low, high] = [bound(Math.min, -60), bound(Math.max, 60)];
  const surroundings: Surrounding[] = [...(design.surroundings ?? [])];
  while (surroundings.length < SURROUNDINGS) {
    const at = (k: 0 | 1 | 2): number => draw.between(low[k], high[k]);
    const a: Vec3 = [at(0), at(1), at(2)];
    const b: Vec3 = [a[0] + draw.between(-80, 80), a[1] + draw.between(-80, 80), a[2] + draw.between(-80, 80)];
    if (places.some((p) => Math.hypot(p[0] - a[0], p[1] - a[1], p[2] - a[2]) < ROOM)) continue;
    const id = `bar ${surroundings.length}`;
    surroundings.push({ id, shape: 'capsule', a, b, radius: draw.between(8, 25), clearance: 8 });
  }
  return { ...design, surroundings };
}
