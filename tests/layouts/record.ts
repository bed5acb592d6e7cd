/**
 * Writes `checker-results.json`: what an independent checker of the contract measures on every known layout and on seeded
 * changes that break them. The checker is a separate program (Python with numpy, kept outside this repository), taken as
 *   checker ROUTED ORIGINAL --json --slack 0
 * To record again: npx tsx tests/layouts/record.ts PYTHON CHECKER   (a change in the file is a change in the contract)
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addScaled, lerp, scale, sub, unit } from '../../geometry';
import type { Design, Surrounding } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { type Random, random } from '../random';
import { layoutNames, loadLayout } from './load';
import { type Change, mutate } from './mutate';
import type { CheckerProblem, Recorded } from './recorded';

const MUTATIONS = 91;
const [python, checker] = process.argv.slice(2);
if (!python || !checker) throw new Error('usage: record.ts PYTHON CHECKER');

const folder = mkdtempSync(join(tmpdir(), 'layouts-'));
copyFileSync(new URL('known/bay.stl', import.meta.url), join(folder, 'bay.stl'));

type Answer = {
  problems: CheckerProblem[];
  runners: { id: string; length: number; centerline: number; angles: number[]; straights: number[] }[];
  quality: { bends: number; angle: number; length: number };
  clearance: Recorded['known'][number]['clearance'];
};

function judge(design: Design): Answer {
  const file = join(folder, 'design.evenrun.json');
  writeFileSync(file, JSON.stringify(design));
  const { status, stdout, stderr } = spawnSync(python!, [checker!, file, file, '--json', '--slack', '0']);
  if (status !== 0 && status !== 1) throw new Error(stderr.toString());
  return JSON.parse(stdout.toString()) as Answer;
}

const rounded = (x: number): number => Math.round(x * 1e6) / 1e6;
const about = <T>(value: T): T =>
  JSON.parse(JSON.stringify(value, (_, x) => (typeof x === 'number' ? rounded(x) : x))) as T;

const pick = <T>(next: Random, list: readonly T[]): T => list[next.whole(0, list.length - 1)]!;
const step = (next: Random, size: number): Vec3 => {
  const by = () => rounded(next.between(-size, size));
  return [by(), by(), by()];
};

/** One change of each kind in turn, sized so that it breaks some rules and leaves others. */
function invent(next: Random, design: Design, n: number): Change {
  const runner = pick(next, design.runners);
  const inner = next.whole(1, runner.points!.length - 2);
  const merge = pick(next, design.merges);
  const surrounding = pick(next, design.surroundings ?? []);
  const tooling = design.tooling[runner.tube]!;
  const kinds: (() => Change | null)[] = [
    () => ({ kind: 'move point', runner: runner.id, point: inner, by: step(next, pick(next, [2, 10, 40])) }),
    () => ({ kind: 'move surrounding', surrounding: surrounding.id, by: step(next, 120) }),
    () => ({ kind: 'slide point', runner: runner.id, point: inner, by: rounded(next.between(5, 60)) }),
    () => ({ kind: 'move runner', runner: runner.id, by: step(next, 25) }),
    () => {
      const others = design.runners.filter((r) => r !== runner && r.to.merge === runner.to.merge);
      return others.length > 0 ? { kind: 'swap inlets', runners: [runner.id, pick(next, others).id] } : null;
    },
    () => ({ kind: 'move merge', merge: merge.id, by: step(next, 60) }),
    () => ({ kind: 'tilt merge', merge: merge.id, degrees: rounded(next.between(-20, 20)) }),
    () => ({ kind: 'set clearance', surrounding: surrounding.id, to: next.whole(10, 90) }),
    () => ({ kind: 'set tube to tube', to: next.whole(5, 40) }),
    (): Change => {
      const field = pick(next, [
        'maxBendAngle',
        'maxBends',
        'betweenStraight',
        'firstStraight',
        'lastStraight',
      ] as const);
      const to =
        field === 'maxBendAngle' ? next.whole(50, 110) : field === 'maxBends' ? next.whole(1, 3) : next.whole(25, 90);
      return { kind: 'set tooling', tube: runner.tube, field, to };
    },
    () => {
      const group = pick(next, Object.keys(design.groups));
      const length = next() < 0.3 ? null : rounded((design.groups[group]!.length ?? 800) + next.between(-6, 6));
      return { kind: 'set group', group, length, tolerance: pick(next, [0.0002, 0.5, 3]) };
    },
    () => {
      // Most of the way, or all of it, into a collector's body.
      const k = next.between(0.6, 1.1);
      const body = addScaled(merge.position, unit(merge.axis), merge.length / 2);
      const [x, y, z] = scale(sub(body, centreOf(surrounding)), k).map(rounded) as [number, number, number];
      return { kind: 'move surrounding', surrounding: surrounding.id, by: [x, y, z] };
    },
    () => ({ kind: 'set tooling', tube: runner.tube, field: 'centerlineRadius', to: tooling.centerlineRadius * 1.15 }),
  ];
  return kinds[n % kinds.length]!() ?? kinds[0]!()!;
}

function centreOf(s: Surrounding): Vec3 {
  if (s.shape === 'capsule') return lerp(s.a, s.b, 0.5);
  return s.shape === 'box' ? lerp(s.min, s.max, 0.5) : [0, 0, 0];
}

const names = layoutNames('known');
const known = names.map((name) => {
  const { problems, runners, quality, clearance } = judge(loadLayout('known', name).design);
  if (problems.length > 0) throw new Error(`${name} does not hold`);
  return { name, quality, runners, clearance };
});

const next = random(20);
const mutations = Array.from({ length: MUTATIONS }, (_, n) => {
  const name = pick(next, names);
  const { design } = loadLayout('known', name);
  const change = invent(next, design, n);
  const problems = judge(mutate(design, change)).problems.map(({ rule, where, found, allowed }) => ({
    rule,
    where,
    found,
    allowed,
  }));
  return { name, change, problems };
});

const recorded = about({ known, mutations });
const lines = (list: readonly unknown[]): string => `[\n${list.map((x) => JSON.stringify(x)).join(',\n')}\n]`;
writeFileSync(
  new URL('checker-results.json', import.meta.url),
  `{\n"known": ${lines(recorded.known)},\n"mutations": ${lines(recorded.mutations)}\n}\n`,
);
rmSync(folder, { recursive: true });
const rules = new Map<string, number>();
for (const { rule } of mutations.flatMap((m) => m.problems)) rules.set(rule, (rules.get(rule) ?? 0) + 1);
console.log(Object.fromEntries(rules), readFileSync(new URL('checker-results.json', import.meta.url)).length, 'bytes');
