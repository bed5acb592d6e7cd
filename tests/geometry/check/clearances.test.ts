/** Rules between things: each broken by a hundredth of a millimetre more than allowed, and kept by as much. */
import { describe, expect, test } from 'vitest';
import { check, type Meshes } from '../../../geometry';
import type { Design, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { header } from './header';

const problemsOf = (design: Design, meshes?: Meshes) => check(design, meshes).problems;
const HAIR = 0.01;

/** The one problem there is. */
function only(design: Design, meshes?: Meshes) {
  const problems = problemsOf(design, meshes);
  expect(problems.map((p) => p.message)).toHaveLength(1);
  return problems[0]!;
}

describe('tube-to-tube', () => {
  test('outside the bundle the whole gap is needed', () => {
    // 50 mm apart on centre: a gap of 10 where they run straight to the collector, 54 mm of that before the bundle.
    expect(problemsOf(header({ tubeToTube: 10 - HAIR }))).toEqual([]);
    const problem = only(header({ tubeToTube: 10 + HAIR }));
    expect(problem).toMatchObject({ rule: 'tube-to-tube', where: 'runners/r1', allowed: 10 + HAIR });
    expect(problem.found).toBeCloseTo(10, 2);
    expect(problem.message).toMatch(
      /^Runners r1 and r2 are 10 mm apart at r1's (?:straight 3|bend 2), 0\.01 mm too near: 10\.01 mm is needed/,
    );
    expect(problem.at).toBeDefined();
  });
  test('both within the bundle they may overlap by 0.05', () => {
    const bundled = (pitch: number) => header({ pitch, tubeToTube: 0, merge: { bundle: 150 } });
    expect(problemsOf(bundled(39.95 + HAIR))).toEqual([]);
    const problem = only(bundled(39.95 - HAIR));
    expect(problem).toMatchObject({ rule: 'tube-to-tube', allowed: -0.05 });
    expect(problem.found).toBeCloseTo(-0.06, 2);
    expect(problem.message).toMatch(/overlap by 0\.06 mm .+: move them 0\.01 mm apart/);
    // The same tubes where the bundle is too short for them.
    expect(problemsOf(header({ pitch: 39.96, tubeToTube: 0, merge: { bundle: 60 } }))).toMatchObject([{ allowed: 0 }]);
  });
  test('siamesed ports: both within their ports’ bundle', () => {
    const siamesed = (spacing: number, bundle: number) => header({ spacing, tubeToTube: 2, port: { bundle } });
    expect(problemsOf(siamesed(39.95 + HAIR, 210))).toEqual([]);
    expect(only(siamesed(39.95 - HAIR, 210))).toMatchObject({ rule: 'tube-to-tube', allowed: -0.05 });
    expect(problemsOf(siamesed(39.95 + HAIR, 100))).toMatchObject([{ rule: 'tube-to-tube', allowed: 2 }]);
  });
});

describe('surroundings', () => {
  // r1 starts along the y axis, its side 20 from it.
  const box = (g: number): Surrounding => ({
    id: 'mount',
    shape: 'box',
    min: [-90, 20, -50],
    max: [-20 - g, 90, 50],
    clearance: 5,
  });
  const rod = (g: number): Surrounding => ({
    id: 'mount',
    shape: 'capsule',
    a: [-32 - g, 20, 0],
    b: [-32 - g, 90, 0],
    radius: 12,
    clearance: 5,
  });
  const sheet = (g: number): Surrounding => ({
    id: 'mount',
    shape: 'mesh',
    file: 'sheet.stl',
    unit: 'cm',
    // The file's x runs down, its y along the tube: its flat z = 0 stands beside the tube.
    pose: { position: [-20 - g, 0, 0], x: [0, 0, -1], y: [0, 1, 0] },
    clearance: 5,
  });
  const meshes: Meshes = new Map([['sheet.stl', Float32Array.of(-5, 2, 0, 5, 2, 0, 0, 9, 0)]]);
  test.each([
    ['a box', box],
    ['a capsule', rod],
    ['a mesh in centimetres, posed', sheet],
  ] as const)('%s', (_, make) => {
    expect(problemsOf(header({ surroundings: [make(5 + HAIR)] }), meshes)).toEqual([]);
    const problem = only(header({ surroundings: [make(5 - HAIR)] }), meshes);
    expect(problem).toMatchObject({ rule: 'surroundings', where: 'runners/r1', allowed: 5 });
    expect(problem.found).toBeCloseTo(5 - HAIR, 3);
    expect(problem.message).toMatch(
      /^Runner r1 is 0\.01 mm too close to the mount: move straight 1 out, or allow 4\.99 mm/,
    );
    expect(only(header({ surroundings: [make(-3)] }), meshes).message).toMatch(
      /runs 3 mm into the mount at straight 1: move it 8 mm away/,
    );
  });
  test('a head behind the flange is measured to the flat end', () => {
    const head = (y: number): Surrounding => ({
      id: 'head',
      shape: 'box',
      min: [-90, -90, -90],
      max: [200, -y, 90],
      clearance: 8,
    });
    expect(problemsOf(header({ surroundings: [head(8 + HAIR)] }))).toEqual([]);
    expect(problemsOf(header({ surroundings: [head(8 - HAIR)] })).map((p) => p.where)).toEqual([
      'runners/r1',
      'runners/r2',
    ]);
  });
  test('a mesh that is not loaded is not passed over', () => {
    expect(only(header({ surroundings: [sheet(50)] }))).toMatchObject({
      rule: 'document',
      where: 'surroundings/mount/file',
      allowed: 'sheet.stl',
      message: expect.stringMatching(/sheet\.stl of mount is not loaded.+: put it beside the design/),
    });
  });
});

describe('merge-body', () => {
  // The collector's body: radius 45 at its inlets (z = −200), 30 at its outlet (z = −320).
  test('a surrounding', () => {
    const floor = (z: number): Surrounding => ({
      id: 'floor',
      shape: 'box',
      min: [-200, 0, -500],
      max: [300, 600, z],
      clearance: 40,
    });
    // A surrounding's clearance is for tubes; bodies must not overlap it.
    expect(problemsOf(header({ surroundings: [floor(-320 - HAIR)] }))).toEqual([]);
    const problem = only(header({ surroundings: [floor(-320 + HAIR)] }));
    expect(problem).toMatchObject({ rule: 'merge-body', where: 'merges/m1', allowed: 0 });
    expect(problem.found).toBeCloseTo(-HAIR, 4);
    expect(problem.message).toMatch(/^Collector m1 reaches 0\.01 mm into the floor: move one of them/);
  });
  const second = (position: Vec3): Design => {
    const design = header({ tubeToTube: 0 });
    const merge = { ...design.merges[0]!, id: 'm2', inlets: 1, position };
    return { ...design, merges: [...design.merges, merge] };
  };
  test('another body', () => {
    expect(problemsOf(second([50, 300, -320 - HAIR]))).toEqual([]);
    expect(only(second([50, 300, -320 + HAIR])).message).toMatch(/m1 reaches 0\.01 mm into collector m2/);
  });
  test('a runner that neither enters nor leaves it', () => {
    const passing = (away: number): Design => {
      const y = 300 + 45 + 20 + away;
      const design = second([50, y, -600]);
      const port = {
        ...design.ports[0]!,
        id: 'p3',
        cylinder: 3,
        position: [50, y, -100] as Vec3,
        direction: [0, 0, -1] as Vec3,
        up: [1, 0, 0] as Vec3,
      };
      const runner = {
        id: 'r3',
        tube: 'primary',
        from: { port: 'p3' },
        to: { merge: 'm2', inlet: 1 },
        points: [
          [50, y, -100],
          [50, y, -600],
        ] as Vec3[],
      };
      return { ...design, ports: [...design.ports, port], runners: [...design.runners, runner] };
    };
    expect(problemsOf(passing(HAIR))).toEqual([]);
    const problem = only(passing(-HAIR));
    expect(problem).toMatchObject({ rule: 'merge-body', where: 'merges/m1' });
    expect(problem.message).toContain('runner r3');
  });
});

test('self: legs that cross over one another', () => {
  const looped = (height: number): Design =>
    header({
      r1: {
        points: [
          [0, 0, 0],
          [0, 300, 0],
          [-150, 300, 0],
          [-150, 150, height],
          [150, 150, height],
        ],
      },
    });
  const found = (height: number) => problemsOf(looped(height)).filter((p) => p.rule === 'self');
  expect(found(40 + HAIR)).toEqual([]);
  const [problem] = found(40 - HAIR);
  expect(problem).toMatchObject({ where: 'runners/r1', allowed: 0 });
  expect(problem!.found).toBeCloseTo(-HAIR, 3);
  expect(problem!.message).toMatch(/r1 runs 0\.01 mm into itself at .+: open the bend, or move the legs apart/);
});

test('least margins: gap, required, between whom, where', () => {
  const shelf: Surrounding = { id: 'shelf', shape: 'box', min: [-90, 20, -50], max: [-32, 90, 50], clearance: 5 };
  const { clearance } = check(header({ surroundings: [shelf] }));
  expect(clearance.tubeToTube).toMatchObject({ required: 4, between: ['r1', 'r2'] });
  expect(clearance.tubeToTube!.gap).toBeCloseTo(10, 2);
  expect(clearance.tubeToTube!.margin).toBeCloseTo(6, 2);
  expect(clearance.surroundings).toMatchObject({ required: 5, between: ['r1', 'shelf'] });
  expect(clearance.surroundings!.gap).toBeCloseTo(12, 3);
  expect(clearance.mergeBodies).toMatchObject({ required: 0, between: ['m1', 'shelf'] });
});
