/** Where a collector's inlets lie and what its body fills, by the contract's formulas worked by hand. */
import { describe, expect, test } from 'vitest';
import { angleBetween, distance, dot, mergeAxes, mergeGeometry, norm, sub, unit } from '../../../geometry';
import type { Merge } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

const base: Merge = {
  id: 'm',
  inlets: 4,
  position: [150, 250, -350],
  axis: [0, 0, -2],
  up: [3, 0, 5],
  outletDiameter: 60,
  length: 120,
};
const places = (merge: Partial<Merge>, pitch = 40) => mergeGeometry({ ...base, ...merge }, pitch, 40).inlets;
const close = (found: Vec3, wanted: Vec3): void => {
  for (const [k, x] of wanted.entries()) expect(found[k]).toBeCloseTo(x, 9);
};

test('axes: w along the flow, u the up projected square to it, v = w × u', () => {
  const { u, v, w } = mergeAxes(base);
  close(w, [0, 0, -1]);
  close(u, [1, 0, 0]);
  close(v, [0, -1, 0]);
});

test('a ring of four: inlet 1 at 45° from v toward u, then on', () => {
  const r = 40 / (2 * Math.SQRT1_2);
  const k = r * Math.SQRT1_2;
  const [x, y, z] = base.position;
  const wanted: Vec3[] = [
    [x + k, y - k, z],
    [x + k, y + k, z],
    [x - k, y + k, z],
    [x - k, y - k, z],
  ];
  for (const [i, inlet] of places({}).entries()) close(inlet.position, wanted[i]!);
});

test.each([2, 3, 5, 6])('a ring of %d: neighbours a pitch apart, on one circle in the inlet plane', (inlets) => {
  const found = places({ inlets }, 47);
  for (const [i, p] of found.entries()) {
    expect(distance(p.position, found[(i + 1) % inlets]!.position)).toBeCloseTo(47, 9);
    expect(dot(sub(p.position, base.position), [0, 0, 1])).toBeCloseTo(0, 9);
    expect(distance(p.position, base.position)).toBeCloseTo(47 / (2 * Math.sin(Math.PI / inlets)), 9);
  }
});

test('a line of three: from −v to v, a pitch apart, the middle one at the centre', () => {
  const [x, y, z] = base.position;
  const found = places({ inlets: 3, pattern: 'line' });
  close(found[0]!.position, [x, y + 40, z]);
  close(found[1]!.position, [x, y, z]);
  close(found[2]!.position, [x, y - 40, z]);
});

test('one inlet lies at the centre, in a ring or a line', () => {
  for (const pattern of ['ring', 'line'] as const) close(places({ inlets: 1, pattern })[0]!.position, base.position);
});

describe('convergence', () => {
  test('each inlet leans toward the axis by the angle', () => {
    for (const { position, direction } of places({ convergence: 7 })) {
      expect(norm(direction)).toBeCloseTo(1, 12);
      expect((angleBetween(direction, [0, 0, -1]) * 180) / Math.PI).toBeCloseTo(7, 9);
      const outward = unit(sub(position, base.position));
      expect(dot(direction, outward)).toBeCloseTo(-Math.sin((7 * Math.PI) / 180), 12);
    }
  });
  test('an inlet at the centre does not lean', () => {
    close(places({ inlets: 3, pattern: 'line', convergence: 7 })[1]!.direction, [0, 0, -1]);
    close(places({ inlets: 1, convergence: 7 })[0]!.direction, [0, 0, -1]);
  });
});

test('outlet and body: from the circle about the tubes to the outlet’s, over the length', () => {
  const { outlet, body } = mergeGeometry(base, 40, 38);
  close(outlet.position, [150, 250, -470]);
  close(outlet.direction, [0, 0, -1]);
  expect(body).toMatchObject({ position: base.position, length: 120, endRadius: 30 });
  expect(body.startRadius).toBeCloseTo(40 / Math.SQRT2 + 19, 9);
});
