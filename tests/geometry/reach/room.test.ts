/**
 * Room kept for tools: two ports, and under each a bolt that only a socket on a long bar can turn. As drawn both are reached
 * before wrapping only; laid anew without a word about it they are barred outright. mm.
 */
import { describe, expect, it } from 'vitest';
import { balance, check, checkHeader, keepOuts, limitWords, resolveHeader, router } from '../../../geometry';
import { accessReport } from '../../../geometry/reach/accessReport';
import type { Design } from '../../../shared/design/types';
import { header } from '../check/header';
import { bench } from './bench';

const bolt = (x: number, z: number) => ({
  position: [x, 0, z] as const,
  kind: 'bolt',
  thread: 'M8',
  length: 25,
  hole: 9,
});
const base: Design = {
  ...header(),
  flanges: [{ id: 'f1', ports: ['p1', 'p2'], thickness: 10, fasteners: [bolt(50, -30), bolt(0, -38), bolt(100, -38)] }],
  wrap: { thickness: 1.5, layers: 2, roll: 15 },
  access: { tools: ['socket'], extensions: [150, 250] },
};
const wanted: Design = { ...base, access: { ...base.access, required: true } };
const reachIn = (design: Design) => accessReport(resolveHeader(design)).entries.map((e) => e.reach);

describe('the rule', () => {
  it('is only held where the design asks for it, and not in the hand’s own loop', () => {
    expect(reachIn(base)).toEqual(['reachable', 'before-wrapping', 'before-wrapping']);
    expect(check(base).ok).toBe(true);
    const { ok, problems } = check(wanted);
    expect(ok).toBe(false);
    expect(problems.map((p) => [p.rule, p.where, p.found])).toEqual([
      ['reach', 'flanges/f1/fasteners/1', 'before-wrapping'],
      ['reach', 'flanges/f1/fasteners/2', 'before-wrapping'],
    ]);
    expect(checkHeader(resolveHeader(wanted)).ok).toBe(true);
  });

  it('holds with one tool that works', () => {
    const wall = { id: 'wall', shape: 'box', min: [-400, 24, -400], max: [400, 30, 400] } as const;
    const design = bench({ surroundings: [wall], access: { required: true } });
    expect(reachIn(design)).toEqual(['one-tool']);
    expect(check(design).problems.filter((p) => p.rule === 'reach')).toEqual([]);
  });
});

it('is laid so that all are reached wrapped, seed 1', () => {
  const plain = router(base, new Map(), { seed: 1 }).round(0).layouts[0]!;
  expect(reachIn(plain.design)).toContain('blocked');
  const search = router(wanted, new Map(), { seed: 1 });
  const laid = [0, 1, 2, 3].map((n) => search.round(n)).find((round) => round.layouts.length > 0)!.layouts[0]!;
  expect(check(laid.design).problems).toEqual([]);
  expect(reachIn(laid.design).filter((r) => r !== 'reachable' && r !== 'one-tool')).toEqual([]);
});

it('balance moves tubes out of it', () => {
  const { report, design } = balance(wanted);
  expect(report.problems).toEqual([]);
  expect(check(design).ok).toBe(true);
});

describe('the room itself', () => {
  const rooms = keepOuts(resolveHeader(base));

  it('is there for every fastener, named by it, with the wrap and 1 mm to spare', () => {
    for (const n of [1, 2, 3]) {
      const own = rooms.filter((r) => r.id.startsWith(`room for f1 bolt ${n}`));
      expect(own.length).toBeGreaterThan(1);
      expect(Math.max(...own.map((r) => r.clearance!))).toBeGreaterThanOrEqual(4);
      for (const { clearance } of own) expect(clearance).toBeGreaterThanOrEqual(0);
    }
  });

  it('is the same whenever it is asked for', () => {
    expect(keepOuts(resolveHeader(structuredClone(base)))).toEqual(rooms);
  });

  it('keeps out of what stands around', () => {
    const design = { ...base, surroundings: [{ id: 'wall', shape: 'box', min: [-400, 100, -400], max: [400, 120, 400] }] as const }; // biome-ignore format: one line
    for (const { a, b, radius } of keepOuts(resolveHeader(design)))
      expect(Math.max(a[1], b[1])).toBeLessThan(100 + radius);
  });

  it('is told as one thing where it stops something', () => {
    const limit = {
      rule: 'surroundings',
      where: 'runners/r1',
      other: 'surroundings/room for f1 bolt 2 part 3',
    } as const;
    expect(limitWords([limit, { ...limit, other: 'surroundings/room for f1 bolt 2' }])).toEqual([
      'the gap between runner r1 and the room for f1 bolt 2',
    ]);
  });
});
