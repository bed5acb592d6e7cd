/** Pulling a face of a crop: in perspective the face ends under the pointer, and never passes the opposite one. */
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../shared/vec3';
import type { Corners } from '../../src/app/meshes/facts';
import { FACES, faceAt, middleOfFace, type See, withFace } from '../../src/app/meshes/importing/cropFace';
import { project, type View } from '../../src/app/viewport/camera/view';

const VIEW: View = { target: [0, 0, 0], yaw: 0.7, pitch: 0.4, distance: 900, parallel: false };
const see: See = (place) => project(VIEW, { width: 800, height: 600 }, place)!;
const CROP: Corners = [
  [-120, -60, -40],
  [100, 90, 70],
];

describe('each face', () => {
  it.each(FACES)('$axis $corner goes to where the pointer is', (face) => {
    for (const by of [-45, 12, 80]) {
      const wanted = CROP[face.corner][face.axis] + by;
      const at = middleOfFace(CROP, face).map((x, i) => (i === face.axis ? wanted : x)) as unknown as Vec3;
      expect(faceAt(see, CROP, face, see(at))).toBeCloseTo(wanted, 3);
    }
  });

  it.each(FACES)('$axis $corner stops a step from the opposite one, the rest as it was', (face) => {
    const past = face.corner === 0 ? 1000 : -1000;
    const cut = withFace(CROP, face, past, 5);
    expect(cut[1][face.axis] - cut[0][face.axis]).toBe(5);
    expect(cut[1 - face.corner]).toEqual(CROP[1 - face.corner]);
    for (const i of [0, 1, 2]) if (i !== face.axis) expect(cut[face.corner]![i]).toBe(CROP[face.corner][i]);
  });
});

it('places are round', () => {
  expect(withFace(CROP, { corner: 1, axis: 0 }, 83.4, 5)[1][0]).toBe(85);
  expect(withFace(CROP, { corner: 0, axis: 2 }, -0.4, 1)[0][2]).toBe(0);
});
