/**
 * What must be reached, each in a frame of its own: z along the fastener's axis away from what it holds, the origin where nut
 * or head stands. mm.
 */
import type { Fastener, Flange, ServicePoint } from '../../shared/design/types';
import { type HexSize, hexSize } from '../../shared/stock/hexFasteners';
import { type ServiceSize, serviceSize } from '../../shared/stock/servicePoints';
import type { Vec3 } from '../../shared/vec3';
import { onPlate, type PlateFrame, plateFrame } from '../flange/plateFrame';
import { isStud, studBeyond } from '../flange/stud';
import type { Header, ResolvedPort } from '../header/resolve';
import { addScaled, anySquareTo, cross, distance, dot, sub, unit } from '../vector';

export type Axes = { readonly origin: Vec3; readonly x: Vec3; readonly y: Vec3; readonly z: Vec3 };

export type Place = {
  readonly id: string;
  readonly kind: 'fastener' | 'service';
  /** Whose fastener it is. */
  readonly flange: string | null;
  readonly where: string;
  readonly axes: Axes;
  /** Of nut or head; null where nothing is turned with a spanner. */
  readonly hex: { readonly acrossFlats: number; readonly acrossCorners: number; readonly height: number } | null;
  /** A stud stands out so far; 0 for what has a head. */
  readonly stud: number;
  /** What is drawn out: how thick it is and up to where it must be free round the axis. */
  readonly drawn: { readonly radius: number; readonly top: number };
  /** The bars that stand there at rest, for its neighbours: radius and height. */
  readonly body: readonly { readonly radius: number; readonly height: number }[];
  readonly service: ServiceSize | null;
};

export const axesAlong = (origin: Vec3, direction: Vec3, up?: Vec3): Axes => {
  const z = unit(direction);
  const x = up ? unit(cross(up, z)) : anySquareTo(z);
  return { origin, x, y: cross(z, x), z };
};

export const outOf = ({ origin, x, y, z }: Axes, [a, b, c]: Vec3): Vec3 =>
  addScaled(addScaled(addScaled(origin, x, a), y, b), z, c);

export const into = ({ origin, x, y, z }: Axes, p: Vec3): Vec3 => {
  const d = sub(p, origin);
  return [dot(d, x), dot(d, y), dot(d, z)];
};

/** Fasteners of flanges that have ports, in the document's order, then the service points. */
export function placesOf(header: Header): Place[] {
  const { flanges = [], service = [] } = header.design;
  return [...flanges.flatMap((flange) => fastenerPlaces(header, flange)), ...service.map(servicePlace)];
}

function fastenerPlaces(header: Header, flange: Flange): Place[] {
  const ports = flange.ports.flatMap((id) => header.ports.get(id) ?? []);
  if (ports.length === 0) return [];
  const one = flange.plates === 'separate' ? null : plateFrame(ports);
  return (flange.fasteners ?? []).map((fastener, i) => {
    const frame = one ?? plateFrame([nearest(ports, fastener.position)]);
    return fastenerPlace(flange, fastener, i, frame);
  });
}

const nearest = (ports: readonly ResolvedPort[], p: Vec3): ResolvedPort =>
  ports.reduce((a, b) => (distance(b.port.position, p) < distance(a.port.position, p) ? b : a));

function fastenerPlace(flange: Flange, fastener: Fastener, i: number, frame: PlateFrame): Place {
  const { pose, axes } = frame;
  const [x, y] = onPlate(frame, fastener.position);
  const face = addScaled(addScaled(pose.position, axes[0], x), axes[1], y);
  const size = hexSize(fastener.thread, fastener.hole);
  const stud = isStud(fastener);
  return {
    id: `${flange.id} ${stud ? 'stud' : 'bolt'} ${i + 1}`,
    kind: 'fastener',
    flange: flange.id,
    where: `flanges/${flange.id}/fasteners/${i}`,
    axes: axesAlong(face, pose.direction, pose.up),
    service: null,
    ...(stud ? studOf(flange, fastener, size) : boltOf(flange, fastener, size)),
  };
}

type Held = Pick<Place, 'hex' | 'stud' | 'drawn' | 'body'>;

/** A bolt screws in so many diameters where the design does not say how long it is: common practice. */
const SCREWED_IN = 1.5;

function studOf(flange: Flange, fastener: Fastener, size: HexSize): Held {
  const { acrossFlats, acrossCorners, nutHeight, diameter } = size;
  const stud = studBeyond(flange, fastener);
  return {
    hex: { acrossFlats, acrossCorners, height: nutHeight },
    stud,
    drawn: { radius: acrossCorners / 2, top: stud + nutHeight },
    body: [
      { radius: acrossCorners / 2, height: nutHeight },
      { radius: diameter / 2, height: stud },
    ],
  };
}

/** A bolt's length is counted from under its head, and all of it must be drawn out. */
function boltOf({ thickness, gasket = 0 }: Flange, { length }: Fastener, size: HexSize): Held {
  const { acrossFlats, acrossCorners, headHeight, diameter } = size;
  return {
    hex: { acrossFlats, acrossCorners, height: headHeight },
    stud: 0,
    drawn: {
      radius: acrossCorners / 2,
      top: headHeight + (length ?? thickness + gasket + SCREWED_IN * diameter),
    },
    body: [{ radius: acrossCorners / 2, height: headHeight }],
  };
}

const CORNERS = 1 / Math.cos(Math.PI / 6);

function servicePlace(point: ServicePoint): Place {
  const size = serviceSize(point);
  const { acrossFlats, diameter, length, standsOut, headHeight } = size;
  const acrossCorners = acrossFlats * CORNERS;
  const radius = Math.max(diameter, point.kind === 'bolt' ? acrossCorners : 0) / 2;
  const height = Math.max(headHeight, standsOut * length);
  return {
    id: point.id,
    kind: 'service',
    flange: null,
    where: `service/${point.id}`,
    axes: axesAlong(point.position, point.direction),
    hex: acrossFlats > 0 ? { acrossFlats, acrossCorners, height: headHeight } : null,
    stud: 0,
    drawn: { radius, top: height + length },
    body: [],
    service: size,
  };
}
