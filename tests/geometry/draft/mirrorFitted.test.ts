/** What is fitted to a bank goes along when it is mirrored: sensors stay where their image is, wrap and service points too. */
import { describe, expect, test } from 'vitest';
import { mirrorBank, type Plane, pointAt, resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design, Sensor } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { oneBank } from './bank';

const PLANE: Plane = { point: [0, -250, 0], normal: [0, 1, 0] };
const SENSORS: readonly Sensor[] = [
  { id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: -45 },
  { id: 'egt 2', kind: 'temperature', on: { runner: 'r2' }, at: 300, clock: 170 },
  { id: 'lambda', kind: 'oxygen', on: { merge: 'collector' }, at: 90, clock: 30, length: 110 },
];
const design: Design = {
  ...oneBank(),
  sensors: SENSORS,
  service: [
    { id: 'plug 1', kind: 'spark-plug', position: [0, -60, 90], direction: [0, 0.5, 1] },
    { id: 'mount', kind: 'bolt', position: [200, 100, -300], direction: [0, 1, 0] },
  ],
  wrap: { thickness: 1.6, layers: 2, roll: 20 },
};

/**
 * Which way a sensor points, from the document's own words by a path of its own: the uppermost way out of the tube is
 * the one that a walk over the clock finds highest.
 */
function wayOut(of: Design, { on, at, clock }: Sensor): Vec3 {
  const header = resolveHeader(of);
  const flow =
    'runner' in on
      ? pointAt(header.runners.find((r) => r.runner.id === on.runner)!.centerline!, at).tangent
      : header.merges.get(on.merge)!.merge.axis;
  const length = Math.hypot(...flow);
  const t = flow.map((x) => x / length) as [number, number, number];
  // Upward as far as it stands square to the flow; the other axis is across, right-handed.
  const up = [-t[0] * t[2], -t[1] * t[2], 1 - t[2] * t[2]];
  const high = Math.hypot(...up);
  const [u, v, w] = high > 1e-6 ? up.map((x) => x / high) : [-t[0] * t[1], 1 - t[1] * t[1], -t[2] * t[1]];
  const across = [t[1] * w! - t[2] * v!, t[2] * u! - t[0] * w!, t[0] * v! - t[1] * u!];
  const [c, s] = [Math.cos((clock * Math.PI) / 180), Math.sin((clock * Math.PI) / 180)];
  return [c * u! + s * across[0]!, c * v! + s * across[1]!, c * w! + s * across[2]!];
}

const reflected = (v: Vec3, n: Vec3): Vec3 => {
  const k = (2 * (v[0] * n[0] + v[1] * n[1] + v[2] * n[2])) / (n[0] ** 2 + n[1] ** 2 + n[2] ** 2);
  return [v[0] - k * n[0], v[1] - k * n[1], v[2] - k * n[2]];
};
const apart = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('sensors', () => {
  test('go with their runners and collectors, the clock turned over in an upright plane', () => {
    const both = mirrorBank(design, { plane: PLANE });
    expect(both.sensors!.slice(0, 3)).toEqual(SENSORS);
    expect(both.sensors!.slice(3)).toEqual([
      { id: 'egt 5', kind: 'temperature', on: { runner: 'r5' }, at: 60, clock: 45 },
      { id: 'egt 6', kind: 'temperature', on: { runner: 'r6' }, at: 300, clock: -170 },
      { ...SENSORS[2]!, id: 'lambda mirrored', on: { merge: 'collector mirrored' }, clock: -30 },
    ]);
    expect(parseDesign(writeDesign(both))).toEqual(both);
  });

  test('in eight planes (seed 11), upright, level and slanting, point where their image points', () => {
    const r = random(11);
    const normals: Vec3[] = [
      [0, 1, 0],
      [0, 0, 1],
      ...Array.from({ length: 6 }, (): Vec3 => [r.between(-0.4, 0.4), 1, r.between(-0.4, 0.4)]),
    ];
    for (const normal of normals) {
      const both = mirrorBank(
        { ...design, surroundings: [] },
        { plane: { point: [0, -900, -900], normal }, service: [] },
      );
      SENSORS.forEach((sensor, i) => {
        const image = both.sensors![SENSORS.length + i]!;
        expect(image.at).toBe(sensor.at);
        expect(apart(wayOut(both, image), reflected(wayOut(design, sensor), normal))).toBeLessThan(1e-6);
      });
    }
  });

  test('on a tube that stands upright the clock counts from +Y, which its image turns away from', () => {
    const upright: Design = {
      ...design,
      merges: design.merges.map((m) => ({ ...m, axis: [0, 0, -1], up: [1, 0, 0] })),
    };
    const { sensors } = mirrorBank(upright, { plane: PLANE });
    expect(sensors!.at(-1)!.clock).toBe(150);
  });
});

describe('service points', () => {
  test('plugs go with a bank that is all there is, as the stand-in for its head does', () => {
    const { service } = mirrorBank(design, { plane: PLANE });
    expect(service!.slice(2)).toEqual([
      { id: 'plug 5', kind: 'spark-plug', position: [0, -440, 90], direction: [0, -0.5, 1] },
    ]);
  });

  test('those that are named, or none; one that is not there is refused with its place', () => {
    const named = mirrorBank(design, { plane: PLANE, service: ['mount'] });
    expect(named.service!.slice(2)).toEqual([
      { id: 'mount mirrored', kind: 'bolt', position: [200, -600, -300], direction: [0, -1, 0] },
    ]);
    expect(mirrorBank(design, { plane: PLANE, service: [] }).service).toEqual(design.service);
    expect(() => mirrorBank(design, { plane: PLANE, service: ['dipstick'] })).toThrow(
      /^service: found "dipstick"; allowed: one of "plug 1", "mount"/,
    );
  });
});

test('wrapped stretches are kept, as lengths along the tube are', () => {
  const wrapped = [[40, 180]] as const;
  const part = { ...design, runners: design.runners.map((r, i) => (i === 0 ? { ...r, wrapped } : r)) };
  const both = mirrorBank(part, { plane: PLANE });
  expect(both.runners.find((r) => r.id === 'r5')!.wrapped).toEqual(wrapped);
  expect(both.runners.find((r) => r.id === 'r6')!.wrapped).toBeUndefined();
  expect(both.wrap).toEqual(design.wrap);
});

test('cylinders and planes have images: ends and places across, and which way is solid', () => {
  const { surroundings } = mirrorBank(
    {
      ...design,
      surroundings: [
        { id: 'filter', shape: 'cylinder', a: [0, 500, 0], b: [10, 600, 0], radius: 38, fixedTo: 'engine' },
        { id: 'wall', shape: 'plane', position: [0, 700, 5], normal: [0, -2, 1], clearance: 20 },
      ],
    },
    { plane: PLANE, surroundings: ['filter', 'wall'] },
  );
  expect(surroundings!.slice(2)).toEqual([
    { id: 'filter mirrored', shape: 'cylinder', a: [0, -1000, 0], b: [10, -1100, 0], radius: 38, fixedTo: 'engine' },
    { id: 'wall mirrored', shape: 'plane', position: [0, -1200, 5], normal: [0, 2, 1], clearance: 20 },
  ]);
});
