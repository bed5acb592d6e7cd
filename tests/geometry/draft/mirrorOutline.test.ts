import { expect, test } from 'vitest';
import { framedFlange, mirrorBank, outOfFrame } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { DESIGN, OUTLINE } from '../flange/drawings';

test('a flange’s outline is mirrored with its ports: each corner is the image of one', () => {
  const design: Design = { ...DESIGN, flanges: [{ ...DESIGN.flanges![0]!, outline: OUTLINE }] };
  const cylinders = new Map([1, 2, 3].map((c) => [c, c + 3]));
  const both = mirrorBank(design, { cylinders, plane: { point: [0, -100, 0], normal: [0, 1, 0] } });
  const corners = ({ frame, flange }: ReturnType<typeof framedFlange>) =>
    flange.outline!.map(([x, y]) => outOfFrame(frame, [x, y], 0));
  const [first, second] = both.flanges!.map(({ id }) => corners(framedFlange(both, id)));
  for (const [x, y, z] of first!)
    expect(second!.some(([u, v, w]) => Math.hypot(u - x, v - (-200 - y), w - z) < 1e-9)).toBe(true);
  // Rounded corners stay rounded outward.
  expect(both.flanges![1]!.outline!.every(([, , bulge]) => bulge >= 0)).toBe(true);
});
