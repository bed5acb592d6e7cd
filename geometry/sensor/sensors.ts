/**
 * Every sensor of the design: where its bung is, how it leans, whether it and its spanner have room, and what is to be said
 * about it. The header at rest and bare. mm, degrees.
 */
import type { Sensor } from '../../shared/design/types';
import { SENSOR_AIR, SENSOR_SIZES } from '../../shared/stock/sensors';
import type { Meshes } from '../check/meshes';
import { type Say, sayIn } from '../check/words';
import type { Header } from '../header/resolve';
import type { ToolSolid } from '../reach/report';
import { DEGREES, LENGTH_TOLERANCE } from '../tolerance';
import { addScaled } from '../vector';
import { around, type Neighbour } from './neighbours';
import { bungPlace } from './place';
import { bendRemark, endRemark, leanRemark, mixRemark, named, probeRemarks } from './remarks';
import type { SensorEntry, SensorRemark } from './report';
import { barAlong, spannerTry } from './spanner';

/** Farther off than this nothing is near, mm. */
const NEAR = 60;

/** One entry a sensor, in the design's order; of one that is on nothing laid, what is missing is said. @param meshes by file name, as for `check` */
export const sensorReport = (header: Header, meshes: Meshes): SensorEntry[] =>
  (header.design.sensors ?? []).map((sensor) => entryOf(header, meshes, sensor));

function entryOf(header: Header, meshes: Meshes, sensor: Sensor): SensorEntry {
  const say = sayIn(header.design.display);
  const size = SENSOR_SIZES[sensor.kind];
  const place = bungPlace(header, sensor);
  if (!place) return unplaced(header, sensor);
  const lean = Math.asin(Math.max(-1, Math.min(1, place.axis[2]))) * DEGREES;
  const base = { id: sensor.id, at: place.at, axis: place.axis, lean, toCollector: place.toCollector };
  const atEnd = endRemark(sensor, place, size, say);
  if (!place.isOn)
    return { ...base, room: null, spanner: { fits: false, by: [] }, solids: [], remarks: atEnd ? [atEnd] : [] };

  const { neighbours, missing } = around(header, meshes, sensor, size.bung.diameter / 2);
  const length = sensor.length ?? size.length;
  const bung = barAlong(place, 0, Math.min(size.bung.height, length), size.bung.diameter / 2);
  const bar = barAlong(place, 0, length, size.diameter / 2);
  const own = nearest(neighbours, (n) => {
    const [a, b] = [n.toBar(bar, NEAR), n.toBar(bung, NEAR)];
    return a === null ? b : b === null ? a : Math.min(a, b);
  });
  const tool = spannerTry(place, size, neighbours);
  const room = own && tool.room ? (tool.room.gap < own.gap ? tool.room : own) : (own ?? tool.room);
  const solids: ToolSolid[] = [bung, bar].map((b) => ({
    shape: 'cylinder',
    a: b.position,
    b: addScaled(b.position, b.axis, b.length),
    radius: b.startRadius,
  }));
  const remarks = [
    atEnd,
    fitRemark(sensor, own, say),
    tool.fits ? null : spannerRemark(sensor, tool.by, size.acrossFlats),
    leanRemark(sensor, place, lean),
    bendRemark(header, sensor, place, size, say),
    mixRemark(header, sensor, place, say),
    ...probeRemarks(header, sensor, say),
    ...missing.map((file) => ({
      fails: false,
      message: `${named(sensor)} was not measured against ${file}, which has not been read.`,
    })),
  ].filter((r): r is SensorRemark => r !== null);
  return { ...base, room, spanner: { fits: tool.fits, by: tool.by }, solids: [...solids, ...tool.solids], remarks };
}

/** A runner without points has no surface yet: its sensor is told of, at the runner's start. */
function unplaced(header: Header, sensor: Sensor): SensorEntry {
  const id = 'runner' in sensor.on ? sensor.on.runner : '';
  const { start } = header.runners.find((r) => r.runner.id === id)!;
  const message = `${named(sensor)} has no place yet, since runner ${id} is not laid: lay it first.`;
  return {
    id: sensor.id,
    at: start.position,
    axis: start.up,
    lean: Math.asin(Math.max(-1, Math.min(1, start.up[2]))) * DEGREES,
    toCollector: null,
    room: null,
    spanner: { fits: false, by: [] },
    solids: [],
    remarks: [{ fails: true, message }],
  };
}

type Near = { readonly gap: number; readonly by: string };

function nearest(neighbours: readonly Neighbour[], gapOf: (n: Neighbour) => number | null): Near | null {
  let best: Near | null = null;
  for (const n of neighbours) {
    const gap = gapOf(n);
    if (gap !== null && gap < (best?.gap ?? NEAR)) best = { gap, by: n.id };
  }
  return best;
}

function fitRemark(sensor: Sensor, own: Near | null, say: Say): SensorRemark | null {
  if (!own || own.gap >= SENSOR_AIR) return null;
  if (own.gap < -LENGTH_TOLERANCE * 1000)
    return {
      fails: true,
      message: `${named(sensor)} does not fit: it runs ${say(-own.gap)} into ${own.by}; turn it or move it along.`,
    };
  const message = `${named(sensor)} is ${say(Math.max(0, own.gap))} from ${own.by}; ${say(SENSOR_AIR)} of air is common practice, for its lead and seal: turn it or move it along.`;
  return { fails: false, message };
}

const spannerRemark = (sensor: Sensor, by: readonly string[], acrossFlats: number): SensorRemark => ({
  fails: true,
  message: `${named(sensor)}: no spanner of ${acrossFlats} mm can be swung on it, ${by.join(', ')} in the way: turn it or move it along.`,
});
