/**
 * Adds what must stay reachable beside the header's own fasteners, and sensors in its tubes, where they usually are: near the
 * ports, in the collector. Places and sizes are common practice and are meant to be changed. mm, degrees.
 */
import type { Vec3 } from '../../vec3';
import type { Design, Merge, Sensor, SensorKind, ServiceKind, ServicePoint } from '../types';
import type { Added } from './add';
import { checked, refused } from './edited';
import { freeId } from './things';

const STEMS: Readonly<Record<ServiceKind, string>> = {
  'spark-plug': 'plug ',
  'oil-filter': 'filter ',
  starter: 'starter ',
  dipstick: 'dipstick ',
  bolt: 'bolt ',
};

/** From the middle of the ports: along the row, out of the head, up; and the way it comes off, in the same three. */
const USUAL: Readonly<Record<ServiceKind, { readonly at: Vec3; readonly off: Vec3 }>> = {
  'spark-plug': { at: [0, 0, 55], off: [0, 0.6, 0.8] },
  'oil-filter': { at: [0, 20, -220], off: [0, 0.5, -0.85] },
  starter: { at: [0, -10, -250], off: [1, 0, 0] },
  dipstick: { at: [0, 20, 60], off: [0, 0.2, 1] },
  bolt: { at: [0, 0, -90], off: [0, 1, 0] },
};

/** From one of its kind to the next where there is one port or none. */
const STEP = 95;

/** A step on from the last of its kind, as far as one port lies from the next; the first where its kind usually is. */
export function addService(design: Design, kind: ServiceKind): Added {
  const all = design.service ?? [];
  const id = freeId(
    all.map((point) => point.id),
    STEMS[kind],
  );
  const { middle, along, out, step } = rowOf(design);
  const last = all.filter((point) => point.kind === kind).at(-1);
  const { at, off } = USUAL[kind];
  const place = (v: Vec3): Vec3 => {
    const sum = plus(plus(times(along, v[0]), times(out, v[1])), [0, 0, v[2]]);
    return [tidy(sum[0]), tidy(sum[1]), tidy(sum[2])];
  };
  // Every cylinder has its plug: the first one is beside the first port.
  const from = kind === 'spark-plug' ? (design.ports[0]?.position ?? middle) : middle;
  const point: ServicePoint = last
    ? { ...last, id, position: plus(last.position, step) }
    : { id, kind, position: plus(from, place(at)), direction: place(off) };
  return { edited: checked({ ...design, service: [...all, point] }), thing: { kind: 'service', id } };
}

/** Common practice: a temperature probe so far from the port, any sensor so far round from the uppermost side, degrees. */
const FROM_PORT = 80;
const CLOCK = 45;
/** How far down a collector, as a share of its length: where the flows have met. */
const DOWN_COLLECTOR = 0.75;

/** Oxygen: in the last collector that has none. Temperature: near the port of the first runner that has none. */
export function addSensor(design: Design, kind: SensorKind): Added {
  const all = design.sensors ?? [];
  const id = freeId(
    all.map((sensor) => sensor.id),
    `${kind} `,
  );
  const isFree = (on: Sensor['on']) =>
    !all.some((sensor) => sensor.kind === kind && JSON.stringify(sensor.on) === JSON.stringify(on));
  const inMerges = [...design.merges]
    .sort((a, b) => Number(isLast(design, b)) - Number(isLast(design, a)))
    .map(
      (merge): Sensor => ({ id, kind, on: { merge: merge.id }, at: tidy(DOWN_COLLECTOR * merge.length), clock: CLOCK }),
    );
  const inRunners = design.runners.map(
    (runner): Sensor => ({ id, kind, on: { runner: runner.id }, at: FROM_PORT, clock: CLOCK }),
  );
  const usual = kind === 'oxygen' ? [...inMerges, ...inRunners] : [...inRunners, ...inMerges];
  const sensor = usual.find(({ on }) => isFree(on)) ?? usual[0];
  const thing = { kind: 'sensor', id } as const;
  if (!sensor)
    return {
      edited: refused(`sensors/${id}`, 'no runner or collector', 'one to weld its bung into: add one first'),
      thing,
    };
  return { edited: checked({ ...design, sensors: [...all, sensor] }), thing };
}

const isLast = (design: Design, merge: Merge): boolean =>
  !design.runners.some(({ from }) => 'merge' in from && from.merge === merge.id);

/** The row of ports: its middle, the unit way along it and level out of the head, and from one port to the next. */
function rowOf({ ports }: Design): { middle: Vec3; along: Vec3; out: Vec3; step: Vec3 } {
  const first = ports[0];
  const last = ports.at(-1);
  if (!first || !last) return { middle: [0, 0, 0], along: [1, 0, 0], out: [0, 1, 0], step: [STEP, 0, 0] };
  const span = minus(last.position, first.position);
  const level = unit([first.direction[0], first.direction[1], 0]) ?? [0, 1, 0];
  const along = unit(span) ?? [level[1], -level[0], 0];
  const step = ports.length > 1 ? times(span, 1 / (ports.length - 1)) : times(along, STEP);
  return { middle: plus(first.position, times(span, 0.5)), along, out: level, step };
}

const tidy = (x: number): number => Math.round(100 * x) / 100;
const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
function unit(v: Vec3): Vec3 | null {
  const size = Math.hypot(...v);
  return size > 0 ? times(v, 1 / size) : null;
}
