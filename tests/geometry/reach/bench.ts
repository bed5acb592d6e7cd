/**
 * A flange on the plane y = 0 with studs or bolts, and straight tubes wherever a test wants them: the least in which a tool can be
 * stopped. The flange's port stands far to the side, its runner away from it.
 */
import { resolveHeader } from '../../../geometry';
import { accessReport } from '../../../geometry/reach/accessReport';
import type { AccessEntry } from '../../../geometry/reach/report';
import type { Design, Fastener, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

export const TUBE_RADIUS = 20;

type Wishes = {
  readonly fasteners?: readonly Partial<Fastener>[];
  readonly tubes?: readonly (readonly [Vec3, Vec3])[];
  readonly surroundings?: readonly Surrounding[];
} & Pick<Design, 'wrap' | 'access' | 'service'>;

export const STUD: Fastener = { position: [0, 0, 0], kind: 'stud', thread: 'M8', length: 20, hole: 9 };

export function bench({ fasteners = [{}], tubes = [], surroundings = [], ...rest }: Wishes): Design {
  const tooling = { centerlineRadius: 60, firstStraight: 0, betweenStraight: 0, lastStraight: 0, maxBendAngle: 180, maxBends: 4 }; // biome-ignore format: one line
  const merge = (id: string) => ({
    id,
    inlets: 1,
    position: [5000, 5000, 5000] as const,
    axis: [0, 1, 0] as const,
    up: [0, 0, 1] as const,
    outletDiameter: 40,
    length: 100,
  });
  return {
    format: 'evenrun-design',
    version: 1,
    ports: [
      {
        id: 'p1',
        cylinder: 1,
        position: [2000, 0, 0],
        direction: [0, 1, 0],
        up: [0, 0, 1],
        opening: { shape: 'round', diameter: 36 },
      },
    ],
    flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, fasteners: fasteners.map((f) => ({ ...STUD, ...f })) }],
    tubes: { primary: { outsideDiameter: 2 * TUBE_RADIUS, wall: 1.5 } },
    tooling: { primary: tooling },
    merges: tubes.map((_, i) => merge(`m${i + 1}`)),
    runners: tubes.map((points, i) => ({
      id: `r${i + 1}`,
      tube: 'primary',
      from: i === 0 ? { port: 'p1' } : { merge: `m${i}` },
      to: { merge: `m${i + 1}`, inlet: 1 },
      points,
    })),
    groups: {},
    surroundings,
    ...rest,
  };
}

export const entriesOf = (design: Design, meshes = new Map()): readonly AccessEntry[] =>
  accessReport(resolveHeader(design), meshes).entries;

export const tried = (entry: AccessEntry, kind: string) => entry.tries.find((t) => t.kind === kind)!;
