/** A header that follows a hand: whatever is asked, the answer holds every rule and moves no more than it must. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Answer, check, follower, type Held, limitWords } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';

const example = (name: string): Design => parseDesign(readFileSync(`public/examples/${name}.evenrun.json`, 'utf8'));
const NO_MESHES = new Map();

const movedBy = (p: Vec3, by: Vec3): Vec3 => [p[0] + by[0], p[1] + by[1], p[2] + by[2]];

function withPoint(design: Design, runner: string, index: number, by: Vec3): Design {
  return {
    ...design,
    runners: design.runners.map((r) =>
      r.id === runner ? { ...r, points: r.points!.map((p, i) => (i === index ? movedBy(p, by) : p)) } : r,
    ),
  };
}

const withMerge = (design: Design, id: string, by: Vec3): Design => ({
  ...design,
  merges: design.merges.map((m) => (m.id === id ? { ...m, position: movedBy(m.position, by) } : m)),
});

const direction = (next: ReturnType<typeof random>): Vec3 => {
  const v: Vec3 = [next.between(-1, 1), next.between(-1, 1), next.between(-1, 1)];
  const size = Math.hypot(...v);
  return [v[0] / size, v[1] / size, v[2] / size];
};

const times = (v: Vec3, k: number): Vec3 => [v[0] * k, v[1] * k, v[2] * k];

/** Every rule, measured afresh and not from what the follower remembers. */
function expectHeld({ design }: Answer): void {
  const report = check(structuredClone(design));
  expect(report.problems).toEqual([]);
  for (const g of report.groups) expect(g.spread).toBeLessThan(0.001);
}

describe.each(['v8-both-banks', 'four-4-1'])('%s', (name) => {
  const design = example(name);

  it.each([1, 2, 3, 4, 5, 6])('holds every rule along a drag of a bend, seed %i', (seed) => {
    const next = random(seed);
    const long = design.runners.filter((r) => r.points!.length > 4);
    const runner = long[Math.floor(next.between(0, long.length))]!;
    const index = 2 + Math.floor(next.between(0, runner.points!.length - 4));
    const hand = follower(design, NO_MESHES, { kind: 'points', runner: runner.id, points: [index] });
    const way = direction(next);
    for (let step = 4; step <= 48; step += 4) {
      const answer = hand.ask(withPoint(hand.start.design, runner.id, index, times(way, step)));
      expect(answer.follows).toBe(true);
      expectHeld(answer);
      if (answer.short > 0.3) expect(limitWords(answer.limits).length).toBeGreaterThan(0);
    }
    const home = hand.ask(hand.start.design);
    for (const [i, r] of home.design.runners.entries())
      for (const [k, p] of r.points!.entries())
        for (const axis of [0, 1, 2]) expect(p[axis]).toBeCloseTo(hand.start.design.runners[i]!.points![k]![axis]!, 1);
  });
});

describe.each(['v8-both-banks', 'four-4-1', 'four-4-2-1'])('%s', (name) => {
  const design = example(name);

  it.each([11, 12, 13])('holds every rule along a drag of a collector, seed %i', (seed) => {
    const next = random(seed);
    const merge = design.merges[Math.floor(next.between(0, design.merges.length))]!;
    const hand = follower(design, NO_MESHES, { kind: 'merge', id: merge.id });
    const way = direction(next);
    for (let step = 5; step <= 40; step += 5) {
      const answer = hand.ask(withMerge(hand.start.design, merge.id, times(way, step)));
      expectHeld(answer);
      if (answer.short > 0.3) expect(limitWords(answer.limits).length).toBeGreaterThan(0);
    }
  });
});

describe('a small pull', () => {
  it('moves no other runner where nothing needs it', () => {
    const design = example('v8-both-banks');
    const hand = follower(design, NO_MESHES, { kind: 'points', runner: 'r2', points: [3] });
    const answer = hand.ask(withPoint(design, 'r2', 3, [0, 0, -6]));
    expect(answer.short).toBeLessThan(0.1);
    expectHeld(answer);
    for (const [i, r] of answer.design.runners.entries())
      if (r.id !== 'r2') expect(r).toBe(hand.start.design.runners[i]);
  });
});

describe('a collector pushed into the head', () => {
  it('stops before it and says what stops it', () => {
    const design = example('four-4-1');
    const merge = design.merges[0]!;
    const hand = follower(design, NO_MESHES, { kind: 'merge', id: merge.id });
    let answer = hand.start;
    // Toward the ports' middle, in steps as a pointer makes them.
    const ports = design.ports.map((p) => p.position);
    const middle = times(
      ports.reduce((sum, p) => movedBy(sum, p), [0, 0, 0]),
      1 / ports.length,
    );
    const way: Vec3 = movedBy(middle, times(merge.position, -1));
    for (let part = 0.05; part <= 1; part += 0.05) {
      answer = hand.ask(withMerge(design, merge.id, times(way, part)));
      expectHeld(answer);
    }
    expect(answer.short).toBeGreaterThan(20);
    expect(limitWords(answer.limits).length).toBeGreaterThan(0);
  });
});

describe('a surrounding pushed into the runners', () => {
  it.each([
    ['four-4-1', 1],
    ['v8-both-banks', 2],
  ])('%s: runners give way, and where they cannot it stops', (name) => {
    const design = example(name);
    const shaft = design.surroundings!.find((s) => s.shape === 'capsule')!;
    const held: Held = { kind: 'surrounding', id: shaft.id };
    const hand = follower(design, NO_MESHES, held);
    const target = design.runners[0]!.points![2]!;
    const shape = shaft as Extract<typeof shaft, { shape: 'capsule' }>;
    const way = movedBy(target, times(movedBy(shape.a, shape.b), -0.5));
    let moved = 0;
    for (let part = 0.1; part <= 1; part += 0.1) {
      const by = times(way, part);
      const asked: Design = {
        ...design,
        surroundings: design.surroundings!.map((s) =>
          s === shaft ? { ...shape, a: movedBy(shape.a, by), b: movedBy(shape.b, by) } : s,
        ),
      };
      const answer = hand.ask(asked);
      expectHeld(answer);
      if (answer.design.runners.some((r, i) => r !== design.runners[i])) moved++;
    }
    expect(moved).toBeGreaterThan(0);
  });
});

describe('a surrounding pushed upon runners that are locked', () => {
  it('stays, and every rule that keeps it is said with what is known', () => {
    const given = example('four-4-1');
    const design = { ...given, runners: given.runners.map((r) => ({ ...r, locked: true })) };
    const shaft = design.surroundings!.find((s) => s.shape === 'capsule')!;
    const shape = shaft as Extract<typeof shaft, { shape: 'capsule' }>;
    const hand = follower(design, NO_MESHES, { kind: 'surrounding', id: shaft.id });
    const moved = (by: Vec3): Design => ({
      ...design,
      surroundings: design.surroundings!.map((s) =>
        s === shaft ? { ...shape, a: movedBy(shape.a, by), b: movedBy(shape.b, by) } : s,
      ),
    });
    const near = hand.ask(moved([60, 0, 0]));
    expect(near.short).toBeGreaterThan(1);
    expect(limitWords(near.limits)).toEqual(['the gap between runner r2 and the steering shaft']);
    const words = limitWords(hand.ask(moved([120, 0, 0])).limits);
    expect(words).toHaveLength(3);
    for (const word of words)
      expect(word).toMatch(/^the (gap between runner r\d and the steering shaft|room around runner r\d)$/);
  });
});

describe('a port that is moved', () => {
  it('takes its runner along', () => {
    const design = example('four-4-1');
    const port = design.ports[0]!;
    const hand = follower(design, NO_MESHES, { kind: 'port', id: port.id });
    const asked = {
      ...design,
      ports: design.ports.map((p) => (p === port ? { ...p, position: movedBy(p.position, [3, 0, 2]) } : p)),
    };
    const answer = hand.ask(asked);
    expectHeld(answer);
    expect(answer.short).toBe(0);
    expect(answer.design.ports[0]!.position).toEqual(movedBy(port.position, [3, 0, 2]));
  });
});

describe('what is locked', () => {
  it('stays, and says so', () => {
    const given = example('four-4-1');
    const design = { ...given, runners: given.runners.map((r, i) => (i === 1 ? { ...r, locked: true } : r)) };
    const merge = follower(design, NO_MESHES, { kind: 'merge', id: design.merges[0]!.id });
    const answer = merge.ask(withMerge(design, design.merges[0]!.id, [0, 0, -20]));
    expect(answer.design).toBe(design);
    expect(answer.short).toBeCloseTo(20, 6);
    expect(limitWords(answer.limits).join()).toContain(design.runners[1]!.id);

    const neighbour = follower(design, NO_MESHES, { kind: 'points', runner: 'r1', points: [2] });
    for (const dx of [10, 20, 40, 80])
      for (const sign of [-1, 1]) {
        const found = neighbour.ask(withPoint(design, 'r1', 2, [sign * dx, 0, 0]));
        expectHeld(found);
        expect(found.design.runners[1]).toBe(design.runners[1]);
      }
  });
});

describe('a header that broke rules before', () => {
  it('is balanced first where that can be', () => {
    const design = example('four-4-1-as-tacked');
    expect(check(design).ok).toBe(false);
    const hand = follower(design, NO_MESHES, { kind: 'points', runner: 'r1', points: [2] });
    expect(hand.start.follows).toBe(true);
    const answer = hand.ask(withPoint(design, 'r1', 2, [0, 5, 0]));
    expectHeld(answer);
  });

  it('is drawn as asked where it cannot', () => {
    const given = example('four-4-1');
    const design = { ...given, groups: { primaries: { length: 300, tolerance: 1 } } };
    const hand = follower(design, NO_MESHES, { kind: 'points', runner: 'r1', points: [2] });
    const asked = withPoint(design, 'r1', 2, [0, 5, 0]);
    const answer = hand.ask(asked);
    expect(answer.follows).toBe(false);
    expect(answer.design).toEqual(asked);
    expect(answer.report.ok).toBe(false);
  });
});

describe('a hand that rests after a jump', () => {
  const design = example('v8-both-banks');

  it.each([31, 32, 33, 34])('is come nearer to, answer by answer, until no more can be had, seed %i', (seed) => {
    const next = random(seed);
    const runner = design.runners[next.whole(0, 7)]!;
    const hand = follower(design, NO_MESHES, { kind: 'points', runner: runner.id, points: [2] });
    let answer = hand.ask(withPoint(design, runner.id, 2, times(direction(next), 40)));
    let { short } = answer;
    let answers = 1;
    for (; answer.more && answers < 40; answers++) {
      answer = hand.further();
      expectHeld(answer);
      expect(answer.short).toBeLessThanOrEqual(short);
      short = answer.short;
    }
    expect(answer.more).toBe(false);
    expect(hand.further()).toBe(answer);
  });

  it('takes several answers to come all the way', () => {
    const hand = follower(design, NO_MESHES, { kind: 'points', runner: 'r1', points: [2] });
    const asked = withPoint(design, 'r1', 2, [0, 0, -30]);
    const first = hand.ask(asked);
    expect(first.more).toBe(true);
    let last = first;
    while (last.more) last = hand.further();
    expect(last.short).toBeLessThan(first.short - 0.1);
  });
});

describe('what the follower remembers', () => {
  it.each([21, 22])('measures as a fresh check does, seed %i', (seed) => {
    const next = random(seed);
    const design = example('v8-both-banks');
    const hand = follower(design, NO_MESHES, { kind: 'points', runner: 'r6', points: [2] });
    const way = direction(next);
    for (let step = 2; step <= 30; step += 2) {
      const answer = hand.ask(withPoint(design, 'r6', 2, times(way, step)));
      const fresh = check(structuredClone(answer.design));
      for (const kind of ['tubeToTube', 'surroundings', 'mergeBodies'] as const)
        expect(answer.report.clearance[kind]!.margin).toBeCloseTo(fresh.clearance[kind]!.margin, 2);
      expect(answer.report.runners).toEqual(fresh.runners);
      expect(answer.report.groups).toEqual(fresh.groups);
    }
  });
});
