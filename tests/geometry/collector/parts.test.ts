/** Collectors of one to six inlets, ring and line, leaning or not: every piece sound, its volume true, its place right; and what cannot be built is told. */
import { describe, expect, test } from 'vitest';
import {
  boundsOf,
  collectorParts,
  collectorPlan,
  measureMesh,
  meshProblems,
  placedMesh,
  resolveHeader,
  roundedToFloat32,
} from '../../../geometry';
import type { Merge } from '../../../shared/design/types';
import { collectorHeader, JOINTS, PATTERNS } from './designs';

const OUTLETS = [42.4, 50, 57, 60.3, 70, 76.1];

const CASES = PATTERNS.flatMap((pattern) =>
  [1, 2, 3, 4, 5, 6].flatMap((inlets) =>
    [0, 5, 8, 12, 20].flatMap((convergence) =>
      [0, 1.2].map((weldGap) => ({ pattern, inlets, convergence, weldGap }) satisfies Partial<Merge>),
    ),
  ),
);

describe.each(CASES)('$inlets in a $pattern, $convergence°, weld gap $weldGap', ({ inlets, ...rest }) => {
  const header = collectorHeader({
    inlets,
    ...rest,
    length: 180,
    outletDiameter: OUTLETS[inlets - 1]!,
    outletJoint: JOINTS[inlets % 5]!,
  });
  const made = collectorParts(header);

  test('is made of sound pieces that hold what they should, or says why not', () => {
    expect(made.parts.length > 0).toBe(made.notMade.length === 0);
    for (const part of made.parts) {
      const mesh = placedMesh(part);
      expect(meshProblems(roundedToFloat32(mesh)), part.id).toEqual([]);
      expect(Math.abs(measureMesh(mesh).volume / part.volume - 1), part.id).toBeLessThan(1e-3);
    }
    expect(new Set(made.parts.map((p) => p.id)).size).toBe(made.parts.length);
  });
});

const named = (change: Partial<Merge>) => collectorParts(collectorHeader(change)).parts.map((p) => p.name);

describe('what it is made of', () => {
  test('tubes that meet: a tube an inlet, the filler in the well between them, cone, outlet and joint', () => {
    expect(named({ outletJoint: 'slip' })).toEqual([
      'stub 1',
      'stub 2',
      'stub 3',
      'stub 4',
      'filler',
      'cone',
      'outlet',
      'joint',
    ]);
  });

  test('tubes that do not lean: a plate, on it the pointed filler', () => {
    expect(named({ convergence: 0 })).toEqual(['filler', 'plate', 'cone', 'outlet']);
  });

  test('two tubes have no well between them', () => {
    expect(named({ inlets: 2, outletDiameter: 50 })).toEqual(['stub 1', 'stub 2', 'cone', 'outlet']);
  });

  test('a collector that another runner leaves has no joint', () => {
    const { design } = collectorHeader({ outletJoint: 'slip' });
    const second: Merge = { ...design.merges[0]!, id: 'm2', position: [150, 400, -900], inlets: 1 };
    const runner = { id: 's', tube: 'primary', from: { merge: 'm1' }, to: { merge: 'm2' } };
    const both = resolveHeader({
      ...design,
      merges: [design.merges[0]!, second],
      runners: [...design.runners, runner],
    });
    expect(
      collectorParts(both)
        .parts.filter((p) => p.kind === 'joint')
        .map((p) => p.of.id),
    ).toEqual(['m2']);
  });
});

describe('gaps', () => {
  /** In the collector's own frame. */
  const heights = (change: Partial<Merge>, name: string) => {
    const part = collectorParts(collectorHeader(change)).parts.find((p) => p.name === name)!;
    return boundsOf(part.mesh);
  };

  test('are left between tubes, cone and outlet', () => {
    const plan = collectorPlan(...only({ weldGap: 1.2 }));
    expect(heights({ weldGap: 1.2 }, 'cone').min[2]).toBeCloseTo(plan.tubesEnd + 1.2, 9);
    expect(heights({ weldGap: 1.2 }, 'cone').max[2]).toBeCloseTo(plan.coneEnd, 9);
    expect(heights({ weldGap: 1.2 }, 'outlet').min[2]).toBeCloseTo(plan.coneEnd + 1.2, 9);
    expect(heights({ weldGap: 1.2 }, 'outlet').max[2]).toBeCloseTo(160, 9);
  });

  test('a slip joint’s sleeve stands off its outlet by the slip gap', () => {
    const sleeve = heights({ outletJoint: 'slip', slipGap: 0.4 }, 'joint');
    // Outlet 60.3 outside, sleeve of the collector's own wall, 1.5.
    expect(sleeve.max[0] - sleeve.min[0]).toBeCloseTo(60.3 + 2 * (0.4 + 1.5), 9);
  });
});

const only = (change: Partial<Merge>) => {
  const header = collectorHeader(change);
  return [header, header.merges.get('m1')!] as const;
};

describe('what cannot be built is told with its place and remedy', () => {
  test.each<[string, Partial<Merge>, string, RegExp]>([
    [
      'inlets that overlap',
      { pitch: 40 },
      'merges/m1/pitch',
      /overlap by 2\.19 mm: tubes of 42\.4 mm stand at a pitch of 40 mm.*at least 42\.2 mm/,
    ],
    [
      'no room for a cone',
      { length: 30 },
      'merges/m1/length',
      /left for its cone, which needs at least 15 mm: make the collector 35\.\d+ mm long/,
    ],
    [
      'tubes let run on until they cross',
      { mergingLength: 230, length: 400 },
      'merges/m1/mergingLength',
      /cross 213\.33 mm from the inlets/,
    ],
    [
      'tubes let run on too short to meet',
      { mergingLength: 20 },
      'merges/m1/mergingLength',
      /too near for a plate, too far to meet/,
    ],
    [
      'a clamp’s band that would stand on the cone',
      { outletJoint: 'band-clamp', outletLength: 5 },
      'merges/m1/outletLength',
      /takes 23\.5 mm of plain outlet, and 5 mm is left.*at least 23\.5 mm/,
    ],
    [
      'a flange that would',
      { outletJoint: 'flange', outletLength: 0 },
      'merges/m1/outletLength',
      /takes 10 mm of plain outlet/,
    ],
    [
      'an outlet longer than the collector',
      { outletLength: 200 },
      'merges/m1/outletLength',
      /Nothing is left for its cone/,
    ],
    [
      'leaning ends that reach into the plate',
      { mergingLength: 0 },
      'merges/m1/mergingLength',
      /reach 2\.95 mm past the plane .* at least 3\.95 mm/,
    ],
    [
      'tubes that lean too far to be cut',
      { convergence: 70, pitch: 75, length: 300 },
      'merges/m1/convergence',
      /lean by 70°/,
    ],
    [
      'a weld gap as long as the outlet',
      { weldGap: 12 },
      'merges/m1/weldGap',
      /weld gap of 12 mm leaves nothing of its outlet of 10 mm/,
    ],
    ['a wall that leaves no bore', { wall: 22 }, 'merges/m1/wall', /leaves no bore/],
  ])('%s', (_, change, where, message) => {
    const { parts, notMade } = collectorParts(collectorHeader(change));
    expect(parts).toEqual([]);
    expect(notMade).toHaveLength(1);
    expect(notMade[0]!.where).toBe(where);
    expect(notMade[0]!.message).toMatch(message);
  });

  test('a pitch at its least is built', () => {
    expect(collectorParts(collectorHeader({ pitch: 42.36 })).notMade).toEqual([]);
  });

  test.each<[string, Partial<Merge>, string, RegExp]>([
    ['a cone that widens', { outletDiameter: 200 }, 'outletDiameter', /widens at \d+°.* leaves the wall/],
    [
      'an outlet narrower than an inlet',
      { outletDiameter: 40, length: 300 },
      'outletDiameter',
      /bore of 37 mm is narrower than one inlet's, 39\.4 mm/,
    ],
    ['tubes that lean much', { convergence: 24 }, 'convergence', /lean by 24°/],
    ['a weld gap wider than the wall', { weldGap: 2, pitch: 48 }, 'weldGap', /2 mm is wider than the wall of 1\.5 mm/],
    ['cuts that reach the square end', { weldGap: 1 }, 'pitch', /nothing of the tube is left .* at least 43\.\d mm/],
  ])('%s is built, with a warning', (_, change, field, message) => {
    const { parts, warnings } = collectorParts(collectorHeader(change));
    expect(parts.length).toBeGreaterThan(0);
    const found = warnings.find((w) => w.where === `merges/m1/${field}`);
    expect(found?.message).toMatch(message);
  });

  test('the pitch that is asked for is enough', () => {
    const warned = collectorParts(collectorHeader({ weldGap: 1 })).warnings[0]!;
    const pitch = Number(/at least ([\d.]+) mm/.exec(warned.message)![1]);
    expect(collectorParts(collectorHeader({ weldGap: 1, pitch })).warnings).toEqual([]);
    expect(collectorParts(collectorHeader({ weldGap: 1, pitch: pitch - 0.2 })).warnings).toHaveLength(1);
  });

  test('a cone that is steep is built, with a warning', () => {
    const { parts, warnings } = collectorParts(collectorHeader({ outletDiameter: 44, length: 120 }));
    expect(parts.length).toBeGreaterThan(0);
    expect(warnings).toHaveLength(1);
    expect(warnings[0]!.message).toMatch(/narrows at \d\d° .* under 25°/);
  });
});
