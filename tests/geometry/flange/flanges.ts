/** A flange of a straight row of ports, and whatever else a test is about. mm. */
import { type FlangePlan, flangePlan, type Header, type PlatePlan, resolveHeader } from '../../../geometry';
import type { Design, Fastener, Flange, Opening, Port, Tube } from '../../../shared/design/types';

export type Asked = {
  readonly ports?: number;
  readonly pitch?: number;
  readonly opening?: Opening;
  readonly port?: (k: number) => Partial<Port>;
  /** [x, z] from the first port; ports run along +x, so that on the plate x points the other way. */
  readonly studs?: readonly (readonly [number, number])[];
  readonly fastener?: Partial<Fastener>;
  readonly flange?: Partial<Flange>;
  readonly tube?: Partial<Tube>;
  /** Without tubes there are only openings. */
  readonly tubes?: boolean;
  readonly display?: 'mm' | 'in';
};

export function flangeDesign(asked: Asked = {}): Design {
  const { ports: count = 2, pitch = 90, studs = [], tubes = true } = asked;
  const ports = Array.from(
    { length: count },
    (_, k): Port => ({
      id: `p${k + 1}`,
      cylinder: k + 1,
      position: [k * pitch, 0, 0],
      direction: [0, 1, 0],
      up: [0, 0, 1],
      opening: asked.opening ?? { shape: 'round', diameter: 36 },
      ...asked.port?.(k),
    }),
  );
  const fasteners = studs.map(([x, z]): Fastener => ({ position: [x, 0, z], kind: 'stud', thread: 'M8', hole: 9, ...asked.fastener })); // biome-ignore format: one line
  return {
    format: 'evenrun-design',
    version: 1,
    ...(asked.display && { display: asked.display }),
    ports,
    flanges: [{ id: 'f1', ports: ports.map((p) => p.id), thickness: 10, fasteners, ...asked.flange }],
    tubes: { primary: { outsideDiameter: 42.4, wall: 1.5, ...asked.tube } },
    tooling: {
      primary: { centerlineRadius: 63.6, firstStraight: 20, betweenStraight: 0, lastStraight: 20, maxBendAngle: 170, maxBends: 4 }, // biome-ignore format: one line
    },
    merges: [{ id: 'm1', inlets: count, position: [0, 400, -300], axis: [0, 0, -1], up: [1, 0, 0], outletDiameter: 60, length: 120 }], // biome-ignore format: one line
    runners: tubes ? ports.map((p, k) => ({ id: `r${k + 1}`, tube: 'primary', from: { port: p.id }, to: { merge: 'm1' } })) : [], // biome-ignore format: one line
    groups: {},
  };
}

export const headerOf = (asked: Asked = {}): Header => resolveHeader(flangeDesign(asked));

export function planOf(asked: Asked = {}): FlangePlan {
  const header = headerOf(asked);
  return flangePlan(header, header.design.flanges![0]!);
}

/** @throws where it could not be made */
export function plateOf(asked: Asked = {}): PlatePlan {
  const { plates, notMade } = planOf(asked);
  if (plates.length === 0) throw new Error(`not made: ${notMade.map((r) => r.message).join('; ')}`);
  return plates[0]!;
}

/** Two ports with two studs each, level with them. */
export const PAIRED: Asked = { pitch: 110, studs: [[-38, 0], [38, 0], [72, 0], [148, 0]] }; // biome-ignore format: one line
/** Three ports, with studs above and below between them and beyond. */
export const ROW: Asked = {
  ports: 3,
  studs: [-45, 45, 135, 225].flatMap((x) => [[x, 30], [x, -30]] as const), // biome-ignore format: one line
};
