/**
 * What is said about where a sensor stands, in plain words with the remedy: lean, bends, ends of the tube, what exhaust it
 * sees, and how far temperature probes are from their ports. What it rests on is common practice, and says so. mm, degrees.
 */
import type { Sensor } from '../../shared/design/types';
import {
  EQUAL_PROBES,
  FARTHEST_PROBE,
  LEAST_OXYGEN_LEAN_DEG,
  NEAR_STRAIGHT,
  type SensorSize,
} from '../../shared/stock/sensors';
import type { Say } from '../check/words';
import { bendNumber, calledA, deg } from '../check/words';
import { collectorPlan } from '../collector/plan';
import type { Header, ResolvedRunner } from '../header/resolve';
import { DEGREES } from '../tolerance';
import { dot } from '../vector';
import { type BungPlace, uppermost } from './place';
import type { SensorRemark } from './report';

export const named = ({ id, kind }: Sensor): string =>
  `${kind === 'oxygen' ? 'Oxygen sensor' : 'Temperature probe'} ${id}`;

const runnerOf = (header: Header, { on }: Sensor): ResolvedRunner | undefined =>
  'runner' in on ? header.runners.find((r) => r.runner.id === on.runner) : undefined;

/** Places are told to two decimals: what is set to one as told must hold. */
const SHOWN = 0.01;

const hostOf = ({ on }: Sensor): string => ('merge' in on ? calledA('collector', on.merge) : `runner ${on.runner}`);

/** Null while the place is on the tube or collector with all of its bung. */
export function endRemark(sensor: Sensor, place: BungPlace, size: SensorSize, say: Say): SensorRemark | null {
  const { at } = sensor;
  const half = size.bung.diameter / 2;
  const host = hostOf(sensor);
  const room =
    place.length >= size.bung.diameter ? `put it between ${say(half)} and ${say(place.length - half)}` : null;
  const remedy = room ?? `it is too short for a bung of ${say(size.bung.diameter)}: choose another place`;
  if (!place.isOn) {
    const message = `${named(sensor)} is set ${say(at)} along ${host}, which is ${say(place.length)} long: ${remedy}.`;
    return { fails: true, message };
  }
  const past = Math.max(half - at, at - (place.length - half));
  if (past <= SHOWN) return null;
  const end = at < half ? 'start' : 'end';
  const message = `${named(sensor)}: its bung reaches ${say(past)} past the ${end} of ${host}: ${remedy}.`;
  return { fails: true, message };
}

/** Only oxygen sensors mind: condensed water runs down onto a hot element. */
export function leanRemark(sensor: Sensor, place: BungPlace, lean: number): SensorRemark | null {
  if (sensor.kind !== 'oxygen' || lean >= LEAST_OXYGEN_LEAN_DEG - SAME_LEAN) return null;
  const most = dot(uppermost(place.flow), [0, 0, 1]);
  const cos = Math.sin(LEAST_OXYGEN_LEAN_DEG / DEGREES) / most;
  const remedy =
    'merge' in sensor.on || cos <= 1
      ? `turn it to a clock angle ${cos <= 1 ? `within ${deg(Math.floor(Math.acos(cos) * DEGREES))} of 0` : 'nearer 0'}`
      : 'the tube stands too steep here for any clock angle: move it to a flatter stretch';
  const least = `at least ${deg(LEAST_OXYGEN_LEAN_DEG)} above horizontal is common practice, so that condensed water runs off`;
  return lean < 0
    ? { fails: true, message: `${named(sensor)} hangs ${deg(-lean)} below horizontal; ${least}: ${remedy}.` }
    : { fails: false, message: `${named(sensor)} leans ${deg(lean)} above horizontal; ${least}: ${remedy}.` };
}
const SAME_LEAN = 1e-6;
/** Facing the bend's middle by more than this is its inside: within 60°. */
const INSIDE = 0.5;

/** A bung is welded on a straight: on a bend the saddle gapes, and on its inside the flow has parted from the wall. */
export function bendRemark(
  header: Header,
  sensor: Sensor,
  place: BungPlace,
  size: SensorSize,
  say: Say,
): SensorRemark | null {
  const line = runnerOf(header, sensor)?.centerline;
  if (!line) return null;
  const half = size.bung.diameter / 2;
  const { at } = sensor;
  const arcs = line.segments.filter((s) => s.kind === 'arc');
  const number = arcs.findIndex((s) => s.station + SHOWN < at + half && at - half < s.station + s.length - SHOWN);
  if (number < 0) return null;
  const arc = arcs[number]!;
  const turned = Math.min(arc.angle, Math.max(0, at - arc.station) / arc.radius);
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  const facing = c * dot(arc.inward, place.axis) - s * dot(arc.direction, place.axis);
  const side = facing > INSIDE ? 'the inside of ' : '';
  const near = line.segments
    .filter((x) => x.kind === 'straight' && x.length >= size.bung.diameter)
    .map((x) => Math.min(x.station + x.length - half, Math.max(x.station + half, at)))
    .sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0];
  const bend = bendNumber(line, number);
  if (near === undefined || Math.abs(near - at) > NEAR_STRAIGHT) {
    if (!side) return null;
    return {
      fails: false,
      message: `${named(sensor)} stands on ${side}bend ${bend}, where the flow parts from the wall: turn it to the outside.`,
    };
  }
  const message = `${named(sensor)} stands on ${side}bend ${bend}: put it on the straight at ${say(near)}.`;
  return { fails: false, message };
}

/** An oxygen sensor sees the exhaust of what has merged before it. */
export function mixRemark(header: Header, sensor: Sensor, place: BungPlace, say: Say): SensorRemark | null {
  if (sensor.kind !== 'oxygen') return null;
  const { on, at } = sensor;
  if ('merge' in on) {
    const plan = collectorPlan(header, header.merges.get(on.merge)!);
    if (at >= plan.plateEnd || place.length < plan.plateEnd) return null;
    const message = `${named(sensor)} stands where the tubes of ${calledA('collector', on.merge)} have not merged yet: put it beyond ${say(plan.plateEnd)}, or behind the outlet.`;
    return { fails: false, message };
  }
  const { from } = runnerOf(header, sensor)!.runner;
  if ('merge' in from) {
    const { size, all } = cylindersOf(header, from.merge);
    if (size === all) return null;
    const message = `${named(sensor)} stands behind ${calledA('collector', from.merge)} and sees ${size} of ${all} cylinders: move it to the last collector to see all.`;
    return { fails: false, message };
  }
  const { cylinder } = header.ports.get(from.port)!.port;
  const message = `${named(sensor)} stands in one primary and sees cylinder ${cylinder} alone: move it to the collector to see all.`;
  return { fails: false, message };
}

/** Ports that feed a merge, of all ports that feed the collector where its flow ends. */
function cylindersOf(header: Header, merge: string): { size: number; all: number } {
  const feeding = (id: string, seen: ReadonlySet<string> = new Set()): number =>
    seen.has(id)
      ? 0
      : header.runners
          .filter((r) => r.runner.to.merge === id)
          .map(({ runner: { from } }) => ('port' in from ? 1 : feeding(from.merge, new Set([...seen, id]))))
          .reduce((a, b) => a + b, 0);
  const seen = new Set<string>();
  let last = merge;
  for (;;) {
    seen.add(last);
    const next = header.runners.find(({ runner: { from } }) => 'merge' in from && from.merge === last)?.runner.to.merge;
    if (next === undefined || seen.has(next)) break;
    last = next;
  }
  return { size: feeding(merge), all: feeding(last) };
}

/** Probes tell cylinders apart only where all are as far from their ports. */
export function probeRemarks(header: Header, sensor: Sensor, say: Say): SensorRemark[] {
  const own = fromPort(header, sensor);
  if (sensor.kind !== 'temperature' || own === null) return [];
  const remarks: SensorRemark[] = [];
  if (own > FARTHEST_PROBE)
    remarks.push({
      fails: false,
      message: `${named(sensor)} is ${say(own)} from its port; within ${say(FARTHEST_PROBE)} is common practice, before the exhaust has cooled: move it nearer.`,
    });
  const others = (header.design.sensors ?? []).flatMap((s) => {
    const far = s.kind === 'temperature' && s.id !== sensor.id ? fromPort(header, s) : null;
    return far === null ? [] : [{ id: s.id, far }];
  });
  const odd = others.find(({ far }) => Math.abs(far - own) > EQUAL_PROBES);
  if (odd)
    remarks.push({
      fails: false,
      message: `${named(sensor)} is ${say(own)} from its port and ${odd.id} is ${say(odd.far)}: put all at the same distance, or their readings cannot be compared.`,
    });
  return remarks;
}

const fromPort = (header: Header, sensor: Sensor): number | null => {
  const from = runnerOf(header, sensor)?.runner.from;
  return from && 'port' in from ? sensor.at : null;
};
