/** Unrolling: pieces follow each other without gap, add up to the length, and count bends and straights as the bender does. */
import { describe, expect, it } from 'vitest';
import { bends, bendTable, type ResolvedRunner, resolveHeader } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { stripOf } from '../../../src/app/rack/strip';
import { designWith } from '../designs';

/** Quarter circle of radius 60 in a plane, then another square to it, then a half turn stored as two points. */
const POINTS: Vec3[] = [
  [0, 0, 0],
  [0, 200, 0],
  [0, 200, -300],
  [250, 200, -300],
  [250, 320, -300],
  [100, 320, -300],
];

function strip(points: readonly Vec3[], lengthInHead = 85) {
  const { runners } = resolveHeader(designWith(points, lengthInHead));
  const resolved = runners[0] as ResolvedRunner;
  return { resolved, strip: stripOf(resolved, bendTable(resolved.centerline!, resolved.start.up)) };
}

describe('a strip', () => {
  it('is laid end to end from the valve seat to the full length', () => {
    const { strip: s, resolved } = strip(POINTS);
    expect(s.pieces[0]).toEqual({ kind: 'head', from: 0, to: 85 });
    for (const [i, piece] of s.pieces.entries()) expect(piece.from).toBeCloseTo(i === 0 ? 0 : s.pieces[i - 1]!.to, 9);
    expect(s.pieces.at(-1)!.to).toBeCloseTo(s.length!, 9);
    expect(s.length).toBeCloseTo(85 + resolved.centerline!.length, 9);
  });

  it('shows a half turn stored as two points as one bend', () => {
    const { strip: s, resolved } = strip(POINTS);
    const drawn = s.pieces.filter((p) => p.kind === 'bend');
    expect(drawn.map((b) => b.angle)).toEqual([expect.closeTo(90, 9), expect.closeTo(90, 9), expect.closeTo(180, 9)]);
    expect(drawn.map((b) => b.index)).toEqual([0, 1, 2]);
    expect(drawn.length).toBe(bends(resolved.centerline!).length);
    expect(drawn[2]!.to - drawn[2]!.from).toBeCloseTo(Math.PI * 60, 9);
    expect(s.pieces.filter((p) => p.kind === 'straight').map((p) => p.index)).toEqual([0, 1, 2, 3]);
  });

  it('takes the first bend from the clocking and the others from the rotation before them', () => {
    const { strip: s } = strip(POINTS);
    const drawn = s.pieces.filter((p) => p.kind === 'bend');
    // The port's up is +Z and the first bend goes down: half a turn from up.
    expect(drawn[0]!.rotation).toBeCloseTo(180, 9);
    expect(Math.abs(drawn[1]!.rotation)).toBeCloseTo(90, 9);
  });

  it('holds every straight against what the tooling needs there', () => {
    // 200 − 60 = 140, then 300 − 120 = 180, then 250 − 60 − 60 = 130, then 150 − 60 = 90.
    const { strip: s } = strip(POINTS);
    const straights = s.pieces.filter((p) => p.kind === 'straight');
    expect(straights.map((p) => p.length)).toEqual([140, 180, 130, 90].map((x) => expect.closeTo(x, 9)));
    expect(straights.map((p) => p.least)).toEqual([25, 150, 150, 30]);
    expect(straights.map((p) => p.short)).toEqual([false, false, true, false]);
  });

  it('shows bends that overlap as a straight of negative length', () => {
    const { strip: s } = strip([
      [0, 0, 0],
      [0, 200, 0],
      [0, 200, -100],
      [250, 200, -100],
    ]);
    const straight = s.pieces.filter((p) => p.kind === 'straight')[1]!;
    expect(straight.length).toBeCloseTo(-20, 9);
    expect(straight.short).toBe(true);
    expect(s.pieces.at(-1)!.to).toBeCloseTo(s.length!, 9);
  });

  it('has only its head where the runner is not laid', () => {
    const { runners } = resolveHeader(designWith(undefined));
    expect(stripOf(runners[0]!, undefined)).toMatchObject({ length: null, pieces: [{ kind: 'head' }] });
  });
});
