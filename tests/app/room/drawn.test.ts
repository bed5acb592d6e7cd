/** What the room's answers come to in the picture: which gaps are drawn, where a piece stands on its way, what is wrapped. */
import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { distance, type GapEntry, type GapReport, pointAt, resolveHeader } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { placeAlong } from '../../../src/app/room/draw/path';
import { sleeveGeometry, wrappedOf } from '../../../src/app/room/draw/sleeveMesh';
import { gapRows } from '../../../src/app/room/gapRows';
import { poseWords } from '../../../src/app/room/poseWords';
import { refOf, refOfEntry } from '../../../src/app/room/refOf';
import { byUrgency, listed } from '../../../src/app/room/words';
import { gapsOf } from '../../../src/app/viewport/gaps';
import { reachSummary } from '../../../src/shop/fitting/words';
import { designWith } from '../designs';

const design = designWith([
  [0, 0, 0],
  [0, 200, 0],
  [0, 200, -300],
]);
const header = resolveHeader(design);

const gap = (between: readonly [string, string], margin: number): GapEntry => ({
  kind: 'surroundings',
  between,
  gap: margin + 10,
  required: 10,
  margin,
  at: [0, 0, 0],
  from: [0, 0, 0],
  to: [0, 0, margin + 10],
  station: 0,
});

describe('gaps', () => {
  const pairs: [string, string][] = [
    ['r1', 'shaft'],
    ['r1', 'shaft'],
    ['r2', 'rail'],
    ['m1', 'rail'],
    ['r3', 'rail'],
  ];
  const report: GapReport = { gaps: pairs.map((pair, i) => gap(pair, i - 1)), profiles: [] };
  const keys = (...args: Parameters<typeof gapsOf>) => gapsOf(...args).map(({ key }) => key);
  const shown = { report, listed: true, pointed: null };

  it('have names of their own that stay', () => {
    const names = gapRows(report).map(({ key }) => key);
    expect(new Set(names).size).toBe(names.length);
    expect(gapRows({ ...report }).map(({ key }) => key)).toEqual(names);
  });

  it('are drawn between the very points of the answer, those of what is picked before the least of all', () => {
    const names = gapRows(report).map(({ key }) => key);
    expect(keys(header, null, null, shown)).toEqual(names.slice(0, 4));
    expect(keys(header, null, { kind: 'merge', id: 'm1' }, shown)).toEqual([names[3]]);
    expect(keys(header, null, null, { ...shown, listed: false })).toEqual([]);
    expect(keys(header, null, null, { ...shown, listed: false, pointed: names[4]! })).toEqual([names[4]]);
    const [first] = gapsOf(header, null, null, shown);
    expect(first).toMatchObject({ fails: true, text: 'gap 9.00 mm', line: { from: [0, 0, 0], to: [0, 0, 9] } });
  });

  it('fall back on the check where nothing more is known', () => {
    expect(gapsOf(header, null, { kind: 'runner', id: 'r1' })).toEqual([]);
    const clearance = { tubeToTube: null, mergeBodies: null, surroundings: gap(['r1', 'nowhere'], 3) };
    const report = { clearance } as unknown as Parameters<typeof gapsOf>[1];
    expect(gapsOf(header, report, { kind: 'runner', id: 'r1' })).toMatchObject([{ text: 'gap 13.00 mm' }]);
  });
});

describe('a piece on its way off', () => {
  const turn: Vec3 = [0, 0, Math.PI / 2];
  const path = [
    { turn: [0, 0, 0] as Vec3, move: [0, 0, 0] as Vec3 },
    { turn: [0, 0, 0] as Vec3, move: [0, 100, 0] as Vec3 },
    { turn, move: [0, 100, 0] as Vec3 },
  ];
  const put = (along: number, p: Vec3) => new Vector3(...p).applyMatrix4(placeAlong(path, along)).toArray();
  const near = (a: readonly number[], b: readonly number[]) =>
    a.forEach((x, i) => {
      expect(x).toBeCloseTo(b[i]!, 9);
    });

  it('is in its place at the start and as the last pose says at the end: turned about the origin, then moved', () => {
    near(put(0, [10, 20, 30]), [10, 20, 30]);
    near(put(1, [10, 0, 5]), [0, 110, 5]);
  });

  it('moves on evenly, and never jumps', () => {
    let before = put(0, [50, 0, 0]);
    for (let i = 1; i <= 200; i++) {
      const now = put(i / 200, [50, 0, 0]);
      expect(Math.hypot(...now.map((x, k) => x - before[k]!))).toBeLessThan(4);
      before = now;
    }
  });

  it('stays where it is where there is no path', () => {
    near(new Vector3(1, 2, 3).applyMatrix4(placeAlong([], 0.5)).toArray(), [1, 2, 3]);
  });
});

describe('wrap', () => {
  const line = header.runners[0]!.centerline!;

  it('is the whole tube where the design does not say, and within it where it does', () => {
    expect(wrappedOf(line, undefined)).toEqual([[0, line.length]]);
    expect(
      wrappedOf(line, [
        [50, 80],
        [400, 9000],
        [9000, 9100],
      ]),
    ).toEqual([
      [50, 80],
      [400, line.length],
    ]);
  });

  it('is a sleeve as thick as the wrap over its stretches, and nowhere else', () => {
    const geometry = sleeveGeometry(line, 20, 23, [
      [30, 60],
      [300, 340],
    ]);
    const at = geometry.getAttribute('position');
    const spots = Array.from({ length: 60 }, (_, i) => 30 + (i * 310) / 59);
    for (let i = 0; i < at.count; i++) {
      const p: Vec3 = [at.getX(i), at.getY(i), at.getZ(i)];
      const off = Math.min(
        ...spots.filter((s) => s <= 60 || s >= 300).map((s) => distance(pointAt(line, s).position, p)),
      );
      expect(off).toBeGreaterThan(19.99);
      expect(off).toBeLessThan(24);
    }
  });
});

describe('names in answers', () => {
  const around = {
    ...design,
    flanges: [
      {
        id: 'left flange',
        ports: ['p1'],
        thickness: 10,
        fasteners: [{ position: [0, 0, 0] as Vec3, kind: 'bolt', thread: 'M8', hole: 9 }],
      },
    ],
    service: [{ id: 'plug 1', kind: 'spark-plug' as const, position: [0, 0, 0] as Vec3, direction: [0, 1, 0] as Vec3 }],
  };
  const known = resolveHeader(around);

  it('are found in the design', () => {
    expect(refOf(known, 'r1')).toEqual({ kind: 'runner', id: 'r1' });
    expect(refOf(known, 'm1')).toEqual({ kind: 'merge', id: 'm1' });
    expect(refOf(known, 'left flange bolt 1')).toEqual({ kind: 'fastener', id: 'left flange', index: 0 });
    expect(refOf(known, 'left flange bolt 2')).toBeNull();
    expect(refOf(known, 'plug 1')).toEqual({ kind: 'service', id: 'plug 1' });
    expect(refOf(known, 'gone')).toBeNull();
    expect(refOfEntry({ id: 'x', where: 'flanges/left flange/fasteners/2' })).toEqual({
      kind: 'fastener',
      id: 'left flange',
      index: 2,
    });
    expect(refOfEntry({ id: 'plug 1', where: 'service/plug 1' })).toEqual({ kind: 'service', id: 'plug 1' });
  });
});

describe('words', () => {
  it('tell where in its motion a gap is least', () => {
    expect(poseWords(undefined)).toBe('');
    expect(poseWords({ rock: 0, heat: 0 })).toBe('');
    expect(poseWords({ rock: -3, heat: 1 })).toBe('roll −3.0°, hot');
    expect(poseWords({ rock: 1.5, heat: 0.25 })).toBe('roll +1.5°, 25 % hot');
  });

  it('list names shortly, and what wants seeing to first', () => {
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c', 'd']].map((names) => listed(names))).toEqual([
      '',
      'a',
      'a and b',
      'a, b and 2 more',
    ]);
    const entries = (['reachable', 'blocked', 'one-tool', 'before-wrapping'] as const).map((reach) => ({ reach }));
    expect(byUrgency(entries as never).map(({ reach }) => reach)).toEqual([
      'blocked',
      'before-wrapping',
      'one-tool',
      'reachable',
    ]);
    expect(reachSummary(entries)).toBe('1 of 4 blocked, 1 before wrapping only');
    expect(reachSummary(entries.filter(({ reach }) => reach !== 'blocked'))).toBe('1 of 3 before wrapping only');
    expect(reachSummary([{ reach: 'reachable' }, { reach: 'one-tool' }])).toBe('all 2 reachable');
  });
});
