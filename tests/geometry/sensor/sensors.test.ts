/**
 * Sensors on the smallest header: runner r1 leaves its port along +y at x = 0, 150 mm to its first corner, and ends 114 mm
 * straight down into the collector, whose axis points down.
 */
import { describe, expect, test } from 'vitest';
import { pointAt, resolveHeader, type SensorEntry, sensorReport } from '../../../geometry';
import { chain } from '../../../geometry/clearance/chain';
import type { Merge, Sensor, Surrounding } from '../../../shared/design/types';
import { SENSOR_SIZES } from '../../../shared/stock/sensors';
import type { Vec3 } from '../../../shared/vec3';
import { header } from '../check/header';

const lambda = (over: Partial<Sensor> = {}): Sensor => ({
  id: 'lambda',
  kind: 'oxygen',
  on: { runner: 'r1' },
  at: 50,
  clock: 0,
  ...over,
});

type Wishes = { surroundings?: readonly Surrounding[]; merge?: Partial<Merge>; others?: readonly Sensor[] };

function entry(sensor: Sensor, { others = [], ...w }: Wishes = {}): SensorEntry {
  const design = { ...header({ spacing: 200, ...w }), sensors: [sensor, ...others] };
  return sensorReport(resolveHeader(design), new Map())[0]!;
}
const words = (e: SensorEntry): string => e.remarks.map((r) => r.message).join('\n');
const failing = (e: SensorEntry): string[] => e.remarks.filter((r) => r.fails).map((r) => r.message);
const near = (a: Vec3, b: Vec3): void => a.forEach((x, k) => void expect(x).toBeCloseTo(b[k]!, 6));

describe('where the bung stands', () => {
  test('uppermost on a level tube that runs along +y', () => {
    const e = entry(lambda());
    near(e.at, [-50, 50, 20]);
    near(e.axis, [0, 0, 1]);
    expect(e.lean).toBeCloseTo(90, 6);
  });
  test('right-handed about the flow: a quarter turn from up about +y is +x', () => {
    const e = entry(lambda({ clock: 90 }));
    near(e.at, [-30, 50, 0]);
    expect(e.lean).toBeCloseTo(0, 6);
  });
  test('on a tube that stands upright clock 0 is +y', () => {
    const line = resolveHeader(header({ spacing: 200 })).runners[0]!.centerline!;
    const e = entry(lambda({ at: line.length - 60 }));
    near(e.axis, [0, 1, 0]);
  });
  test('every place is as far from the centerline as the tube is thick', () => {
    const r = resolveHeader(header({ spacing: 200 })).runners[0]!;
    for (let at = 20; at < r.centerline!.length; at += 17) {
      const e = entry(lambda({ at, clock: at * 3 }));
      const { position, tangent } = pointAt(r.centerline!, at);
      expect(Math.hypot(...e.at.map((x, k) => x - position[k]!))).toBeCloseTo(20, 6);
      expect(e.axis.reduce((s, x, k) => s + x * tangent[k]!, 0)).toBeCloseTo(0, 6);
    }
  });
  test('on a cone it stands square to the wall, on the plain outlet square to the axis', () => {
    const cone = entry(lambda({ on: { merge: 'm1' }, at: 60 }));
    // From radius 45 (half the pitch and half a tube) to 30 over 120 mm, the axis straight down.
    near(cone.at, [50, 300 + 37.5, -260]);
    expect(cone.lean).toBeCloseTo((-Math.atan2(15, 120) * 180) / Math.PI, 6);
    const outlet = entry(lambda({ on: { merge: 'm1' }, at: 118 }));
    near(outlet.axis, [0, 1, 0]);
    near(outlet.at, [50, 330, -318]);
  });
  test('its distance from the collector: upstream of the outlet, or from the inlets of its own', () => {
    const line = resolveHeader(header({ spacing: 200 })).runners[0]!.centerline!;
    expect(entry(lambda()).toCollector).toBeCloseTo(-(line.length - 50 + 120), 6);
    expect(entry(lambda({ on: { merge: 'm1' }, at: 90 })).toCollector).toBe(90);
  });
});

describe('lean', () => {
  test('hanging down fails, and says which angles would do', () => {
    expect(failing(entry(lambda({ clock: 120 })))).toEqual([
      'Oxygen sensor lambda hangs 30° below horizontal; at least 10° above horizontal is common practice, so that condensed water runs off: turn it to a clock angle within 80° of 0.',
    ]);
  });
  test('5° above horizontal is a remark only; at 10° nothing is said', () => {
    const e = entry(lambda({ clock: 85 }));
    expect(words(e)).toContain('leans 5° above horizontal');
    expect(failing(e)).toEqual([]);
    expect(words(entry(lambda({ clock: 80 })))).not.toContain('horizontal');
  });
  test('the angles it names do hold', () => {
    const line = resolveHeader(header({ spacing: 200 })).runners[0]!.centerline!;
    for (let at = 20; at < line.length - 130; at += 30) {
      const within = /within (\d+)° of 0/.exec(words(entry(lambda({ at, clock: 180 }))))?.[1];
      expect(within).toBeDefined();
      expect(entry(lambda({ at, clock: Number(within) })).lean).toBeGreaterThanOrEqual(10);
      expect(entry(lambda({ at, clock: Number(within) + 1 })).lean).toBeLessThan(10);
    }
  });
  test('on an upright tube no clock angle helps', () => {
    const line = resolveHeader(header({ spacing: 200 })).runners[0]!.centerline!;
    const e = entry(lambda({ at: line.length - 60 }));
    expect(words(e)).toContain('move it to a flatter stretch');
  });
  test('a temperature probe may hang', () => {
    expect(words(entry(lambda({ kind: 'temperature', clock: 180 })))).not.toContain('horizontal');
  });
});

describe('along the tube', () => {
  test('beyond the end fails, naming the length', () => {
    const e = entry(lambda({ at: 900 }));
    const line = resolveHeader(header({ spacing: 200 })).runners[0]!.centerline!;
    expect(failing(e)).toHaveLength(1);
    expect(failing(e)[0]).toContain(
      `is set 900 mm along runner r1, which is ${Number(line.length.toFixed(2))} mm long: put it between 14 mm and`,
    );
  });
  test('a bung that reaches past the end fails', () => {
    expect(failing(entry(lambda({ at: 4 })))[0]).toContain('its bung reaches 10 mm past the start of runner r1');
  });
  test('on a bend it is sent to the straight beside it', () => {
    const line = resolveHeader(header({ spacing: 200 })).runners[0]!.centerline!;
    const bend = line.segments[1]!;
    const e = entry(lambda({ at: bend.station + 3 }));
    const there = Number((bend.station - 14).toFixed(2));
    expect(words(e)).toContain(`stands on bend 1: put it on the straight at ${there} mm.`);
    expect(words(entry(lambda({ at: there })))).not.toContain('bend');
  });
  test('on the inside of a bend it says so', () => {
    const line = resolveHeader(header({ spacing: 200 })).runners[0]!.centerline!;
    const bend = line.segments[1]!;
    if (bend.kind !== 'arc') throw new Error('the second segment is the first bend');
    const at = bend.station + bend.length / 2;
    const { position } = pointAt(line, at);
    const centre = bend.start.map((x, k) => x + bend.radius * bend.inward[k]!);
    const to = centre.map((x, k) => x - position[k]!);
    const clocks = Array.from({ length: 24 }, (_, k) => 15 * k);
    const facing = (clock: number): number =>
      entry(lambda({ at, clock })).axis.reduce((s, x, k) => s + x * to[k]!, 0) / bend.radius;
    const inside = clocks.reduce((a, b) => (facing(b) > facing(a) ? b : a));
    expect(words(entry(lambda({ at, clock: inside })))).toContain('the inside of bend 1');
    expect(words(entry(lambda({ at, clock: inside + 180 })))).not.toContain('inside');
  });
});

describe('what it sees', () => {
  test('in one primary it sees one cylinder', () => {
    expect(words(entry(lambda()))).toContain('sees cylinder 1 alone');
  });
  test('in the collector before the tubes have merged is a remark, past that none', () => {
    const merge = { convergence: 8 };
    expect(words(entry(lambda({ on: { merge: 'm1' }, at: 20 }), { merge }))).toContain('have not merged yet');
    const past = /put it beyond ([\d.]+) mm/.exec(words(entry(lambda({ on: { merge: 'm1' }, at: 20 }), { merge })))![1];
    expect(words(entry(lambda({ on: { merge: 'm1' }, at: Number(past) + 1 }), { merge }))).not.toContain('merged');
  });
  test('probes at unequal distances from their ports are told apart', () => {
    const other: Sensor = { id: 'egt 2', kind: 'temperature', on: { runner: 'r2' }, at: 80, clock: 0 };
    const own = lambda({ id: 'egt 1', kind: 'temperature', at: 60 });
    expect(words(entry(own, { others: [other] }))).toContain('is 60 mm from its port and egt 2 is 80 mm');
    expect(words(entry(own, { others: [{ ...other, at: 62 }] }))).not.toContain('same distance');
  });
});

describe('room', () => {
  const lid = (z: number): Surrounding => ({ id: 'lid', shape: 'box', min: [-400, -400, z], max: [400, 400, z + 20] });
  const { length, bung, hexHeight } = SENSOR_SIZES.oxygen;
  test('a lid above: the gap is to the end of what the sensor takes', () => {
    const e = entry(lambda(), { surroundings: [lid(20 + length + 25)] });
    expect(e.room!.by).toBe('lid');
    expect(e.room!.gap).toBeCloseTo(25, 3);
    expect(failing(e)).toEqual([]);
  });
  test('a lid too low: it does not fit, by how much', () => {
    const e = entry(lambda(), { surroundings: [lid(20 + length - 7)] });
    expect(failing(e)).toEqual(['Oxygen sensor lambda does not fit: it runs 7 mm into lid; turn it or move it along.']);
    expect(e.spanner.fits).toBe(true);
  });
  test('a shorter sensor fits under it', () => {
    const e = entry(lambda({ length: length - 20 }), { surroundings: [lid(20 + length - 7)] });
    expect(failing(e)).toEqual([]);
    expect(e.room!.gap).toBeCloseTo(13, 3);
  });
  test('a tight shaft of walls: the sensor fits, no spanner swings, and they are named', () => {
    const wall = (id: string, min: Vec3, max: Vec3): Surrounding => ({ id, shape: 'box', min, max });
    const [low, high] = [20 + 2, 400];
    const walls = [
      wall('left', [-400, -400, low], [-50 - 25, 400, high]),
      wall('right', [-50 + 25, -400, low], [400, 400, high]),
      wall('fore', [-50 - 25, 50 + 25, low], [-50 + 25, 400, high]),
      wall('aft', [-50 - 25, -400, low], [-50 + 25, 50 - 25, high]),
    ];
    const e = entry(lambda(), { surroundings: walls });
    expect(e.room!.gap).toBeLessThan(0);
    expect(e.spanner.fits).toBe(false);
    expect(e.spanner.by.length).toBeGreaterThan(0);
    expect(failing(e)).toHaveLength(1);
    expect(failing(e)[0]).toContain('no spanner of 22 mm can be swung on it');
    // One side taken away: the open end goes in there.
    const open = entry(lambda(), { surroundings: walls.slice(1) });
    expect(open.spanner.fits).toBe(true);
  });
  test('the handle that is drawn is clear of everything by brute force', () => {
    const post: Surrounding = { id: 'post', shape: 'capsule', a: [40, 60, -100], b: [40, 60, 200], radius: 12 };
    const e = entry(lambda(), { surroundings: [post] });
    expect(e.spanner.fits).toBe(true);
    const handle = e.solids.at(-1)!;
    expect(handle.shape).toBe('capsule');
    expect(handle.a[2]).toBeCloseTo(20 + bung.height + hexHeight, 6);
    const other = chain(resolveHeader(header({ spacing: 200 })).runners[1]!.centerline!, 20)!;
    let least = Number.POSITIVE_INFINITY;
    for (let t = 0; t <= 1; t += 0.005) {
      const p = handle.a.map((x, k) => x + t * (handle.b[k]! - x)) as unknown as Vec3;
      least = Math.min(least, Math.hypot(p[0] - 40, p[1] - 60) - 12 - handle.radius);
      for (const { points, count } of other.links)
        for (let i = 0; i <= count; i++)
          least = Math.min(
            least,
            Math.hypot(p[0] - points[3 * i]!, p[1] - points[3 * i + 1]!, p[2] - points[3 * i + 2]!) -
              20 -
              handle.radius,
          );
    }
    expect(least).toBeGreaterThan(0);
  });
});

test('a runner that is not laid is told of, not thrown at', () => {
  const design = { ...header(), sensors: [lambda()] };
  const bare = { ...design, runners: design.runners.map(({ points: _, ...r }) => r) };
  const [e] = sensorReport(resolveHeader(bare), new Map());
  expect(failing(e!)).toEqual(['Oxygen sensor lambda has no place yet, since runner r1 is not laid: lay it first.']);
});
