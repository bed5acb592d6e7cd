/** What two versions differ in, against edits made on purpose. */
import { describe, expect, test } from 'vitest';
import { compareDesigns } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { publicDesign } from './designs';

const design: Design = publicDesign('c1-i4-4-1-rear-down');
const withRunner = (id: string, change: (r: Design['runners'][number]) => object): Design => ({
  ...design,
  runners: design.runners.map((r) => (r.id === id ? { ...r, ...change(r) } : r)),
});

describe('compareDesigns', () => {
  test('a design with itself, its lists and fields in another order: the same things', () => {
    expect(compareDesigns(design, structuredClone(design)).same).toBe(true);
    const turned = Object.fromEntries(Object.entries(design).reverse()) as unknown as Design;
    expect(compareDesigns(design, turned).same).toBe(true);
    const shuffled = { ...design, runners: [...design.runners].reverse() };
    const { changes } = compareDesigns(design, shuffled);
    expect(changes.map(({ path, kind }) => [path, kind])).toEqual([['runners', 'changed']]);
  });

  test('a point moved is one change, and its runner alone is another length', () => {
    const moved = withRunner('r2', (r) => ({
      points: r.points!.map((p, i) => (i === 1 ? [p[0], p[1] + 5, p[2]] : p)),
    }));
    const { changes, runners, groups } = compareDesigns(design, moved);
    expect(changes).toHaveLength(1);
    expect(changes[0]).toMatchObject({ path: 'runners/r2/points/1', kind: 'changed' });
    for (const { id, before, after } of runners) {
      if (id === 'r2') expect(after!.length - before!.length).toBeGreaterThan(1);
      else expect(after!.length).toBe(before!.length);
    }
    expect(groups[0]!.after!.spread).toBeGreaterThan(groups[0]!.before!.spread + 1);
  });

  test('added, removed and changed are told apart by id', () => {
    const spare = (id: string) => ({ ...design.ports[0]!, id });
    const before = { ...design, title: 'One', ports: [spare('px'), ...design.ports] };
    const { clearance: _, ...without } = design;
    const after: Design = { ...without, title: 'Another', ports: [...design.ports, spare('py')] };
    const found = compareDesigns(before, after).changes.map(({ path, kind }) => `${path} ${kind}`);
    expect(found.sort()).toEqual(['clearance removed', 'ports/px removed', 'ports/py added', 'title changed']);
  });

  test('what it must fit into is told field by field: motion, wrap, tools, service points, sensors, crops', () => {
    const scan = { id: 'bay scan', shape: 'mesh', file: 'bay.stl' } as const;
    const probe = { id: 'egt 1', kind: 'temperature', on: { runner: 'r1' }, at: 60, clock: 0 } as const;
    const plug = { id: 'plug 1', kind: 'spark-plug', position: [0, 0, 90], direction: [0, 0, 1] } as const;
    const corners = [
      [-400, 0, -600],
      [400, 500, 100],
    ] as const;
    const before: Design = {
      ...withRunner('r1', () => ({ wrapped: [[40, 180]] })),
      surroundings: [{ ...scan, crop: corners }],
      motion: { rock: { position: [0, 0, 0], axis: [1, 0, 0], angles: [-2, 2] } },
      wrap: { thickness: 1.6, layers: 2, roll: 20 },
      access: { tools: ['socket'] },
      service: [plug],
      sensors: [probe],
    };
    const after: Design = {
      ...withRunner('r1', () => ({ wrapped: [[40, 200]] })),
      surroundings: [{ ...scan, crop: [corners[0], [400, 500, 150]], fixedTo: 'engine' }],
      motion: { rock: { ...before.motion!.rock!, angles: [-2, 3.5] }, heat: { temperature: 650 } },
      wrap: { ...before.wrap!, layers: 1 },
      access: { tools: ['socket', 'ring-spanner'], required: true },
      service: [{ ...plug, acrossFlats: 16 }],
      sensors: [{ ...probe, on: { runner: 'r2' }, clock: 30 }],
    };
    const { changes } = compareDesigns(before, after);
    expect(changes.map(({ path, kind }) => `${path} ${kind}`).sort()).toEqual([
      'access/required added',
      'access/tools changed',
      'motion/heat added',
      'motion/rock/angles changed',
      'runners/r1/wrapped/0 changed',
      'sensors/egt 1/clock changed',
      'sensors/egt 1/on/runner changed',
      'service/plug 1/acrossFlats added',
      'surroundings/bay scan/crop/1 changed',
      'surroundings/bay scan/fixedTo added',
      'wrap/layers changed',
    ]);
    expect(changes.find(({ path }) => path === 'motion/rock/angles')).toMatchObject({
      before: [-2, 2],
      after: [-2, 3.5],
    });
  });

  test('mass is length times the metre’s, and unknown where the material is', () => {
    const { runners, mass } = compareDesigns(design, {
      ...design,
      tubes: { primary: { ...design.tubes.primary!, material: 'unobtainable' } },
    });
    // Wall area of 42.4 × 1.5 in stainless at 7930 kg/m³ (stockist lists): kg for each mm.
    const { outsideDiameter: d, wall: t, material } = design.tubes.primary!;
    expect(material).toBe('stainless-304');
    const perMm = Math.PI * t * (d - t) * 7930e-9;
    for (const r of runners) {
      const inHead = design.ports.find((p) => `r${p.cylinder}` === r.id)!.lengthInHead ?? 0;
      expect(r.before!.mass).toBeCloseTo((r.before!.length - inHead) * perMm, 9);
      expect(r.after!.mass).toBeNull();
    }
    expect(mass.before).toBeCloseTo(
      runners.reduce((sum, r) => sum + r.before!.mass!, 0),
      9,
    );
    expect(mass.after).toBeNull();
  });

  test('the tightest of all runners’ tightest places is the header’s', () => {
    const { runners } = compareDesigns(design, design);
    const least = Math.min(...runners.map((r) => r.before!.tightest!.margin));
    expect(least).toBeGreaterThan(-0.051);
    for (const r of runners) expect(r.before!.tightest!.between).toContain(r.id);
  });
});
