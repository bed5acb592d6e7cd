/**
 * What is fitted to a bank, seen in the plane with it: sensors, which go along with their runners and collectors, and service
 * points. A sensor's clock counts right-handed about the flow, so it turns over: in an upright plane it changes its sign. mm, °.
 */
import type { Design, Merge, Runner, Sensor, ServicePoint } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { pointAt } from '../curve/pointAt';
import { resolveHeader } from '../header/resolve';
import { uppermost } from '../sensor/uppermost';
import { DEGREES } from '../tolerance';
import { rotate, signedAngle, unit } from '../vector';
import type { Reflection } from './reflect';

/** Of those on the runners and merges given. */
export const sensorsOn = (design: Design, runners: readonly Runner[], merges: readonly Merge[]): readonly Sensor[] =>
  (design.sensors ?? []).filter(({ on }) =>
    'runner' in on ? runners.some((r) => r.id === on.runner) : merges.some((m) => m.id === on.merge),
  );

/** A plug has its cylinder's bank: where one can tell, as for a head's stand-in. */
export const usualService = (design: Design, cylinders: readonly number[]): readonly ServicePoint[] =>
  design.ports.every((p) => cylinders.includes(p.cylinder))
    ? (design.service ?? []).filter((s) => s.kind === 'spark-plug')
    : [];

export const reflectedService = (point: ServicePoint, r: Reflection): ServicePoint => ({
  ...point,
  position: r.point(point.position),
  direction: r.vector(point.direction),
});

/** The clock of each sensor's image. @param design the one that they are in */
export function reflectedClocks(
  design: Design,
  sensors: readonly Sensor[],
  r: Reflection,
): ReadonlyMap<string, number> {
  if (sensors.length === 0) return new Map();
  const header = resolveHeader(design);
  return new Map(
    sensors.map((sensor) => {
      const { on } = sensor;
      const line = 'runner' in on ? header.runners.find((h) => h.runner.id === on.runner)?.centerline : null;
      const flow =
        'merge' in on
          ? unit(header.merges.get(on.merge)!.merge.axis)
          : line
            ? pointAt(line, sensor.at).tangent
            : // Not routed yet: as on a tube that lies level.
              null;
      return [sensor.id, flow ? reflectedClock(sensor.clock, flow, r) : -sensor.clock + 0];
    }),
  );
}

function reflectedClock(clock: number, flow: Vec3, r: Reflection): number {
  const out = r.vector(rotate(uppermost(flow), flow, clock / DEGREES));
  const image = r.vector(flow);
  const turned = signedAngle(uppermost(image), out, image) * DEGREES;
  // A nanodegree is the walk along the tube's, not the user's.
  return Math.round(turned * 1e9) / 1e9 + 0;
}
