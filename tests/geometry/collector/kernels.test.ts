/**
 * A collector's metal against two outside kernels: tubes cut by planes in a B-rep kernel and in a mesh kernel, the planes
 * found here from the ring's angles alone; the ruled cone lofted by the B-rep kernel. All within 0.1 %.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { boundsOf, collectorParts, collectorPlan, type Mesh, measureMesh } from '../../../geometry';
import { coneOutline, coneRings } from '../../../geometry/collector/cone';
import type { Merge } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { loadManifold, manifoldOfMesh, manifoldTrim, manifoldUnion } from '../../kernels/manifold';
import { type CuttingPlane, free, loadOcct, occtCutTube, occtRuledLoft, occtVolume } from '../../kernels/occt';
import { barBetween, collectorHeader, tubeBetween } from './designs';

beforeAll(async () => {
  await loadOcct();
  await loadManifold();
});

const CASES: readonly Partial<Merge>[] = [
  { inlets: 2, convergence: 6, outletDiameter: 50 },
  { inlets: 3, convergence: 8, outletDiameter: 57 },
  { inlets: 4, convergence: 8 },
  { inlets: 4, convergence: 7, weldGap: 1.2, pitch: 44 },
  { inlets: 6, convergence: 20, outletDiameter: 76.1, length: 200 },
];

const farthestFromAxis = ({ positions }: Mesh): number => {
  let farthest = 0;
  for (let i = 0; i < positions.length; i += 3)
    farthest = Math.max(farthest, Math.hypot(positions[i]!, positions[i + 1]!));
  return farthest;
};

const near = (a: number, b: number) => Math.abs(a / b - 1);

describe.each(CASES)('%o', (change) => {
  const header = collectorHeader(change);
  const plan = collectorPlan(header, header.merges.get('m1')!);
  const { parts } = collectorParts(header);
  const n = change.inlets!;
  const gap = change.weldGap ?? 0;

  /** Inlet k of the ring in the collector's frame, which looks along the flow with its up at y: angles run from −x. */
  const inlet = (k: number) => {
    const angle = (2 * Math.PI * k + Math.PI) / n;
    const radius = (change.pitch ?? 42.4) / (2 * Math.sin(Math.PI / n));
    const out: Vec3 = [-Math.cos(angle), Math.sin(angle), 0];
    const c = ((change.convergence! as number) * Math.PI) / 180;
    const position: Vec3 = [radius * out[0], radius * out[1], 0];
    const direction: Vec3 = [-Math.sin(c) * out[0], -Math.sin(c) * out[1], Math.cos(c)];
    return { angle, position, direction };
  };
  /** Half way to either neighbour, moved back by half the gap; and across the end. */
  const planes = (k: number): CuttingPlane[] => [
    ...[1, -1].map((side): CuttingPlane => {
      const a = inlet(k).angle + (side * Math.PI) / n;
      const normal: Vec3 = [side * Math.sin(a), side * Math.cos(a), 0];
      return { point: [(-normal[0] * gap) / 2, (-normal[1] * gap) / 2, 0], normal };
    }),
    { point: [0, 0, plan.tubesEnd], normal: [0, 0, 1] },
  ];

  test('every tube', () => {
    for (let k = 0; k < n; k++) {
      const part = parts.find((p) => p.name === `stub ${k + 1}`)!;
      const { position, direction } = inlet(k);
      const start: Vec3 = [0, 1, 2].map((i) => position[i]! + gap * direction[i]!) as unknown as Vec3;
      const run = { position: start, direction, length: 300 };
      const exact = occtCutTube(run, 21.2, 19.7, planes(k));
      const expected = occtVolume(exact);
      free(exact);
      expect(near(part.volume, expected), part.id).toBeLessThan(1e-5);
      expect(near(measureMesh(part.mesh).volume, expected), part.id).toBeLessThan(1e-3);

      let solid = manifoldOfMesh(tubeBetween(start, direction, 300, 21.2, 19.7));
      for (const plane of planes(k)) {
        const left = manifoldTrim(solid, plane);
        solid.delete();
        solid = left;
      }
      expect(near(part.volume, solid.volume()), part.id).toBeLessThan(1e-3);
      solid.delete();
    }
  });

  test('the filler: a bar in the well, less the tubes around it; two tubes have none', () => {
    const part = parts.find((p) => p.kind === 'filler');
    expect(part !== undefined).toBe(n > 2);
    if (!part) return;
    const { min, max } = boundsOf(part.mesh);
    // A hair wider than its foot: farther out lies what the tubes enclose on their other sides.
    const bar = manifoldOfMesh(
      barBetween([0, 0, min[2]], [0, 0, 1], max[2] + 5 - min[2], farthestFromAxis(part.mesh) + 0.02),
    );
    const radius = 21.2 + gap / 2;
    const tubes = Array.from({ length: n }, (_, k) => {
      const { position, direction } = inlet(k);
      const start = position.map((x, i) => x - 60 * direction[i]!) as unknown as Vec3;
      return manifoldOfMesh(barBetween(start, direction, 400, radius));
    });
    const around = manifoldUnion(tubes);
    const left = bar.subtract(around);
    const pieces = left.decompose();
    const onAxis = pieces.filter((piece) => {
      const box = piece.boundingBox();
      return box.min[0] < 0 && box.max[0] > 0 && box.min[1] < 0 && box.max[1] > 0;
    });
    expect(onAxis).toHaveLength(1);
    expect(near(part.volume, onAxis[0]!.volume())).toBeLessThan(1e-3);
    for (const solid of [bar, ...tubes, around, left, ...pieces]) solid.delete();
  });

  test('the cone', () => {
    const rings = coneRings(plan, coneOutline(plan)!);
    const [low, high] = [plan.plateEnd + gap, plan.coneEnd];
    const at = (points: readonly (readonly [number, number])[], z: number) => points.map(([x, y]): Vec3 => [x, y, z]);
    const outside = occtRuledLoft(at(rings.foot, low), at(rings.head, high));
    const inside = occtRuledLoft(at(rings.footBore, low), at(rings.headBore, high));
    const expected = occtVolume(outside) - occtVolume(inside);
    free(outside, inside);
    const part = parts.find((p) => p.kind === 'cone')!;
    expect(near(part.volume, expected)).toBeLessThan(1e-5);
    expect(near(measureMesh(part.mesh).volume, expected)).toBeLessThan(1e-3);
  });

  test('the cone starts on the tubes but for the crotches, which it rounds', () => {
    const { foot } = coneRings(plan, coneOutline(plan)!);
    const off = foot.map(([x, y]) =>
      Math.min(
        ...Array.from({ length: n }, (_, k) => {
          // Where this tube's axis passes the end, and how far off it the point is.
          const { position: p, direction: d } = inlet(k);
          const v: Vec3 = [x - p[0], y - p[1], plan.tubesEnd];
          const along = v[0] * d[0] + v[1] * d[1] + v[2] * d[2];
          return Math.sqrt(v[0] ** 2 + v[1] ** 2 + v[2] ** 2 - along ** 2) - 21.2;
        }),
      ),
    );
    expect(Math.min(...off)).toBeGreaterThan(-0.02);
    // Never farther off than the rounding, and on the tubes for most of the way.
    expect(Math.max(...off)).toBeLessThan(3);
    expect(off.filter((d) => d < 0.05).length / off.length).toBeGreaterThan(0.5);
  });
});
