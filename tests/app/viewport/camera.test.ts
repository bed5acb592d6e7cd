/** Camera steps and the closed-form fit, held against the projection that draws the labels. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dot, norm, sub } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { type Ball, fitBalls } from '../../../src/app/viewport/camera/fit';
import { engineSides, presetAngles } from '../../../src/app/viewport/camera/presets';
import {
  between,
  eyeAxes,
  eyePosition,
  orbit,
  pan,
  project,
  type View,
  zoom,
} from '../../../src/app/viewport/camera/view';

const size = { width: 1200, height: 800 };
const near = (a: readonly number[], b: readonly number[], tolerance: number) =>
  a.forEach((x, i) => {
    expect(Math.abs(x - b[i]!)).toBeLessThan(tolerance);
  });

const coordinate = fc.double({ min: -600, max: 600, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>;
const look = fc.record({
  yaw: fc.double({ min: -4, max: 4, noNaN: true }),
  pitch: fc.double({ min: -1.57, max: 1.57, noNaN: true }),
  parallel: fc.boolean(),
});
const view: fc.Arbitrary<View> = fc
  .tuple(look, point, fc.double({ min: 200, max: 5000, noNaN: true }))
  .map(([l, target, distance]) => ({ ...l, target, distance }));

describe('the eye', () => {
  it('has square unit axes, right-handed, with up never below the horizon’s side', () => {
    fc.assert(
      fc.property(look, (l) => {
        const { right, up, back } = eyeAxes(l);
        for (const axis of [right, up, back]) expect(norm(axis)).toBeCloseTo(1, 12);
        expect(dot(right, up)).toBeCloseTo(0, 12);
        expect(dot(up, back)).toBeCloseTo(0, 12);
        expect(up[2]).toBeGreaterThanOrEqual(-1e-12);
      }),
      { seed: 11 },
    );
  });

  it('zooms with the point under the pointer standing still', () => {
    fc.assert(
      fc.property(view, point, fc.double({ min: 0.6, max: 1.6, noNaN: true }), (v, under, factor) => {
        const before = project(v, size, under);
        fc.pre(before !== null && (v.parallel || dot(sub(eyePosition(v), under), eyeAxes(v).back) > 60));
        const half = size.height / 2;
        const at = [(before![0] - size.width / 2) / half, -(before![1] - half) / half] as const;
        const after = project(zoom(v, factor, at, under), size, under);
        near(after!, before!, 1e-6 * (1 + Math.abs(before![0]) + Math.abs(before![1])));
      }),
      { seed: 12 },
    );
  });

  it('pans by as much as the pointer moves, at the depth of the target', () => {
    fc.assert(
      fc.property(view, (v) => {
        const moved = pan(v, 0.25, -0.5);
        near(project(moved, size, v.target)!, [600 + 0.25 * 400, 400 + 0.5 * 400], 1e-6);
      }),
      { seed: 13 },
    );
  });

  it('turns about the target and stops at the poles', () => {
    const v: View = { target: [10, 20, 30], yaw: 0.3, pitch: 0.2, distance: 900, parallel: false };
    const turned = orbit(v, 0.7, -9);
    expect(turned.pitch).toBeCloseTo(Math.PI / 2, 12);
    expect(norm(sub(eyePosition(turned), v.target))).toBeCloseTo(900, 9);
  });

  it('glides by the shorter way round', () => {
    const a: View = { target: [0, 0, 0], yaw: 3, pitch: 0, distance: 100, parallel: false };
    const b: View = { ...a, yaw: -3, distance: 400 };
    const half = between(a, b, 0.5);
    expect(Math.abs(Math.cos(half.yaw) + 1)).toBeLessThan(1e-9);
    expect(half.distance).toBeCloseTo(200, 9);
  });
});

describe('fit', () => {
  const balls = fc.array(fc.record({ at: point, radius: fc.double({ min: 1, max: 60, noNaN: true }) }), {
    minLength: 1,
    maxLength: 12,
  });

  it('shows every ball inside the border, and at least one touches it', () => {
    fc.assert(
      fc.property(balls, look, (list: readonly Ball[], l) => {
        const border = { left: 0.1, right: 0.1, top: 0.15, bottom: 0.2 };
        const v = fitBalls(list, l, size.width / size.height, border);
        const { right, up } = eyeAxes(v);
        let tightest = Number.POSITIVE_INFINITY;
        for (const { at, radius } of list) {
          // The ball's outermost points sideways: in perspective its true outline lies a little farther out still.
          for (const [axis, sign] of [
            [right, 1],
            [right, -1],
            [up, 1],
            [up, -1],
          ] as const) {
            const p = project(v, size, at.map((x, i) => x + sign * radius * axis[i]!) as unknown as Vec3)!;
            expect(p).not.toBeNull();
            const room = Math.min(p[0] - 60, 1140 - p[0], p[1] - 60, 720 - p[1]);
            expect(room).toBeGreaterThan(-1e-6);
            tightest = Math.min(tightest, room);
          }
        }
        // Where the nearest allowed eye is not what stopped it; the outline's extra is below the ball's own size on screen.
        if (v.distance > 15 && l.parallel) expect(tightest).toBeLessThan(1e-6);
      }),
      { seed: 14 },
    );
  });

  it('answers an empty list with some view', () => {
    const v = fitBalls([], { yaw: 0, pitch: 0, parallel: false }, 1.5);
    expect(Number.isFinite(v.distance)).toBe(true);
  });
});

describe('named views', () => {
  const sides = engineSides(null);

  it('looks from where it says: front is −X without a clue, right is out of bank 1’s head then', () => {
    const from = (preset: Parameters<typeof presetAngles>[0]) => eyeAxes(presetAngles(preset, sides)).back;
    near(from('front'), [-1, 0, 0], 1e-12);
    near(from('back'), [1, 0, 0], 1e-12);
    near(from('right'), [0, 1, 0], 1e-12);
    near(from('left'), [0, -1, 0], 1e-12);
    near(from('top'), [0, 0, 1], 1e-12);
    near(from('bottom'), [0, 0, -1], 1e-12);
    expect(from('corner')[1]).toBeGreaterThan(0.5);
    expect(from('corner')[2]).toBeGreaterThan(0.2);
  });

  it('draws the head at the top of the page from above', () => {
    near(eyeAxes(presetAngles('top', sides)).up, [0, -1, 0], 1e-12);
  });
});
