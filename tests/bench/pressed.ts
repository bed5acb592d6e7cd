/**
 * A collector dragged into a scan of two million triangles: what one answer costs, in processor time, and what it is worth.
 * Each collector goes down, along its axis and seeded ways, free at first and then pressed into walls and floor. An answer
 * is held against a check from nothing; once the hand rests, what more comes is what the answers on the way lacked.
 */
import { check, follower, soupBox, unit } from '../../geometry';
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { random } from '../random';
import { scannedBay } from './bay';
import { inWords, spread } from './statistics';

const TRIANGLES = 2_000_000;
const STEPS = 14;
/** Of the hand between two asks, mm: a brisk pointer's. */
const STEP = 8;
/** Seeded ways of each collector, beside down and its axis. */
const WAYS = 1;
/** Short of what was asked by so much, mm: something is in the way, or the way is longer than one answer goes. */
const SHORT = 0.3;
const FILE = 'scan.stl';

export function benchPressed(design: Design, unit: number): string[] {
  const soup = scannedBay(design, TRIANGLES, 1);
  const meshes = new Map([[FILE, soup]]);
  const beside: Design = { ...design, surroundings: [{ id: 'scan', shape: 'mesh', file: FILE, clearance: 5 }] };
  const next = random(1);
  const met: number[] = [];
  const short: number[] = [];
  const rests: number[] = [];
  const gained: number[] = [];
  const shorts: number[] = [];
  let broken = 0;
  for (const merge of design.merges)
    for (const way of waysOf(merge.axis, next)) {
      const hand = follower(beside, meshes, { kind: 'merge', id: merge.id });
      let answer = hand.start;
      for (let step = 1; step <= STEPS; step++) {
        const asked = structuredClone(moved(beside, merge.id, way, step * STEP));
        const before = process.cpuUsage();
        answer = hand.ask(asked);
        (answer.short > SHORT ? short : met).push(since(before));
        if (!check(structuredClone(answer.design), meshes).ok) broken++;
      }
      const before = answer.short;
      for (let more = 0; more < 40 && answer.more; more++) {
        const start = process.cpuUsage();
        answer = hand.further();
        rests.push(since(start));
      }
      gained.push(before - answer.short);
      shorts.push(answer.short);
    }
  const box = soupBox(soup);
  return [
    `pressed    ${soup.length / 9} triangles over ${[0, 1, 2].map((k) => (box[k + 3]! - box[k]!).toFixed(0)).join(' × ')} mm, ${shorts.length} drags of a collector, processor time of an answer`,
    `           met     ${met.length}: ${told(met, unit)}`,
    `           short   ${short.length}: ${told(short, unit)}`,
    `           resting ${rests.length}: ${told(rests, unit)}`,
    `           ${broken} with a broken rule; by resting nearer: median ${spread(gained).median.toFixed(3)}, greatest ${spread(gained).greatest.toFixed(2)} mm; left ${shorts.map((s) => s.toFixed(2)).join(', ')} mm`,
  ];
}

const told = (times: readonly number[], unit: number): string => (times.length ? inWords(spread(times), unit) : 'none');

function since(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const waysOf = (axis: Vec3, next: ReturnType<typeof random>): Vec3[] => [
  [0, 0, -1],
  unit(axis),
  ...Array.from({ length: WAYS }, () => unit([next.between(-1, 1), next.between(-1, 1), next.between(-1, 1)])),
];

const moved = (design: Design, id: string, [x, y, z]: Vec3, by: number): Design => ({
  ...design,
  merges: design.merges.map((m) =>
    m.id === id
      ? { ...m, position: [m.position[0] + by * x, m.position[1] + by * y, m.position[2] + by * z] as Vec3 }
      : m,
  ),
});
