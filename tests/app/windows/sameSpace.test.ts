/** Lengths found stay true while only the runners' own ways change, and no longer. */
import { expect, test } from 'vitest';
import type { Design, Runner } from '../../../shared/design/types';
import { sameSpace } from '../../../src/app/windows/sameSpace';
import { loadLayout } from '../../layouts/load';

const { design } = loadLayout('known', 'c6-i3-3-1');
const withFirst = (change: Partial<Runner>, of: Design = design): Design => ({
  ...of,
  runners: of.runners.map((r, i) => (i === 0 ? { ...r, ...change } : r)),
});

test('the same where a runner goes another way, or the title is another', () => {
  const points = design.runners[0]!.points!.map((p) => [p[0] + 1, p[1], p[2]] as const);
  expect(sameSpace(design, withFirst({ points }))).toBe(true);
  expect(sameSpace(design, { ...design, title: 'Another', display: 'in' })).toBe(true);
});

test('not the same where ends, tooling, surroundings, groups or locks are others', () => {
  const { to } = design.runners[0]!;
  expect(sameSpace(design, withFirst({ to: { ...to, inlet: (to.inlet! % 3) + 1 } }))).toBe(false);
  expect(sameSpace(design, withFirst({ locked: true }))).toBe(false);
  expect(sameSpace(design, { ...design, tooling: { ...design.tooling } })).toBe(false);
  expect(sameSpace(design, { ...design, surroundings: [] })).toBe(false);
  expect(sameSpace(design, { ...design, groups: { ...design.groups } })).toBe(false);
  expect(sameSpace(design, { ...design, runners: design.runners.slice(1) })).toBe(false);
  const locked = withFirst({ locked: true });
  expect(sameSpace(locked, withFirst({ points: [...design.runners[0]!.points!] }, locked))).toBe(false);
});
