/** Off the studs, straight: how far, and what stops it after how far, against numbers laid out by hand. */
import { describe, expect, test } from 'vitest';
import { accessReport, removalReport, resolveHeader } from '../../../geometry';
import type { Design, Surrounding } from '../../../shared/design/types';
import { box, OFF_STUDS, twin, vee } from './headers';

const report = (design: Design, budget = 400) => removalReport(resolveHeader(design), new Map(), { budget });
const only = (design: Design) => report(design).pieces[0]!;

describe('how far', () => {
  test('free standing: past its studs, and it is free', () => {
    const { pieces, joints } = report(twin([]));
    expect(pieces).toHaveLength(1);
    const [piece] = pieces;
    expect(piece).toMatchObject({ runners: ['r1', 'r2'], merges: ['m1'], flanges: ['f1'], slides: true, leaves: true });
    expect(piece!.path).toEqual([
      { turn: [0, 0, 0], move: [0, 0, 0] },
      { turn: [0, 0, 0], move: [0, OFF_STUDS, 0] },
    ]);
    expect(piece!.room).toBeNull();
    expect(joints).toEqual([]);
  });
  test('as far as reach has its stud stand out, past the flange and its gasket', () => {
    const design = twin([], { fasteners: [{ ...twin([]).flanges![0]!.fasteners![1]!, length: 61 }] });
    expect(only(design).path[1]!.move[1]).toBeCloseTo(61 + 1, 9);
    const { entries } = accessReport(resolveHeader(design));
    expect(entries[0]!.tries.find((t) => t.kind === 'socket')!.by).toEqual([]);
    const short = accessReport(resolveHeader({ ...design, access: { tools: ['socket'] } })).entries[0]!;
    expect(short.message).toContain(`${61 - 10 - 1.5} mm stand out`);
  });
  test('with bolts out, by the plate and its gasket', () => {
    const bolts = twin([]).flanges![0]!.fasteners!.map((f) => ({ ...f, kind: 'bolt' }));
    expect(only(twin([], { fasteners: bolts })).path[1]!.move[1]).toBeCloseTo(11.5, 9);
  });
  test('a stud that says no length is as long as its nut needs', () => {
    const studs = twin([]).flanges![0]!.fasteners!.map(({ length: _, ...f }) => f);
    expect(only(twin([], { fasteners: studs })).path[1]!.move[1]).toBeCloseTo(11.5 + 6.8 + 8 / 3 + 1, 9);
  });
});

describe('what stops it', () => {
  /** Before the middle of the plate, where no tube is. */
  const wall = (y: number): Surrounding => box('wall', [40, y, -5], [60, y + 20, 5]);
  test.each([10, 3.3, 17.25])('a wall %f mm in front of the flange stops it there', (y) => {
    const piece = only(twin([wall(y)]));
    expect(piece.slides).toBe(false);
    expect(piece.leaves).toBe(false);
    expect(piece.stopped!.by).toEqual(['wall']);
    expect(Math.abs(piece.stopped!.after - y)).toBeLessThan(0.05);
    expect(Math.abs(piece.stopped!.at[1] - y)).toBeLessThan(1);
    expect(piece.path).toHaveLength(1);
    expect(piece.message).toContain(`can be drawn off by`);
  });
  test('a wall as far off as it must come, and the room for a hand, does not', () => {
    expect(only(twin([wall(OFF_STUDS + 1.1)])).slides).toBe(true);
    const nearly = only(twin([wall(OFF_STUDS + 0.5)]));
    expect(nearly.slides).toBe(false);
    expect(nearly.stopped!.after).toBeGreaterThan(OFF_STUDS - 0.8);
  });
  test('a rod before a tube’s bend stops it where the two surfaces meet', () => {
    // The last straights run down at y = 300, 20 mm thick.
    const bar: Surrounding = { id: 'bar', shape: 'capsule', a: [-300, 335, -150], b: [300, 335, -150], radius: 5 };
    const piece = only(twin([bar]));
    expect(piece.stopped!.by).toEqual(['bar']);
    expect(Math.abs(piece.stopped!.after - 10)).toBeLessThan(0.05);
  });
  test('a mesh wall does as a box does', () => {
    const mesh: Surrounding = { id: 'scan', shape: 'mesh', file: 'bay.stl' };
    // The collector, 45 mm wide at its inlets about y = 300, comes nearest: 345.
    const [y, low, high] = [357, -400, 200];
    const soup = Float32Array.of(-300, y, low, 300, y, low, 300, y, high, -300, y, low, 300, y, high, -300, y, high);
    const { pieces } = removalReport(resolveHeader(twin([mesh])), new Map([['bay.stl', soup]]), { budget: 200 });
    expect(pieces[0]!.stopped!.by).toEqual(['scan']);
    expect(Math.abs(pieces[0]!.stopped!.after - 12)).toBeLessThan(0.05);
  });
  test('a mesh that has not been read is said, not passed over', () => {
    const mesh: Surrounding = { id: 'scan', shape: 'mesh', file: 'bay.stl' };
    expect(only(twin([mesh])).message).toContain('Not measured against bay.stl');
  });
});

describe('what is near at rest', () => {
  test('a head that the plate lies on with its gasket is no hindrance', () => {
    const head = box('head', [-300, -200, -100], [400, -11.5, 100]);
    expect(only(twin([head])).slides).toBe(true);
  });
  test('nor is a head drawn up to the flange’s outer face', () => {
    const head = box('head', [-300, -200, -100], [400, 0, 100]);
    expect(only(twin([head])).slides).toBe(true);
  });
  test('a wall that lies along a tube, nearer than a hand’s room, may be slid along', () => {
    const side = box('side', [170.4, -50, -100], [190, 140, 100]);
    expect(only(twin([side], { fasteners: [twin([]).flanges![0]!.fasteners![1]!] })).slides).toBe(true);
  });
});

describe('flanges that face apart', () => {
  test('90° apart and welded together: it cannot slide, and the collector as a slip joint is what helps', () => {
    const { pieces, joints } = report(vee());
    expect(pieces).toHaveLength(1);
    expect(pieces[0]!.slides).toBe(false);
    expect(pieces[0]!.message).toContain('flanges f1 and f2 face 90° apart');
    expect(joints).toHaveLength(1);
    expect(joints[0]).toMatchObject({ where: 'merges/m1/inlets', joint: 'slip', helps: true });
    expect(joints[0]!.message).toContain(
      'Leave collector m1 as a slip joint on its inlets; then it comes off: first collector m1, 41 mm off its joint and straight down; then runner r1, 36 mm off the head',
    );
  });
  test('inlets that lean cannot be slipped all at once, and it says by how much', () => {
    const design = vee();
    const leaning = { ...design, merges: design.merges.map((m) => ({ ...m, convergence: 8 })) };
    const { joints } = report(leaning);
    expect(joints[0]!.helps).toBe(false);
    expect(joints[0]!.message).toContain('lies 8° askew to its other joints');
  });
  test('with bolts, that are out, 45° to each face is a way', () => {
    const design = vee();
    const bolted = {
      ...design,
      flanges: design.flanges!.map((f) => ({ ...f, fasteners: f.fasteners!.map((b) => ({ ...b, kind: 'bolt' })) })),
    };
    expect(only(bolted)).toMatchObject({ slides: true, leaves: true });
  });
});

test('two pieces that the design parts already come off one after the other', () => {
  const design = vee();
  const apart: Design = {
    ...design,
    merges: [...design.merges, { ...design.merges[0]!, id: 'm2', position: [0, 0, -500] }].map((m, k) => ({
      ...m,
      inlets: 1,
      position: [k === 0 ? -25 : 25, 0, -500],
      outletDiameter: 40,
    })),
    runners: design.runners.map((r, k) => ({ ...r, to: { merge: `m${k + 1}`, inlet: 1 } })),
  };
  const { pieces, joints } = report(apart);
  expect(pieces.map((p) => [p.runners, p.slides, p.leaves])).toEqual([
    [['r1'], true, true],
    [['r2'], true, true],
  ]);
  expect(joints).toEqual([]);
});

test('a header that is not laid has nothing to take off', () => {
  const design = twin([]);
  const bare = { ...design, runners: design.runners.map(({ points: _, ...r }) => r) };
  expect(report(bare)).toEqual({ pieces: [], joints: [] });
});
