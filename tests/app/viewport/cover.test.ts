/** Which label places a tube stands before, held against the distance of the line of sight from the tubes' axes. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { addScaled, distance, dot, type Header, pointAt, resolveHeader, sub, unit } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Vec3 } from '../../../shared/vec3';
import { eyeAxes, eyePosition, type View } from '../../../src/app/viewport/camera/view';
import { coversOf, isCovered } from '../../../src/app/viewport/model/cover';
import { random } from '../../random';

const header = resolveHeader(
  parseDesign(readFileSync(new URL('../../../public/examples/v8-both-banks.evenrun.json', import.meta.url), 'utf8')),
);
const STEP = 2;

/**
 * How far the line of sight passes within another runner's wall, mm: the most over their axes, walked in small steps.
 * Places nearer to the label than that runner's own radius do not count, nor any behind the eye.
 */
function depth(of: Header, at: Vec3, id: string, view: View): number {
  const eye = eyePosition(view);
  const toEye = view.parallel ? eyeAxes(view).back : unit(sub(eye, at));
  let most = Number.NEGATIVE_INFINITY;
  for (const { runner, centerline, tubeRadius } of of.runners) {
    if (runner.id === id || !centerline) continue;
    for (let s = 0; s <= centerline.length; s += STEP) {
      const p = pointAt(centerline, s).position;
      const t = dot(sub(p, at), toEye);
      if (t < tubeRadius || (!view.parallel && t > distance(eye, at))) continue;
      most = Math.max(most, tubeRadius - distance(p, addScaled(at, toEye, t)));
    }
  }
  return most;
}

describe('a label place on a runner', () => {
  for (const parallel of [false, true])
    it(`is covered where another tube stands between it and the eye, ${parallel ? 'parallel' : 'perspective'}, seed 3`, () => {
      const next = random(3);
      const covers = coversOf(header);
      const told = { covered: 0, free: 0 };
      for (let k = 0; k < 150; k++) {
        const { runner, centerline } = header.runners[next.whole(0, header.runners.length - 1)]!;
        const at = pointAt(centerline!, next.between(0, centerline!.length)).position;
        const view: View = {
          target: [0, 0, 0],
          yaw: next.between(-3, 3),
          pitch: next.between(-1.5, 1.5),
          distance: next.between(900, 2500),
          parallel,
        };
        const deep = depth(header, at, runner.id, view);
        // Balls a radius apart leave the wall scalloped by R·(1 − √(1 − 1/4)), a seventh of it: there either answer will do.
        const radius = header.runners[0]!.tubeRadius;
        if (deep > -0.5 && deep < radius / 7 + 0.5) continue;
        const covered = isCovered(at, runner.id, covers, view);
        told[covered ? 'covered' : 'free']++;
        expect(covered).toBe(deep > 0);
      }
      expect(told.covered).toBeGreaterThan(10);
      expect(told.free).toBeGreaterThan(10);
    });
});
