/**
 * Where a sensor's bung stands: on the surface of its tube or collector, at a place along it and round it, and the way out.
 * mm and unit vectors in the design's frame; angles in radians.
 */
import type { Sensor } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { collectorPlan } from '../collector/plan';
import { pointAt } from '../curve/pointAt';
import type { Header, ResolvedMerge, ResolvedRunner } from '../header/resolve';
import { RADIANS } from '../tolerance';
import { addScaled, cross, reject, rotate, scale, unit } from '../vector';
import { uppermost } from './uppermost';

export { uppermost } from './uppermost';

export type BungPlace = {
  readonly at: Vec3;
  readonly axis: Vec3;
  /** Of the flow, and how far it may be followed: the tube's centerline or the collector's axis. */
  readonly flow: Vec3;
  readonly length: number;
  /** Whether `at` of the sensor lies along it. */
  readonly isOn: boolean;
  /** Of the tube there, outside. */
  readonly radius: number;
  readonly toCollector: number;
};

/** Null where its runner has no way yet. */
export function bungPlace(header: Header, sensor: Sensor): BungPlace | null {
  const { on } = sensor;
  if ('merge' in on) return onMerge(header, header.merges.get(on.merge)!, sensor);
  return onRunner(header, header.runners.find((r) => r.runner.id === on.runner)!, sensor);
}

function onRunner(header: Header, r: ResolvedRunner, { at, clock }: Sensor): BungPlace | null {
  const line = r.centerline;
  if (!line || line.segments.length === 0) return null;
  const { position, tangent } = pointAt(line, at);
  const axis = rotate(uppermost(tangent), tangent, clock * RADIANS);
  return {
    at: addScaled(position, axis, r.tubeRadius),
    axis,
    flow: tangent,
    length: line.length,
    isOn: at >= 0 && at <= line.length,
    radius: r.tubeRadius,
    toCollector: -(line.length - at + header.merges.get(r.runner.to.merge)!.merge.length),
  };
}

/** Square to its wall: the body's slant up to the plain outlet, which is a tube. */
function onMerge(header: Header, m: ResolvedMerge, { at, clock }: Sensor): BungPlace {
  const { position, axis: flow, length, startRadius, endRadius } = m.body;
  const along = Math.min(length, Math.max(0, at));
  const isPlain = along >= collectorPlan(header, m).coneEnd;
  const slope = isPlain ? 0 : (endRadius - startRadius) / length;
  const radius = isPlain ? endRadius : startRadius + slope * along;
  const out = rotate(uppermost(flow), flow, clock * RADIANS);
  return {
    at: addScaled(addScaled(position, flow, along), out, radius),
    axis: unit(addScaled(out, flow, -slope)),
    flow,
    length,
    isOn: at >= 0 && at <= length,
    radius,
    toCollector: at,
  };
}

/** The way round that a screwdriver would point at clock angles beside the axis: square to the axis, first along the flow. */
export function headings(place: BungPlace, count: number): Vec3[] {
  const first = unit(reject(place.flow, place.axis));
  const second = cross(place.axis, first);
  return Array.from({ length: count }, (_, k) => {
    const a = (2 * Math.PI * k) / count;
    return addScaled(scale(first, Math.cos(a)), second, Math.sin(a));
  });
}
