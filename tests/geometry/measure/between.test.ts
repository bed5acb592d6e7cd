/**
 * Measurements held against the slow search over whole surfaces (bruteForce.ts), against plain arithmetic where a case can
 * be worked by hand, and against what a dimension line must be: as long as its number, from the one surface to the other.
 */
import { describe, expect, it } from 'vitest';
import {
  type Centerline,
  components,
  distance,
  type MeasureAnswer,
  type Measurement,
  measureBetween,
  resolveHeader,
  type Thing,
} from '../../../geometry';
import type { Design, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { header as smallHeader } from '../check/header';
import {
  type Distance,
  frustumPatches,
  leastOver,
  type Patch,
  toBox,
  toCapsule,
  toFrustum,
  toTube,
  trianglePatch,
  tubePatches,
  tubeTube,
  WITHIN,
} from '../clearance/bruteForce';
import { LIMIT, randomLine, randomPoint } from '../clearance/lines';

const RADIUS = 20;
/** The searches stop where a thousandth more is not worth it. */
const FINE = 0.005;

function measured(answer: MeasureAnswer): Measurement {
  if ('missing' in answer) throw new Error(answer.missing);
  return answer;
}

/** A header whose two runners follow any line at all: to measure, nothing else of it matters. */
function withLines(lines: readonly [Centerline, Centerline], surroundings: readonly Surrounding[] = []): Design {
  const plain = smallHeader({ surroundings });
  const laid = plain.runners.map((r, i) => ({ ...r, points: lines[i]!.points, radii: lines[i]!.radii }));
  return { ...plain, runners: laid };
}

const R1: Thing = { kind: 'runner', id: 'r1' };
const R2: Thing = { kind: 'runner', id: 'r2' };

/** The number is right, and the dimension line is as long as it and lies on both surfaces. */
function expectGap({ gap }: Measurement, truth: number, onFirst: Distance, onSecond: Distance): void {
  expect(gap).not.toBeNull();
  const { value, from, to } = gap!;
  if (truth <= 0) {
    expect(value).toBeLessThan(LIMIT);
    return;
  }
  expect(value).toBeGreaterThan(truth - WITHIN - FINE);
  expect(value).toBeLessThan(truth + LIMIT);
  expect(distance(from, to)).toBeCloseTo(value, 2);
  expect(Math.hypot(...components(gap!))).toBeCloseTo(value, 2);
  expect(Math.abs(onFirst(from))).toBeLessThan(LIMIT);
  expect(Math.abs(onSecond(to))).toBeLessThan(LIMIT);
}

const randomBox = (next: Random): { min: Vec3; max: Vec3 } => {
  const [p, q] = [randomPoint(next, 150), randomPoint(next, 150)];
  const sorted = (pick: (...x: number[]) => number) => p.map((x, k) => pick(x, q[k]!)) as unknown as Vec3;
  return { min: sorted(Math.min), max: sorted(Math.max) };
};

function boxPatches(min: Vec3, max: Vec3): Patch[] {
  return [0, 1, 2].flatMap((k) =>
    [min, max].map((side): Patch => {
      const [i, j] = [(k + 1) % 3, (k + 2) % 3];
      const point = (u: number, v: number): Vec3 => {
        const p: [number, number, number] = [0, 0, 0];
        p[k] = side[k]!;
        p[i] = u;
        p[j] = v;
        return p;
      };
      return { low: [min[i]!, min[j]!], high: [max[i]!, max[j]!], speed: [1, 1], point };
    }),
  );
}

describe('gaps against the slow search', () => {
  const cases = Array.from({ length: 8 }, (_, i) => i + 1);

  it.each(cases)('two runners, seed %i', (seed) => {
    const next = random(seed);
    const lines = [randomLine(next, RADIUS), randomLine(next, RADIUS)] as const;
    const header = resolveHeader(withLines(lines));
    const [a, b] = lines.map((line) => ({ line, radius: RADIUS }));
    const truth = Math.min(tubeTube(a!, b!), tubeTube(b!, a!));
    expectGap(measured(measureBetween(header, R1, R2)), truth, toTube(lines[0], RADIUS), toTube(lines[1], RADIUS));
  });

  it.each(cases)('a runner and a box, a capsule or a mesh of one triangle, seed %i', (seed) => {
    const next = random(1000 + seed);
    const lines = [randomLine(next, RADIUS), randomLine(next, RADIUS)] as const;
    const { min, max } = randomBox(next);
    const [a, b] = [randomPoint(next, 200), randomPoint(next, 200)];
    const corners = [randomPoint(next, 250), randomPoint(next, 250), randomPoint(next, 250)] as const;
    const surroundings: Surrounding[] = [
      { id: 'box', shape: 'box', min, max },
      { id: 'rod', shape: 'capsule', a, b, radius: 9 },
      { id: 'scan', shape: 'mesh', file: 'scan.stl' },
    ];
    const header = resolveHeader(withLines(lines, surroundings));
    const meshes = new Map([['scan.stl', Float32Array.from(corners.flat())]]);
    const tube = tubePatches(lines[0], RADIUS);
    const around = (id: string): Thing => ({ kind: 'surrounding', id });
    const onTube = toTube(lines[0], RADIUS);

    const toRod = toCapsule(a, b, 9);
    expectGap(
      measured(measureBetween(header, R1, around('box'))),
      leastOver(tube, toBox(min, max)),
      onTube,
      toBox(min, max),
    );
    expectGap(measured(measureBetween(header, around('rod'), R1)), leastOver(tube, toRod), toRod, onTube);
    const toScan = (p: Vec3) => leastOver([trianglePatch(...corners)], (q) => distance(p, q));
    const truth = leastOver([trianglePatch(...corners)], onTube);
    expectGap(measured(measureBetween(header, R1, around('scan'), meshes)), truth, onTube, toScan);
  });

  it.each(cases)('a collector and a box, two boxes, a box and a capsule, seed %i', (seed) => {
    const next = random(2000 + seed);
    const [one, other] = [randomBox(next), randomBox(next)];
    const [a, b] = [randomPoint(next, 200), randomPoint(next, 200)];
    const surroundings: Surrounding[] = [
      { id: 'one', shape: 'box', ...one },
      { id: 'other', shape: 'box', ...other },
      { id: 'rod', shape: 'capsule', a, b, radius: 9 },
    ];
    const design = smallHeader({
      surroundings,
      merge: { position: randomPoint(next, 100), axis: randomPoint(next, 1) },
    });
    const header = resolveHeader(design);
    const { body } = header.merges.get('m1')!;
    const around = (id: string): Thing => ({ kind: 'surrounding', id });
    const toOne = toBox(one.min, one.max);
    const toOther = toBox(other.min, other.max);
    const merge: Thing = { kind: 'merge', id: 'm1' };

    const bodyTruth = leastOver(frustumPatches(body), toOne);
    expectGap(measured(measureBetween(header, merge, around('one'))), bodyTruth, toFrustum(body), toOne);
    // Boxes lie square to the axes: the gap is Pythagoras over the axes on which they stand apart.
    const apart = [0, 1, 2].map((k) => Math.max(0, one.min[k]! - other.max[k]!, other.min[k]! - one.max[k]!));
    const boxTruth = Math.hypot(...apart);
    expectGap(measured(measureBetween(header, around('one'), around('other'))), boxTruth, toOne, toOther);
    const rodTruth = leastOver(boxPatches(one.min, one.max), toCapsule(a, b, 9));
    expectGap(measured(measureBetween(header, around('one'), around('rod'))), rodTruth, toOne, toCapsule(a, b, 9));
  });
});

describe('worked by hand on the small header', () => {
  const header = resolveHeader(smallHeader());
  const ask = (a: Thing, b: Thing) => measured(measureBetween(header, a, b));

  it('two ports: centres 100 apart along X, edges 64, straight out both', () => {
    const found = ask({ kind: 'port', id: 'p1' }, { kind: 'port', id: 'p2' });
    expect(found.centres!.value).toBeCloseTo(100, 9);
    expect(components(found.centres!)).toEqual([100, 0, 0]);
    expect(found.gap!.value).toBeCloseTo(100 - 36, 4);
    expect(found.angle).toBeCloseTo(0, 9);
    expect(found.along).toBeNull();
  });

  it('the last straights: 50 centre to centre, 10 between their walls, parallel', () => {
    const found = ask({ kind: 'runner', id: 'r1', straight: 2 }, { kind: 'runner', id: 'r2', straight: 2 });
    expect(found.centres!.value).toBeCloseTo(50, 3);
    expect(found.gap!.value).toBeCloseTo(10, 3);
    expect(found.angle).toBeCloseTo(0, 9);
  });

  it('along one runner: stations differ by what is between them; bend to bend by the straight between', () => {
    const at = (station: number): Thing => ({ kind: 'station', id: 'r1', station });
    expect(ask(at(30), at(250)).along).toBeCloseTo(220, 9);
    const straights = header.runners[0]!.centerline!.straights;
    const [b1, b2] = [0, 1].map((bend): Thing => ({ kind: 'runner', id: 'r1', bend }));
    expect(ask(b1!, b2!).along).toBeCloseTo(straights[1]!, 9);
    expect(ask(b2!, b1!).along).toBeCloseTo(straights[1]!, 9);
  });

  it('two points: Pythagoras, and along the runner where both lie on it', () => {
    const [p, q]: Thing[] = [
      { kind: 'point', at: [0, 10, 20], on: 'runner/r1' },
      { kind: 'point', at: [3, 14, 32], on: 'runner/r1' },
    ] as Thing[];
    const found = ask(p!, q!);
    expect(found.gap!.value).toBeCloseTo(13, 9);
    expect(components(found.gap!)).toEqual([3, 4, 12].map((x) => expect.closeTo(x, 9)));
    // Runner r1 starts along Y: both lie beside its first straight.
    expect(found.along).toBeCloseTo(4, 9);
  });

  it('inlet to outlet: the length of the collector; an axis that points neither way folds the angle', () => {
    const found = ask({ kind: 'merge', id: 'm1', mouth: 1 }, { kind: 'merge', id: 'm1', mouth: 'outlet' });
    // The inlet sits half the pitch, 25 mm, beside the axis; the outlet is 120 mm on.
    expect(found.centres!.value).toBeCloseTo(Math.hypot(25, 120), 9);
    const rod: Surrounding = { id: 'rod', shape: 'capsule', a: [0, 500, 0], b: [0, 400, 0], radius: 5 };
    const around = resolveHeader(smallHeader({ surroundings: [rod] }));
    const answer = measured(measureBetween(around, { kind: 'port', id: 'p1' }, { kind: 'surrounding', id: 'rod' }));
    expect(answer.angle).toBeCloseTo(0, 9);
    expect(answer.gap!.value).toBeCloseTo(395, 3);
  });

  it('two bolt holes of a flange: centres and the steel between', () => {
    const design = smallHeader();
    const hole = (x: number) => ({ position: [x, 0, 0] as const, kind: 'stud', thread: 'M8', hole: 9 });
    const flanged = {
      ...design,
      flanges: [{ id: 'f1', ports: ['p1', 'p2'], thickness: 10, fasteners: [hole(-40), hole(30)] }],
    };
    const bolt = (index: number): Thing => ({ kind: 'fastener', id: 'f1', index });
    const found = measured(measureBetween(resolveHeader(flanged), bolt(0), bolt(1)));
    expect(found.centres!.value).toBeCloseTo(70, 9);
    expect(found.gap!.value).toBeCloseTo(61, 4);
  });

  it('rectangular and oval openings reach as far as they do', () => {
    const wide = (opening: Design['ports'][number]['opening']) =>
      measured(
        measureBetween(
          resolveHeader(smallHeader({ port: { opening } })),
          { kind: 'port', id: 'p1' },
          { kind: 'point', at: [60, 0, 0] },
        ),
      ).gap!.value;
    expect(wide({ shape: 'rounded-rectangle', width: 50, height: 30, corner: 6 })).toBeCloseTo(35, 4);
    expect(wide({ shape: 'oval', width: 44, height: 30 })).toBeCloseTo(38, 4);
    // Up on the oval's corner: its round end has a radius of 15 about (7, 0).
    const above = measured(
      measureBetween(
        resolveHeader(smallHeader({ port: { opening: { shape: 'oval', width: 44, height: 30 } } })),
        { kind: 'point', at: [7 + 30, 0, 40] },
        { kind: 'port', id: 'p1' },
      ),
    );
    expect(above.gap!.value).toBeCloseTo(50 - 15, 4);
  });
});

describe('what cannot be measured', () => {
  const header = resolveHeader(smallHeader({ surroundings: [{ id: 'scan', shape: 'mesh', file: 'bay.stl' }] }));
  const why = (a: Thing, b: Thing) => {
    const answer = measureBetween(header, a, b);
    return 'missing' in answer ? answer.missing : null;
  };

  it('says what is gone, by name', () => {
    expect(why({ kind: 'runner', id: 'r9' }, R1)).toMatch(/no runner r9/);
    expect(why(R1, { kind: 'runner', id: 'r1', bend: 7 })).toMatch(/r1 has no bend 8/);
    expect(why({ kind: 'merge', id: 'm1', mouth: 5 }, R1)).toMatch(/inlet 5 of collector m1/);
    expect(why({ kind: 'surrounding', id: 'scan' }, R1)).toMatch(/bay\.stl.*not open/);
  });

  it('a part of a runner and the whole are not apart: no gap, rather than a wrong one', () => {
    const found = measured(measureBetween(header, R1, { kind: 'runner', id: 'r1', bend: 0 }));
    expect(found.gap).toBeNull();
    expect(found.along).toBe(0);
  });
});
