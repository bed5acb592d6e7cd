/** Questions about references to parts of the design: which is which, and what a problem's path points at. */
import { bends, type Centerline, type Header, straightIndices } from '../../geometry';
import type { Vec3 } from '../../shared/vec3';
import { sameRef } from './sameRef';
import type { Ref } from './session';

export { sameRef };

/** Whether pointing at `ref` lights `part`: the same thing, or the runner that it is part of. */
export function lights(ref: Ref | null, part: Ref): boolean {
  if (!ref || ref.kind !== part.kind || ref.id !== part.id) return false;
  if (ref.kind !== 'runner') return true;
  return (ref.bend === undefined && ref.straight === undefined) || sameRef(ref, part);
}

export const runnerIn = (ref: Ref | null): string | null => (ref?.kind === 'runner' ? ref.id : null);

const KINDS = {
  ports: 'port',
  flanges: 'flange',
  merges: 'merge',
  surroundings: 'surrounding',
  service: 'service',
  sensors: 'sensor',
  groups: 'group',
} as const;

/** What a path such as `runners/r1/points/2` is about; null where it is no one part. */
export function refAtPath(path: string, header: Header): Ref | null {
  const [list, id, field, index] = path.split('/');
  if (!list || !id) return null;
  if (list === 'runners') return runnerPart(id, field, Number(index), header);
  // A group's problem may be about one of its runners.
  if (list === 'groups' && field) return { kind: 'runner', id: field };
  if (list === 'flanges' && field === 'fasteners' && index !== undefined)
    return { kind: 'fastener', id, index: Number(index) };
  return list in KINDS ? { kind: KINDS[list as keyof typeof KINDS], id } : null;
}

function runnerPart(id: string, field: string | undefined, index: number, header: Header): Ref {
  const line = header.runners.find((r) => r.runner.id === id)?.centerline;
  const part = line && partAt(line, field, index);
  return { kind: 'runner', id, ...part };
}

/** Paths count the document's points and radii and the centerline's straights; parts count what a bender sees. */
function partAt(line: Centerline, field: string | undefined, index: number): { bend?: number; straight?: number } {
  const straights = straightIndices(line);
  switch (field) {
    case 'straights':
      return known('straight', straights.indexOf(index));
    case 'start':
      return { straight: 0 };
    case 'end':
      return { straight: straights.length - 1 };
    case 'bends':
      return { bend: index };
    case 'points':
      return known('bend', bendAtPoint(line, index));
    case 'radii':
      return known('bend', bendAtPoint(line, index + 1));
    default:
      return {};
  }
}

const known = (key: 'bend' | 'straight', index: number) => (index < 0 ? {} : { [key]: index });

/** The bend that the document's point `index` belongs to; −1 for the two ends and for points that do not turn. */
function bendAtPoint(line: Centerline, index: number): number {
  const interior = line.source.indexOf(index) - 1;
  return bends(line).findIndex((b) => b.first <= interior && interior <= b.last);
}

/** Somewhere to look for a part that a problem names without a place. */
export function placeOf(ref: Ref, header: Header): Vec3 | null {
  switch (ref.kind) {
    case 'runner': {
      const runner = header.runners.find((r) => r.runner.id === ref.id);
      const points = runner?.centerline?.points;
      if (!points) return runner?.start.position ?? null;
      if (ref.bend === undefined) return points[Math.floor(points.length / 2)]!;
      const bend = bends(runner.centerline!)[ref.bend];
      return bend ? points[bend.first + 1]! : null;
    }
    case 'port':
      return header.ports.get(ref.id)?.pose.position ?? null;
    case 'merge':
      return header.merges.get(ref.id)?.merge.position ?? null;
    default:
      return null;
  }
}
