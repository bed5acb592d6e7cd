/** Parts of made problems: rows of ports, tooling, runners, and the document with its surroundings. mm and degrees. */
import { resolveHeader } from '../../../geometry/header/resolve';
import type { Design, Merge, Port, Runner, Surrounding, Tooling, Tube } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import type { Random } from '../../random';
import { type Keep, roomBeside, round1, things } from './around';
import { type Line, lineOfLength, shortLine, type Way } from './lines';

export function portRow(count: number, pitch: number, more: Partial<Port> & { first?: number } = {}): Port[] {
  const { first = 1, position = [0, 0, 0], direction = [0, 0.94, -0.34], ...rest } = more;
  return Array.from({ length: count }, (_, i) => ({
    id: `p${first + i}`,
    cylinder: first + i,
    position: [round1(position[0] + (i - (count - 1) / 2) * pitch), position[1], position[2]],
    direction,
    up: [0, 0, 1],
    opening: { shape: 'round', diameter: 34 },
    lengthInHead: 70,
    ...rest,
  }));
}

export const tube = (outsideDiameter: number): Tube => ({ outsideDiameter, wall: 1.5, material: 'stainless-304' });

export const tooling = (centerlineRadius: number, more: Partial<Tooling> = {}): Tooling => ({
  making: 'welded',
  centerlineRadius,
  firstStraight: 20,
  betweenStraight: 20,
  lastStraight: 20,
  maxBendAngle: 170,
  maxBends: 4,
  ...more,
});

export const runner = (id: string, from: Runner['from'], merge: string, secondary = false): Runner => ({
  id,
  tube: secondary ? 'secondary' : 'primary',
  group: secondary ? 'secondaries' : 'primaries',
  from,
  to: { merge },
});

/** Ports in turn to the merges named. */
export const primaries = (ports: readonly Port[], merges: readonly string[]): Runner[] =>
  ports.map((p, i) => runner(`r${i + 1}`, { port: p.id }, merges[i]!));

export type Asked = {
  readonly title: string;
  readonly ports: Port[];
  readonly merges: Merge[];
  readonly runners: Runner[];
  readonly tubes: Record<string, Tube>;
  readonly tooling: Record<string, Tooling>;
  /** Ways by which a runner's line is led, by its id. */
  readonly by?: Readonly<Record<string, readonly Way[]>>;
  /** Put there whatever the lines do: a problem that they spoil is refused. */
  readonly fixed?: Surrounding[];
  readonly count: number;
  /** Least room of the others to the lines, beyond their clearance. */
  readonly room?: number;
  /** Primaries this much longer than the longest of the short lines; null: any length, but equal. */
  readonly stretch?: number | null;
};

/** Lines are made as long as one another, so that what keeps clear of them leaves room for equal lengths. */
const EASE = 1.05;

export function problem(next: Random, asked: Asked): Design {
  const { title, ports, merges, runners, tubes, fixed = [], by = {} } = asked;
  const bare: Design = {
    format: 'evenrun-design',
    version: 1,
    title,
    display: 'mm',
    ports,
    tubes,
    tooling: asked.tooling,
    merges,
    runners,
    groups: Object.fromEntries(
      [...new Set(runners.map((r) => r.group))].map((g) => [g, { length: null, tolerance: 1 }]),
    ),
    clearance: { tubeToTube: 3 },
  };
  const { lines, longest } = linesOf(bare, by, asked.stretch ?? EASE);
  const keep = [...lines.flatMap(kept), ...merges.flatMap(mergeKept)];
  for (const s of fixed) {
    const room = roomBeside(s, keep);
    if (room < 0) throw new Error(`${title}: ${s.id} stands ${(-room).toFixed(0)} mm into what must stay free.`);
  }
  const length = asked.stretch == null ? null : Math.round(longest);
  return {
    ...bare,
    groups: { ...bare.groups, primaries: { length, tolerance: 1 } },
    surroundings: [...fixed, ...things(next, keep, asked.count, asked.room)],
  };
}

function linesOf(design: Design, by: NonNullable<Asked['by']>, stretch: number) {
  const header = resolveHeader(design);
  const taken = new Map<string, number>();
  const ends = design.runners.map((r) => {
    const inlet = taken.get(r.to.merge) ?? 0;
    taken.set(r.to.merge, inlet + 1);
    const port = design.ports.find((p) => 'port' in r.from && p.id === r.from.port);
    const merge = (id: string) => header.merges.get(id)!;
    const from = port
      ? { position: port.position, direction: unitOf(port.direction), up: port.up }
      : merge('merge' in r.from ? r.from.merge : '').outlet;
    const radius = design.tubes[r.tube]!.outsideDiameter / 2;
    return { r, from, to: merge(r.to.merge).inlets[inlet]!, radius, inHead: port?.lengthInHead ?? 0 };
  });
  const inGroup = (group: string | undefined): number =>
    stretch *
    Math.max(
      ...ends
        .filter((e) => e.r.group === group)
        .map((e) => shortLine(e.from, e.to, e.radius, by[e.r.id]).length + e.inHead),
    );
  const lines = ends.map((e) => lineOfLength(e.from, e.to, e.radius, inGroup(e.r.group) - e.inHead, by[e.r.id]));
  return { lines, longest: inGroup('primaries') };
}

function unitOf(v: Vec3): Vec3 {
  const n = Math.hypot(...v);
  return [v[0] / n, v[1] / n, v[2] / n];
}

/** A ball sticks out past a flat end, toward the head: the first and last are left to the ones beside them. */
const kept = ({ points, radius }: Line): Keep[] => points.slice(1, -1).map((at) => ({ at, radius }));

function mergeKept(m: Merge): Keep[] {
  const w = unitOf(m.axis);
  const radius = m.outletDiameter / 2 + 30;
  return Array.from({ length: 12 }, (_, i) => {
    const along = (i / 11) * (m.length + 60);
    return { at: [m.position[0] + along * w[0], m.position[1] + along * w[1], m.position[2] + along * w[2]], radius };
  });
}
