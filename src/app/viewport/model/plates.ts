/**
 * Plates through the ports: which ports share one, its plane, and on it the openings and the outline that hugs them.
 * A flange is the plate of the ports that it names; ports without one share a bare plate where they lie in one plane.
 * Millimetres; 2D is (across, up) on the plate's outer face. For drawing: the flange that is cut comes from the solids.
 */
import {
  add,
  addScaled,
  cross,
  dot,
  type Header,
  RADIANS,
  type ResolvedPort,
  reject,
  scale,
  sub,
  unit,
} from '../../../../geometry';
import type { Fastener, Flange, Opening } from '../../../../shared/design/types';
import { rememberedByParts } from '../../../../shared/remember';
import type { Vec3 } from '../../../../shared/vec3';
import { circle, hullOutline, type Point2 } from './outline';

export type Plate = {
  readonly id: string;
  readonly flange: Flange | null;
  readonly ports: readonly ResolvedPort[];
  /** On the outer face, with `across` × `up` = `normal`, which leaves the head. */
  readonly origin: Vec3;
  readonly across: Vec3;
  readonly up: Vec3;
  readonly normal: Vec3;
  readonly openings: readonly { readonly port: string; readonly points: readonly Point2[] }[];
  readonly fasteners: readonly { readonly fastener: Fastener; readonly at: Point2 }[];
  /** Hugs openings, tubes and fasteners. */
  readonly outline: readonly Point2[];
};

/** Steel left round an opening, and round a fastener's hole, mm: common practice, to draw by. */
const LAND = 10;
const FASTENER_LAND = 7;
/** Ports within this angle and this far off one plane share a bare plate. */
const SAME_FACE_DEG = 25;
const SAME_FACE_MM = 3;

/** An opening's edge in its port's own (across, up), anticlockwise. */
export function openingOutline(opening: Opening): Point2[] {
  if (opening.shape === 'round') return circle([0, 0], opening.diameter / 2);
  const [w, h] = [opening.width / 2, opening.height / 2];
  const r = opening.shape === 'oval' ? Math.min(w, h) : Math.min(opening.corner, w, h);
  const corners: readonly Point2[] = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ];
  const quarter = 12;
  return corners.flatMap(([sx, sy], k) =>
    Array.from({ length: quarter + 1 }, (_, i): Point2 => {
      const a = (k + i / quarter) * 90 * RADIANS;
      return [sx * (w - r) + r * Math.cos(a), sy * (h - r) + r * Math.sin(a)];
    }),
  );
}

/** The very same while nothing at the ports changes, whichever way the runners go from there. */
export const plates: (header: Header) => readonly Plate[] = rememberedByParts(
  ({ design, ports, runners }) => [
    design.flanges,
    ...ports.values(),
    ...runners.flatMap(({ start, tubeRadius }) => [start, tubeRadius]),
  ],
  layPlates,
);

function layPlates(header: Header): Plate[] {
  const flanged = new Set<string>();
  const list: Plate[] = [];
  for (const flange of header.design.flanges ?? []) {
    const ports = flange.ports.flatMap((id) => header.ports.get(id) ?? []);
    for (const { port } of ports) flanged.add(port.id);
    if (ports.length > 0) list.push(plate(flange.id, flange, ports, header));
  }
  const bare: ResolvedPort[][] = [];
  for (const port of header.ports.values()) {
    if (flanged.has(port.port.id)) continue;
    const home = bare.find((others) => sharesFace(others[0]!, port));
    if (home) home.push(port);
    else bare.push([port]);
  }
  return [...list, ...bare.map((ports) => plate(`face ${ports[0]!.port.id}`, null, ports, header))];
}

function sharesFace(a: ResolvedPort, b: ResolvedPort): boolean {
  const apart = sub(b.pose.position, a.pose.position);
  const normal = unit(add(a.pose.direction, b.pose.direction));
  return (
    dot(a.pose.direction, b.pose.direction) > Math.cos(SAME_FACE_DEG * RADIANS) &&
    Math.abs(dot(apart, normal)) < SAME_FACE_MM
  );
}

function plate(id: string, flange: Flange | null, ports: readonly ResolvedPort[], header: Header): Plate {
  const mean = (vectors: readonly Vec3[]) => scale(vectors.reduce(add), 1 / vectors.length);
  const normal = unit(mean(ports.map((p) => p.pose.direction)));
  const up = unit(reject(mean(ports.map((p) => p.pose.up)), normal));
  const across = cross(up, normal);
  const origin = mean(ports.map((p) => p.pose.position));

  /** Slides a point along `way` onto the plate's face. */
  const onFace = (p: Vec3, way: Vec3): Point2 => {
    const off = sub(p, origin);
    const landed = addScaled(off, way, -dot(off, normal) / dot(way, normal));
    return [dot(landed, across), dot(landed, up)];
  };
  const openings = ports.map(({ port, pose }) => {
    const side = cross(pose.up, pose.direction);
    const points = openingOutline(port.opening).map(([x, y]) =>
      onFace(addScaled(addScaled(pose.position, side, x), pose.up, y), pose.direction),
    );
    return { port: port.id, points };
  });
  const fasteners = (flange?.fasteners ?? []).map((fastener) => ({ fastener, at: onFace(fastener.position, normal) }));
  const tubes = header.runners.flatMap(({ runner, start, tubeRadius }) =>
    'port' in runner.from && ports.some((p) => p.port.id === (runner.from as { port: string }).port)
      ? circle(onFace(start.position, start.direction), tubeRadius - LAND / 2)
      : [],
  );
  const holes = fasteners.flatMap(({ fastener, at }) => circle(at, fastener.hole / 2 + FASTENER_LAND - LAND));
  const outline = hullOutline([...openings.flatMap((o) => o.points), ...tubes, ...holes], LAND);
  return { id, flange, ports, origin, across, up, normal, openings, fasteners, outline };
}

/** From (across, up, out) on a plate to the design's frame. */
export function fromPlate(plate: Plate, [x, y]: Point2, out = 0): Vec3 {
  return addScaled(addScaled(addScaled(plate.origin, plate.across, x), plate.up, y), plate.normal, out);
}
