/** The picture's stance against the kernel's own motion, by which gaps are measured. */
import { Vector3 } from 'three';
import { expect, it } from 'vitest';
import { motionOf } from '../../../geometry';
import { placedAt, swayOf } from '../../../geometry/motion/motion';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { AT_REST, stanceOf } from '../../../src/app/room/posed';
import { titled } from '../designs';

const moving: Design = {
  ...titled('moving'),
  motion: { rock: { position: [10, -150, -90], axis: [2, 0, 0.5], angles: [-4, 6] }, heat: { temperature: 700 } },
};
const PLACES: readonly Vec3[] = [
  [0, 0, 0],
  [120, 340, -260],
  [-80, 45, 30],
];

it.each([
  [0, 0],
  [-4, 0],
  [0, 1],
  [6, 0.4],
])('at a roll of %d° and a heat of %d every place is where the kernel measures it', (roll, heat) => {
  const { turn, grown } = stanceOf(moving, roll, heat);
  for (const material of ['stainless-304', undefined]) {
    const sway = swayOf(motionOf(moving)!, { id: 's', shape: 'box', min: [0, 0, 0], max: [1, 1, 1] }, material);
    for (const place of PLACES) {
      const drawn = new Vector3(...place).applyMatrix4(grown(material)).applyMatrix4(turn);
      const due = placedAt(sway, place, { angle: (roll * Math.PI) / 180, heat });
      expect(drawn.distanceTo(new Vector3(...due))).toBeLessThan(1e-9 * 1000);
    }
  }
});

it('a design without movement stands at rest', () => {
  expect(stanceOf(titled('still'), 5, 1)).toBe(AT_REST);
});
