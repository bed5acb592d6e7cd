/**
 * The smallest header that has everything: two 40 mm runners, mirror images, from ports on the x axis to a collector
 * below. Along the last 114 mm they are straight and `pitch` apart. Every rule holds until a test breaks one.
 */
import type { Design, Merge, Port, Runner, Surrounding, Tooling } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

type Wishes = {
  readonly pitch?: number;
  readonly spacing?: number;
  readonly port?: Partial<Port>;
  readonly merge?: Partial<Merge>;
  readonly tooling?: Partial<Tooling>;
  readonly r1?: Partial<Runner>;
  readonly surroundings?: readonly Surrounding[];
  readonly tubeToTube?: number;
  readonly group?: { length: number | null; tolerance: number };
};

export function header(w: Wishes = {}): Design {
  const { pitch = 50, spacing = 100 } = w;
  const port = (id: string, x: number): Port => ({
    id,
    cylinder: Number(id.slice(1)),
    position: [x, 0, 0],
    direction: [0, 1, 0],
    up: [0, 0, 1],
    opening: { shape: 'round', diameter: 36 },
    ...w.port,
  });
  const runner = (n: 1 | 2, side: -1 | 1): Runner => ({
    id: `r${n}`,
    tube: 'primary',
    group: 'primaries',
    from: { port: `p${n}` },
    to: { merge: 'm1', inlet: n },
    points: pointsOf(side, spacing, pitch),
    ...(n === 1 ? w.r1 : {}),
  });
  return {
    format: 'evenrun-design',
    version: 1,
    ports: [port('p1', 50 - spacing / 2), port('p2', 50 + spacing / 2)],
    tubes: { primary: { outsideDiameter: 40, wall: 1.5 } },
    tooling: {
      primary: {
        centerlineRadius: 60,
        firstStraight: 20,
        betweenStraight: 25,
        lastStraight: 20,
        maxBendAngle: 170,
        maxBends: 4,
        ...w.tooling,
      },
    },
    merges: [
      {
        id: 'm1',
        inlets: 2,
        pattern: 'line',
        position: [50, 300, -200],
        axis: [0, 0, -1],
        up: [0, 1, 0],
        pitch,
        outletDiameter: 60,
        length: 120,
        ...w.merge,
      },
    ],
    runners: [runner(1, -1), runner(2, 1)],
    groups: { primaries: w.group ?? { length: null, tolerance: 1 } },
    surroundings: w.surroundings ?? [],
    clearance: { tubeToTube: w.tubeToTube ?? 4 },
  };
}

export function pointsOf(side: -1 | 1, spacing = 100, pitch = 50): Vec3[] {
  const start = 50 + (side * spacing) / 2;
  const end = 50 + (side * pitch) / 2;
  return [
    [start, 0, 0],
    [start, 150, 0],
    [end, 300, -40],
    [end, 300, -200],
  ];
}

/** r1's points, some of them moved. */
export const movedPoints = (moves: Readonly<Record<number, Vec3>>): Vec3[] =>
  pointsOf(-1).map((p, i) => p.map((x, k) => x + (moves[i]?.[k] ?? 0)) as unknown as Vec3);
