/**
 * Where along a runner the roll of wrap cannot be passed round it, and where a sensor's bung stands: what must stay bare whatever
 * tools need. mm along the centerline.
 */
import type { Wrap } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import { isTree, obstaclesOf } from '../check/obstacles';
import { frustumShape } from '../clearance/shapes';
import { sampleEvenly } from '../curve/evenly';
import type { Header, ResolvedRunner } from '../header/resolve';
import { wrapThickness } from './cloud';
import type { BareReason } from './report';
import { clipped, type Span } from './spans';

export type Bare = { readonly span: Span; readonly why: BareReason; readonly of: string };

const STEP = 2;
/** On either side of a bung's middle, so that it can be welded, and wrap be tied off: common practice. */
const SENSOR_ROOM = 25;

type Line = { readonly r: ResolvedRunner; readonly at: Float64Array; readonly station: Float64Array };

/** For each runner that has a line, in the header's order. */
export function bareByPlace(header: Header, wrap: Wrap, meshes: Meshes): Map<string, Bare[]> {
  const lines = header.runners.flatMap((r): Line[] =>
    r.centerline ? [{ r, ...sampleEvenly(r.centerline, STEP) }] : [],
  );
  const { obstacles } = obstaclesOf(header, meshes);
  return new Map(
    lines.map((line): [string, Bare[]] => {
      const { id } = line.r.runner;
      const length = line.r.centerline!.length;
      const found = [
        ...lines.flatMap((other) => (other === line ? [] : besideTube(header, line, other, wrap))),
        ...obstacles.flatMap(({ surrounding, shape }) => {
          const near = line.r.tubeRadius + wrap.roll + wrapThickness(wrap);
          const distance = isTree(shape)
            ? (x: number, y: number, z: number) => shape.nearest(x, y, z, near)
            : shape.signedDistance;
          return along(line, (x, y, z) => distance(x, y, z) < near).map(
            (span): Bare => ({ span, why: 'narrow', of: surrounding.id }),
          );
        }),
        ...[...header.merges.values()].flatMap(({ merge, body }) => {
          const { from, to } = line.r.runner;
          if (to.merge === merge.id || ('merge' in from && from.merge === merge.id)) return [];
          const { signedDistance } = frustumShape(body);
          const near = line.r.tubeRadius + wrap.roll + wrapThickness(wrap);
          return along(line, (x, y, z) => signedDistance(x, y, z) < near).map(
            (span): Bare => ({ span, why: 'narrow', of: merge.id }),
          );
        }),
        ...(header.design.sensors ?? []).flatMap((sensor): Bare[] =>
          'runner' in sensor.on && sensor.on.runner === id
            ? [{ span: [sensor.at - SENSOR_ROOM, sensor.at + SENSOR_ROOM], why: 'sensor', of: sensor.id }]
            : [],
        ),
      ];
      return [id, found.flatMap((b) => clipped([b.span], length).map((span) => ({ ...b, span })))];
    }),
  );
}

/** Both tubes wrapped, and the roll between them: in the bundle of one collector that is the collector's, elsewhere the tube's. */
function besideTube(header: Header, line: Line, other: Line, wrap: Wrap): Bare[] {
  const near = line.r.tubeRadius + other.r.tubeRadius + wrap.roll + 2 * wrapThickness(wrap);
  const squared = near * near;
  const { at, station } = other;
  const boxes = boxesOf(at, near);
  const spans = along(line, (x, y, z) => {
    for (const box of boxes) {
      if (x < box.low[0]! || y < box.low[1]! || z < box.low[2]!) continue;
      if (x > box.high[0]! || y > box.high[1]! || z > box.high[2]!) continue;
      for (let i = box.from; i < box.to; i++) {
        const dx = at[3 * i]! - x;
        const dy = at[3 * i + 1]! - y;
        const dz = at[3 * i + 2]! - z;
        if (dx * dx + dy * dy + dz * dz < squared) return true;
      }
    }
    return false;
  });
  const { merge } = line.r.runner.to;
  const bundled = merge === other.r.runner.to.merge;
  const end = station.length > 0 ? line.r.centerline!.length : 0;
  return spans.map((span): Bare => {
    // What runs on from the inlets is the bundle; tubes that come near before and part again are not.
    if (bundled && span[1] >= end - STEP) return { span, why: 'bundle', of: merge };
    const { from } = line.r.runner;
    const ports = 'port' in from && 'port' in other.r.runner.from && span[0] <= STEP;
    const bundle = ports ? (header.ports.get(from.port)?.bundle ?? 0) : 0;
    return { span, why: bundle > 0 ? 'bundle' : 'narrow', of: other.r.runner.id };
  });
}

const CHUNK = 24;

function boxesOf(at: Float64Array, grown: number) {
  const count = at.length / 3;
  const boxes: { from: number; to: number; low: number[]; high: number[] }[] = [];
  for (let from = 0; from < count; from += CHUNK) {
    const to = Math.min(count, from + CHUNK);
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    for (let i = from; i < to; i++)
      for (let k = 0; k < 3; k++) {
        low[k] = Math.min(low[k]!, at[3 * i + k]! - grown);
        high[k] = Math.max(high[k]!, at[3 * i + k]! + grown);
      }
    boxes.push({ from, to, low, high });
  }
  return boxes;
}

/** The stretches on which something holds, half a step farther on either side, in whole millimetres. */
function along({ at, station }: Line, holds: (x: number, y: number, z: number) => boolean): Span[] {
  const spans: Span[] = [];
  let first = -1;
  for (let i = 0; i <= station.length; i++) {
    const on = i < station.length && holds(at[3 * i]!, at[3 * i + 1]!, at[3 * i + 2]!);
    if (on && first < 0) first = i;
    if (on || first < 0) continue;
    spans.push([Math.floor(station[first]! - STEP / 2), Math.ceil(station[i - 1]! + STEP / 2)]);
    first = -1;
  }
  return spans;
}
