/** What an edit by number becomes: untouched where every rule holds, else balanced, else the nearest length, else as asked. */
import { expect, it } from 'vitest';
import { check, settleEdit } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { loadLayout } from '../../layouts/load';
import { disturb } from './disturb';

/** What balancing promises of a group's lengths, mm. */
const EQUAL = 0.001;

const four = loadLayout('known', 'c1-i4-4-1-rear-down').design;
const withLength = (length: number): Design => ({
  ...four,
  groups: { primaries: { ...four.groups.primaries!, length } },
});
const meanOf = (design: Design): number => check(design).groups[0]!.mean;

it('an edit that breaks no rule is left as it is, the very object', () => {
  const asked = { ...four, title: 'renamed' };
  const settled = settleEdit(asked);
  expect(settled.design).toBe(asked);
  expect(settled.report).toEqual(check(asked));
  expect(settled.limits).toEqual([]);
});

it('an edit that breaks some is balanced, and told with the report of what it became', () => {
  const asked = disturb(four, 20, 7);
  expect(check(asked).ok).toBe(false);
  const { design, report, limits } = settleEdit(asked);
  expect(report).toEqual(check(design));
  expect(report.problems).toEqual([]);
  expect(limits).toEqual([]);
});

it('a length that can be had is had', () => {
  const { design, report } = settleEdit(withLength(700));
  expect(report.ok).toBe(true);
  expect(Math.abs(meanOf(design) - 700)).toBeLessThan(EQUAL);
});

it('a length out of reach gives the nearest that can be had, all equal, and the rules that stop it', () => {
  const { design, report, limits } = settleEdit(withLength(600));
  expect(report).toEqual(check(design));
  expect(new Set(report.problems.map(({ rule }) => rule))).toEqual(new Set(['balance']));
  expect(report.groups[0]!.spread).toBeLessThan(EQUAL);
  expect(limits.length).toBeGreaterThan(0);
  const nearest = meanOf(design);
  expect(nearest).toBeGreaterThan(600);
  expect(settleEdit(withLength(nearest + 1)).report.ok).toBe(true);
  expect(settleEdit(withLength(nearest - 1)).report.ok).toBe(false);
});

it('where another rule cannot hold either, it stays as it was asked for', () => {
  const { primary } = four.tooling;
  const asked = { ...withLength(600), tooling: { primary: { ...primary!, firstStraight: 900 } } };
  const settled = settleEdit(asked);
  expect(settled.design).toBe(asked);
  expect(settled.report.problems.map(({ rule }) => rule)).toContain('straight');
  expect(settled.limits).toEqual([]);
});

it('keeps clear of a mesh that stands around', () => {
  // One triangle a finger long, under a runner's first bend.
  const [x, y, z] = four.runners[0]!.points![1]!;
  const soup = Float32Array.of(x, y - 20, z - 30, x, y + 20, z - 30, x, y, z + 10);
  const meshes = new Map([['plate.stl', soup]]);
  const plate = { id: 'plate', shape: 'mesh', file: 'plate.stl', clearance: 15 } as const;
  const asked: Design = { ...four, surroundings: [...(four.surroundings ?? []), plate] };
  expect(check(asked, meshes).problems.map(({ rule }) => rule)).toEqual(['surroundings']);
  const { design, report } = settleEdit(asked, meshes);
  expect(report.problems).toEqual([]);
  const { gap } = check({ ...design, surroundings: [plate] }, meshes).clearance.surroundings!;
  expect(gap).toBeGreaterThanOrEqual(plate.clearance - EQUAL);
});
