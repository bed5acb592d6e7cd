/** From what is picked to what is measured: whole things, their parts, or the very place, snapped to what is near it. mm. */
import {
  addScaled,
  bends,
  distance,
  dot,
  type Header,
  nearestStation,
  partStations,
  pointAt,
  straightIndices,
  sub,
  type Thing,
  unit,
} from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import type { Ref } from '../session';

/** Null for what has no place, such as a group or the engine. */
export function thingOf(ref: Ref): Thing | null {
  switch (ref.kind) {
    case 'runner':
      return {
        kind: 'runner',
        id: ref.id,
        ...(ref.bend === undefined ? {} : { bend: ref.bend }),
        ...(ref.straight === undefined ? {} : { straight: ref.straight }),
      };
    case 'port':
    case 'merge':
    case 'surrounding':
      return { kind: ref.kind, id: ref.id };
    case 'fastener':
      return { kind: 'fastener', id: ref.id, index: ref.index };
    default:
      return null;
  }
}

/** Two names for one thing compare equal. */
export const sameThing = (a: Thing, b: Thing): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * The place that was pointed at.
 * @param at on the drawn surface, which strays a little from the true one
 * @param reach how near a tangent point, a mouth or a corner must be to be meant instead, mm
 */
export function placeThing(header: Header, ref: Ref, at: Vec3, reach: number): Thing {
  if (ref.kind === 'runner') return onRunner(header, ref.id, at, reach);
  if (ref.kind === 'port' || ref.kind === 'fastener') return thingOf(ref)!;
  const on = `${ref.kind}/${ref.id}`;
  if (ref.kind === 'merge') {
    const merge = header.merges.get(ref.id);
    const along = merge ? dot(sub(at, merge.body.position), merge.body.axis) : Number.NaN;
    if (merge && Math.abs(along) < reach) {
      const off = merge.inlets.map((inlet) => distance(inlet.position, at));
      return { kind: 'merge', id: ref.id, mouth: off.indexOf(Math.min(...off)) + 1 };
    }
    if (merge && Math.abs(along - merge.body.length) < reach) return { kind: 'merge', id: ref.id, mouth: 'outlet' };
  }
  if (ref.kind === 'surrounding') {
    const box = header.surroundings.find((s) => s.id === ref.id);
    if (box?.shape === 'box') {
      const corner = at.map((x, i) => (x - box.min[i]! < box.max[i]! - x ? box.min[i]! : box.max[i]!));
      if (distance(at, corner as unknown as Vec3) < reach) return { kind: 'point', at: corner as unknown as Vec3, on };
    }
  }
  return { kind: 'point', at, on };
}

function onRunner(header: Header, id: string, at: Vec3, reach: number): Thing {
  const runner = header.runners.find((r) => r.runner.id === id);
  const line = runner?.centerline;
  if (!runner || !line) return { kind: 'point', at };
  const station = nearestStation(line, at);
  const joints = bends(line).flatMap((_, bend) => {
    const part = partStations(line, { bend })!;
    return [part.from, part.to];
  });
  const near = [0, ...joints, line.length].reduce((a, b) => (Math.abs(b - station) < Math.abs(a - station) ? b : a));
  if (Math.abs(near - station) < reach) return { kind: 'station', id, station: near };
  const { position } = pointAt(line, station);
  return { kind: 'point', at: addScaled(position, unit(sub(at, position)), runner.tubeRadius), on: `runner/${id}` };
}

/** Everything that can be chosen by name, for whoever measures without a pointer. */
export function allThings(header: Header): { readonly group: string; readonly things: readonly Thing[] }[] {
  const runners = header.runners.filter((r) => r.centerline);
  const groups: { group: string; things: Thing[] }[] = [
    { group: 'Runners', things: runners.map(({ runner }): Thing => ({ kind: 'runner', id: runner.id })) },
    {
      group: 'Ports',
      things: [...header.ports.keys()].map((id): Thing => ({ kind: 'port', id })),
    },
    {
      group: 'Collectors',
      things: [...header.merges.values()].flatMap(({ merge, inlets }): Thing[] => [
        { kind: 'merge', id: merge.id },
        ...inlets.map((_, i): Thing => ({ kind: 'merge', id: merge.id, mouth: i + 1 })),
        { kind: 'merge', id: merge.id, mouth: 'outlet' },
      ]),
    },
    {
      group: 'Surroundings',
      things: header.surroundings.map(({ id }): Thing => ({ kind: 'surrounding', id })),
    },
    {
      group: 'Bolt holes',
      things: (header.design.flanges ?? []).flatMap((f) =>
        (f.fasteners ?? []).map((_, index): Thing => ({ kind: 'fastener', id: f.id, index })),
      ),
    },
    ...runners.map(({ runner: { id }, centerline }) => ({
      group: `Parts of ${id}`,
      things: [
        ...straightIndices(centerline!).map((_, straight): Thing => ({ kind: 'runner', id, straight })),
        ...bends(centerline!).map((_, bend): Thing => ({ kind: 'runner', id, bend })),
      ],
    })),
  ];
  return groups.filter((g) => g.things.length > 0);
}
