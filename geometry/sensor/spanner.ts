/**
 * Whether a sensor can be screwed in: a spanner with open ends, or a slotted socket with its ratchet, with the swing that
 * finds the next flats, tried all round. mm, at rest and bare.
 */

import type { SensorSize } from '../../shared/stock/sensors';
import { SENSOR_HANDLE, SENSOR_RATCHET, SENSOR_SWING_DEG, SENSOR_TOOL_ROOM } from '../../shared/stock/sensors';
import type { Vec3 } from '../../shared/vec3';
import type { Frustum } from '../header/merge';
import type { ToolSolid } from '../reach/report';
import { RADIANS } from '../tolerance';
import { addScaled, rotate } from '../vector';
import type { Neighbour, Sweep } from './neighbours';
import { type BungPlace, headings } from './place';

export type SpannerTry = {
  readonly fits: boolean;
  /** Least of its gaps, and to what; null where nothing is near. */
  readonly room: { readonly gap: number; readonly by: string } | null;
  readonly by: readonly string[];
  readonly solids: readonly ToolSolid[];
};

/** Ways round that are tried: every 15°. */
const WAYS = 24;
/** Farther off than this nothing is near, mm. */
const NEAR = 60;

/** The way of all tools and turns that has most room. */
export function spannerTry(place: BungPlace, size: SensorSize, neighbours: readonly Neighbour[]): SpannerTry {
  const hex = size.bung.height + size.hexHeight;
  const { spanner, socket } = size;
  const tools: Tool[] = [
    {
      from: hex - spanner.thickness,
      to: hex + spanner.thickness,
      radius: spanner.head,
      at: hex,
      handle: spanner.length,
    },
  ];
  if (socket) {
    const top = size.bung.height + socket.length + SENSOR_RATCHET.above;
    const radius = socket.diameter / 2;
    tools.push({ from: size.bung.height, to: top + SENSOR_HANDLE, radius, at: top, handle: SENSOR_RATCHET.length });
  }
  const tries = tools.map((tool) => tried(place, tool, neighbours));
  return tries.find((t) => t.fits) ?? tries.reduce((a, b) => (roomOf(b) > roomOf(a) ? b : a));
}

type Tool = {
  /** Its head, along the sensor's axis from the tube's surface. */
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  /** Height of its handle, and how long it is from the axis. */
  readonly at: number;
  readonly handle: number;
};

const roomOf = ({ room }: SpannerTry): number => room?.gap ?? NEAR;

function tried(place: BungPlace, tool: Tool, neighbours: readonly Neighbour[]): SpannerTry {
  const head = barAlong(place, tool.from, tool.to, tool.radius);
  const atHead = neighbours.map((n) => ({ by: n.id, gap: n.toBar(head, NEAR) ?? NEAR }));
  const ways = headings(place, WAYS).map((heading) => {
    const sweep = sweepOf(place, tool, heading);
    const gaps = neighbours.map((n, k) => ({
      by: n.id,
      gap: Math.min(n.toSweep(sweep, NEAR) ?? NEAR, atHead[k]!.gap),
    }));
    return { heading, gaps, least: Math.min(NEAR, ...gaps.map((g) => g.gap)) };
  });
  const best = ways.reduce((a, b) => (b.least > a.least ? b : a));
  const nearest = best.gaps.reduce<{ by: string; gap: number } | null>((a, g) => (!a || g.gap < a.gap ? g : a), null);
  const inWay = best.gaps.filter((g) => g.gap < SENSOR_TOOL_ROOM).sort((a, b) => a.gap - b.gap);
  const from = addScaled(place.at, place.axis, tool.at);
  return {
    fits: best.least >= SENSOR_TOOL_ROOM,
    room: nearest && nearest.gap < NEAR ? nearest : null,
    by: [...new Set(inWay.map((g) => g.by))],
    solids: [
      { shape: 'cylinder', a: head.position, b: addScaled(head.position, head.axis, head.length), radius: tool.radius },
      { shape: 'capsule', a: from, b: addScaled(from, best.heading, tool.handle), radius: SENSOR_HANDLE },
    ],
  };
}

export const barAlong = ({ at, axis }: BungPlace, from: number, to: number, radius: number): Frustum => ({
  position: addScaled(at, axis, from),
  axis,
  length: to - from,
  startRadius: radius,
  endRadius: radius,
});

/** What the handle passes as it swings: a triangle round the arc of its end. */
function sweepOf(place: BungPlace, tool: Tool, heading: Vec3): Sweep {
  const half = (SENSOR_SWING_DEG / 2) * RADIANS;
  const middle = addScaled(place.at, place.axis, tool.at);
  const tip = (angle: number): Vec3 =>
    addScaled(middle, rotate(heading, place.axis, angle), tool.handle / Math.cos(half));
  return { corners: [middle, tip(-half), tip(half)], radius: SENSOR_HANDLE };
}
