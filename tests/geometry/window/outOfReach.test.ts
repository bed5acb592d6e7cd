/** What is said of lengths that cannot be had: the runner that sets the limit, and what can be had instead. */
import { describe, expect, test } from 'vitest';
import { check, type GroupWindow, lengthWindows, outOfReach, type RunnerWindow, withReach } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { loadLayout } from '../../layouts/load';

const { design } = loadLayout('known', 'c6-i3-3-1');
const [id = ''] = Object.keys(design.groups);
const asking = (length: number | null): Design => ({ ...design, groups: { [id]: { length, tolerance: 1 } } });

const runner = (name: string, shortest: number, longest: number | null, locked = false): RunnerWindow => ({
  id: name,
  shortest,
  longest,
  unbounded: longest === null,
  inlet: 1,
  locked,
});
const group: GroupWindow = {
  id,
  shortest: 610.4,
  longest: 742,
  unbounded: false,
  shortestBy: 'r1',
  longestBy: 'r2',
  without: [],
};
const runners = [runner('r1', 610.4, null), runner('r2', 500, 742)];
const said = (length: number | null, change: Partial<GroupWindow> = {}, of = runners): string[] =>
  outOfReach({ runners: of, groups: [{ ...group, ...change }] }, asking(length));

describe('out of reach', () => {
  test('nothing is said of lengths that can be had, their limits included', () => {
    for (const length of [610.4, 650, 742, null]) expect(said(length)).toEqual([]);
  });

  test('too short and too long', () => {
    expect(said(500)).toEqual([
      `500 mm is out of reach for group ${id}: runner r1 is 610.4 mm at the shortest found; 610.4 mm to 742 mm can be had.`,
    ]);
    expect(said(800)).toEqual([
      `800 mm is out of reach for group ${id}: runner r2 is 742 mm at the longest found; 610.4 mm to 742 mm can be had.`,
    ]);
    expect(said(500, { longest: null, longestBy: null })[0]).toContain('610.4 mm or longer can be had');
  });

  test('a locked runner leaves one length', () => {
    const locked = [runner('r1', 610.4, 610.4, true)];
    expect(said(700, { longest: 610.4, longestBy: 'r1' }, locked)).toEqual([
      `700 mm is out of reach for group ${id}: runner r1 is 610.4 mm and locked; only 610.4 mm can be had.`,
    ]);
  });

  test('no length in common, whatever is asked', () => {
    for (const length of [650, null])
      expect(said(length, { longest: 600 })).toEqual([
        `Group ${id} has no length in common: runner r1 is 610.4 mm at the shortest found, runner r2 is 600 mm at the longest found.`,
      ]);
  });

  test('a runner without any way', () => {
    expect(said(650, { shortest: null, longest: null, without: ['r3'] })).toEqual([
      'No way was found for runner r3, even alone: make room there, or allow more or wider bends.',
    ]);
  });

  test('in inches where the design is shown in them', () => {
    const [sentence] = outOfReach({ runners, groups: [group] }, { ...asking(500), display: 'in' });
    expect(sentence).toContain('19.685 in is out of reach');
  });
});

test('the group’s window is the narrowest of its members, and names them', () => {
  const { runners: found, groups } = lengthWindows(asking(null));
  const longest = found.reduce((a, b) => (b.shortest! > a.shortest! ? b : a));
  expect(groups).toMatchObject([{ id, shortest: longest.shortest, shortestBy: longest.id, unbounded: true }]);
});

test('the message of a balance problem says what can be had, and nothing else of the report changes', () => {
  const short = asking(300);
  const report = check(short);
  const windows = lengthWindows(short);
  const more = withReach(report, windows, short);
  const [sentence] = outOfReach(windows, short);
  expect(sentence).toContain('300 mm is out of reach');
  for (const [i, p] of report.problems.entries())
    expect(more.problems[i]).toEqual(p.rule === 'balance' ? { ...p, message: `${p.message} ${sentence}` } : p);
  expect(report.problems.some((p) => p.rule === 'balance')).toBe(true);
  const inReach = asking(700);
  expect(withReach(check(inReach), lengthWindows(inReach), inReach)).toEqual(check(inReach));
});
