/** Gas paths of laid-out headers: lengths and bores against the geometry kernel, ends by the rig's own checks. */
import { describe, expect, test } from 'vitest';
import { areaSchedule, resolveHeader } from '../../../geometry';
import { balanceLength } from '../../../geometry/check/lengths';
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { laidOutPath } from '../../../src/pulse/path/laidOut';
import { coveredCylinders } from '../../../src/pulse/path/reading';
import type { GasPath, PathPipe } from '../../../src/pulse/path/types';
import { ductsOf } from '../../../src/pulse/rig/ducts';
import type { JunctionEnd } from '../../../src/pulse/rig/types';
import { example, routed, unrouted } from './designs';
import { rigged } from './rigged';

const pipe = (path: GasPath, id: string): PathPipe => path.pipes.find((one) => one.id === id)!;
const area = (d: number): number => (Math.PI / 4) * d * d;

function refusal(design: Design): DesignError {
  try {
    laidOutPath(design);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return error as DesignError;
  }
  throw new Error('was accepted');
}

test('there are laid-out and bare layouts to try', () => {
  expect(routed.length).toBeGreaterThan(45);
  expect(unrouted.length).toBeGreaterThan(45);
});

describe.each(routed)('$name', ({ design }) => {
  const { path } = laidOutPath(design);
  const header = resolveHeader(design);

  test('is a rig that nothing is refused of, every end of every pipe once', () => {
    expect(rigged(path).pipes).toHaveLength(path.pipes.length);
  });

  test('runners are as long as for balance, in tubes of their own bore', () => {
    for (const r of header.runners) {
      const of = path.pipes.filter(({ part }) => part && 'runner' in part && part.runner === r.runner.id);
      expect(of).toHaveLength(1);
      expect(of[0]!.length).toBe(balanceLength(r) / 1000);
      expect(of[0]!.diameter.at(-1)![1]).toBe((r.tube.outsideDiameter - 2 * r.tube.wall) / 1000);
      expect(of[0]!.inHead).toBe(r.lengthInHead / 1000);
    }
  });

  test('gas fills the tubes: their bore times their centerline, but for the taper at the start', () => {
    const ducts = ductsOf({ pipes: path.pipes.map((one) => ({ ...one, cells: 1 })), ends: [] });
    for (const r of header.runners) {
      const k = path.pipes.findIndex(({ part }) => part && 'runner' in part && part.runner === r.runner.id);
      const { inHead, length, diameter } = path.pipes[k]!;
      const [, own] = diameter.at(-1)!;
      const [, from] = diameter.filter(([x]) => x === 0 || x === inHead).at(-1)!;
      const taper = diameter.at(-2)![0] - inHead;
      const filled = ducts[k]!.volumeBetween(inHead, length);
      const tube = area(own) * (r.centerline!.length / 1000);
      expect(Math.abs(filled - tube)).toBeLessThanOrEqual(Math.abs(area(from) - area(own)) * taper + 1e-15);
    }
  });

  test('collectors begin with the area of all that enters and end inside their outlets', () => {
    for (const { merge, wall } of header.merges.values()) {
      const cone = path.pipes.find(({ part }) => part && 'merge' in part && part.merge === merge.id)!;
      const bores = header.runners
        .filter(({ runner }) => runner.to.merge === merge.id)
        .map(({ tube }) => (tube.outsideDiameter - 2 * tube.wall) / 1000);
      expect(area(cone.diameter[0]![1])).toBeCloseTo(
        bores.reduce((sum, d) => sum + area(d), 0),
        12,
      );
      expect(cone.diameter.at(-1)![1]).toBeCloseTo((merge.outletDiameter - 2 * wall) / 1000, 12);
      expect(cone.length).toBe(merge.length / 1000);
    }
  });

  test('valves cover the cylinders, each one whole', () => {
    const cylinders = [...new Set(design.ports.map(({ cylinder }) => cylinder))].sort((a, b) => a - b);
    expect(coveredCylinders(path)).toEqual(cylinders);
    for (const c of cylinders) {
      const shares = path.valves.filter(({ cylinder }) => cylinder === c).map(({ share }) => share);
      expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 15);
    }
  });

  test('where two pipes follow each other their bores are one', () => {
    for (const end of path.ends) {
      if (end.kind !== 'junction' || end.at.length !== 2) continue;
      const [a, b] = end.at;
      const finish = pipe(path, a![0]).diameter.at(-1)![1];
      expect(pipe(path, b![0]).diameter[0]![1]).toBeCloseTo(finish, 15);
    }
  });
});

test.each(unrouted)('$name: what is not laid out is refused with its place and the remedy', ({ design }) => {
  const missing = design.runners.find(({ points }) => points === undefined)!;
  const { path, allowed } = refusal(design);
  expect(path).toBe(`runners/${missing.id}/points`);
  expect(allowed).toMatch(/lay the runner out.*exhaust\/sketch/);
});

describe('one four into one', () => {
  const design = example('four-4-1');
  const { path, assumed } = laidOutPath(design);

  test('a primary begins at the throats of its valves and opens to the port, then to the tube', () => {
    const [valve, port, tube, end] = pipe(path, 'r1').diameter;
    // Two valves of 28 mm, throats of 0.85 of that: 0.85 × 28 × √2.
    expect(valve).toEqual([0, expect.closeTo(0.0336583, 6)]);
    expect(port).toEqual([0.084, 0.037]);
    expect(tube).toEqual([expect.closeTo(0.094, 12), expect.closeTo(0.0394, 12)]);
    expect(end![1]).toBe(tube![1]);
  });

  test('what enters the collector leans toward its axis as drawn, from all round', () => {
    const joint = path.ends.find((end): end is JunctionEnd => end.kind === 'junction' && end.at.length === 5)!;
    const directions = joint.directions!;
    const lean = (design.merges[0]!.convergence! * Math.PI) / 180;
    for (const [x, y, z] of directions.slice(0, 4)) {
      expect(Math.hypot(x, y)).toBeCloseTo(Math.sin(lean), 12);
      expect(z).toBeCloseTo(-Math.cos(lean), 12);
    }
    expect(directions[4]).toEqual([0, 0, 1]);
    for (const k of [0, 1, 2])
      expect(directions.reduce((sum, d) => sum + d[k]!, 0)).toBeCloseTo([0, 0, 1 - 4 * Math.cos(lean)][k]!, 12);
  });

  test('the tailpipe that is not given is assumed by name', () => {
    expect(assumed).toHaveLength(1);
    expect(assumed[0]).toMatchObject({ path: 'exhaust/tailpipe', taken: '2000 mm long, 57.3 mm inside, no silencer' });
    expect(pipe(path, 'tailpipe')).toMatchObject({ length: 2, role: 'tailpipe' });
  });

  test('one that is given is taken, through a taper, with its silencer over the mouth', () => {
    const given = laidOutPath({ ...design, exhaust: { tailpipe: { length: 1500, bore: 50, silencer: 3 } } });
    expect(given.assumed).toEqual([]);
    expect(pipe(given.path, 'tailpipe').diameter).toEqual([
      [0, expect.closeTo(0.0573, 12)],
      [expect.closeTo(0.01, 12), 0.05],
      [1.5, 0.05],
    ]);
    // Four dynamic pressures lost in all: a jet twice as fast, from half the area.
    expect(given.path.ends.at(-1)).toMatchObject({ kind: 'open', area: expect.closeTo(area(0.05) / 2, 12) });
    expect(rigged(given.path).pipes).toHaveLength(6);
  });

  test('without valves the port is as wide as its opening', () => {
    const { exhaustValve: _, ...engine } = design.engine!;
    const bare = laidOutPath({ ...design, engine });
    expect(pipe(bare.path, 'r1').diameter[0]).toEqual([0, 0.037]);
  });

  test('without a length in the head there is no throat', () => {
    const ports = design.ports.map(({ lengthInHead: _, ...port }) => port);
    const short = laidOutPath({ ...design, ports });
    expect(pipe(short.path, 'r1').diameter.slice(0, 2)).toEqual([
      [0, 0.037],
      [0.01, expect.closeTo(0.0394, 12)],
    ]);
  });

  test('a collector named as a runner keeps its part and gets a name of its own', () => {
    const merges = design.merges.map((merge) => ({ ...merge, id: 'R1' }));
    const runners = design.runners.map((runner) => ({ ...runner, to: { ...runner.to, merge: 'R1' } }));
    const { pipes } = laidOutPath({ ...design, merges, runners }).path;
    expect(pipes.find(({ role }) => role === 'collector')).toMatchObject({ id: 'R1 2', part: { merge: 'R1' } });
    expect(pipes[0]).toMatchObject({ id: 'r1', part: { runner: 'r1' } });
  });

  test('a port that leads nowhere, a collector that nothing enters and a length of nothing are refused', () => {
    const lone = refusal({ ...design, runners: design.runners.slice(1) });
    expect(lone).toMatchObject({ path: 'ports/p1', found: 'no runner that starts there' });
    const flat = refusal({ ...design, merges: design.merges.map((merge) => ({ ...merge, length: 4 })) });
    expect(flat).toMatchObject({ path: 'merges/collector/length', found: '4 mm', allowed: 'at least 10 mm' });
    expect(refusal({ ...design, runners: [] }).path).toBe('runners');
    const thin = refusal({ ...design, tubes: { primary: { outsideDiameter: 6, wall: 1 } } });
    expect(thin).toMatchObject({ path: 'runners/r1', found: 'a bore of 4 mm', allowed: '5 to 500 mm' });
  });
});

test('four-4-2-1: primaries, pairs, secondaries, collector, tailpipe', () => {
  const { path } = laidOutPath(example('four-4-2-1'));
  expect(path.pipes.map(({ id, role }) => `${role} ${id}`)).toEqual([
    'primary r1',
    'primary r2',
    'primary r3',
    'primary r4',
    'collector pair 1-4',
    'secondary s14',
    'collector pair 2-3',
    'secondary s23',
    'collector collector',
    'tailpipe tailpipe',
  ]);
  // The transition is the taper from the port: 14 mm behind a head part of 76 mm.
  expect(pipe(path, 'r1').diameter[2]![0]).toBeCloseTo(0.09, 12);
});

test('a transition holds as much as the one that is made, lofted from the port to the tube', async () => {
  const design = example('four-4-2-1');
  const { path } = laidOutPath(design);
  const { stations } = (await areaSchedule(resolveHeader(design), 'p1'))!;
  const made = stations
    .slice(1)
    .reduce((sum, { z, area: a }, i) => sum + ((a + stations[i]!.area) / 2) * (z - stations[i]!.z), 0);
  const [duct] = ductsOf({ pipes: path.pipes.map((one) => ({ ...one, cells: 1 })), ends: [] });
  expect(duct!.volumeBetween(0.076, 0.09) / (made * 1e-9)).toBeCloseTo(1, 2);
});

test('both banks of a V8 have a tailpipe each; one bank covers its own cylinders', () => {
  const both = laidOutPath(example('v8-both-banks')).path;
  expect(both.pipes.filter(({ role }) => role === 'tailpipe').map(({ id }) => id)).toEqual([
    'tailpipe 1',
    'tailpipe 2',
  ]);
  expect(coveredCylinders(both)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(coveredCylinders(laidOutPath(example('v8-left-bank-4-1')).path)).toEqual([1, 3, 5, 7]);
});

test('two ports of one cylinder share its valves and its throats', () => {
  const twin = routed.find(({ name }) => name === 'tests/layouts/known/c5-twin-port-single')!.design;
  const valve = { count: 2, diameter: 30, lift: 8, opens: -240, closes: 20 };
  const { path } = laidOutPath({ ...twin, engine: { ...twin.engine, exhaustValve: valve } });
  expect(path.valves.map(({ cylinder, share }) => [cylinder, share])).toEqual([
    [1, 0.5],
    [1, 0.5],
  ]);
  expect(path.pipes[0]!.diameter[0]![1]).toBeCloseTo(0.0255, 12);
});
