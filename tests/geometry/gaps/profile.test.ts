/** Gaps along tubes against distances worked out another way, and against the list of gaps. */
import { describe, expect, test } from 'vitest';
import { gapReport, pointAt, resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { layoutNames, loadLayout } from '../../layouts/load';
import { toBox, toCapsule, toTube } from '../clearance/bruteForce';

const layouts = layoutNames('known')
  .slice(0, 10)
  .map((name) => loadLayout('known', name));

const again = (design: Design): Design => JSON.parse(JSON.stringify(design));

describe('along each tube', () => {
  test.each(layouts)('$name: no less than the list of gaps allows, and as little as it says', ({ design, meshes }) => {
    const { gaps, profiles } = gapReport(resolveHeader(again(design)), meshes, { step: 2 });
    expect(profiles.map((p) => p.runner)).toEqual(design.runners.map((r) => r.id));
    for (const { runner, stations, margins } of profiles) {
      const own = gaps.filter((g) => g.between.includes(runner) && g.required >= 0);
      const least = Math.min(60, ...own.map((g) => g.margin));
      const found = Math.min(...margins);
      expect(margins).toHaveLength(stations.length);
      expect(Math.max(...margins)).toBeLessThanOrEqual(60);
      // Near a flat end a section is told by the slope of the field at its middle, which never promises too much.
      expect(found).toBeLessThan(least + 0.6);
      expect(found).toBeGreaterThan(least - 4);
    }
  });
  test.each(layouts.slice(0, 3))(
    '$name, rocking and hot: over the moments, as the swept list says',
    ({ design, meshes }) => {
      const [{ position }] = design.ports as [Design['ports'][number]];
      const rock = { position: [0, position[1] - 150, position[2] - 100], axis: [1, 0, 0], angles: [-4, 4] } as const;
      const moving = { ...again(design), motion: { rock, heat: { temperature: 700 } } };
      const header = resolveHeader(moving);
      const { gaps, profiles } = gapReport(header, meshes, { step: 2 });
      const still = gapReport(resolveHeader(again(design)), meshes, { step: 2 }).profiles;
      let nearer = 0;
      for (const [i, { runner, margins }] of profiles.entries()) {
        const own = gaps.filter((g) => g.between.includes(runner) && g.required >= 0);
        const least = Math.min(60, ...own.map((g) => g.margin));
        expect(Math.min(...margins)).toBeLessThan(least + 0.6);
        expect(Math.min(...margins)).toBeGreaterThan(least - 4);
        margins.forEach((m, k) => {
          expect(m).toBeLessThanOrEqual(still[i]!.margins[k]! + 0.2);
          if (m < still[i]!.margins[k]! - 2) nearer++;
        });
      }
      expect(nearer).toBeGreaterThan(0);
    },
  );
  test.each(layouts.slice(0, 4))('$name: each station away from the ends and bundles', ({ design, meshes }) => {
    const header = resolveHeader(again(design));
    const within = 60;
    const { profiles } = gapReport(header, meshes, { within });
    const bundled = Math.max(...[...header.merges.values()].map((m) => m.bundle));
    let compared = 0;
    for (const [i, r] of header.runners.entries()) {
      const { stations, margins } = profiles[i]!;
      const line = r.centerline!;
      for (const [k, station] of stations.entries()) {
        if (station < 1.1 * r.tubeRadius || station > line.length - bundled - 1) continue;
        if (design.surroundings?.some((s) => s.shape === 'mesh')) continue;
        const p = pointAt(line, station).position;
        const tubes = header.runners
          .filter((o) => o !== r)
          .map((o) => toTube(o.centerline!, o.tubeRadius)(p) - r.tubeRadius - header.tubeToTube);
        const around = (design.surroundings ?? []).flatMap((s) =>
          s.shape === 'box'
            ? [toBox(s.min, s.max)(p) - r.tubeRadius - (s.clearance ?? 0)]
            : s.shape === 'capsule'
              ? [toCapsule(s.a, s.b, s.radius)(p) - r.tubeRadius - (s.clearance ?? 0)]
              : [],
        );
        const slow = Math.min(within, ...tubes, ...around);
        compared++;
        // Bodies of collectors it does not enter are left out here: they can only lower it.
        if (header.merges.size === 1) expect(margins[k]).toBeCloseTo(slow, 2);
        else expect(margins[k]!).toBeLessThan(slow + 0.01);
      }
    }
    expect(compared).toBeGreaterThan(20);
  });
});
