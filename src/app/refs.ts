/** Questions about references to parts of the design: which is which, and what a problem's path points at. */
import { bends, type Header } from '../../geometry';
import type { Vec3 } from '../../shared/vec3';
import type { Ref } from './session';

export function sameRef(a: Ref | null, b: Ref | null): boolean {
  if (!a || !b) return a === b;
  if (a.kind !== b.kind || a.id !== b.id) return false;
  if (a.kind !== 'runner' || b.kind !== 'runner') return true;
  return a.bend === b.bend && a.straight === b.straight;
}

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
  groups: 'group',
} as const;

/** What a path such as `runners/r1/points/2` is about; null where it is no one part. */
export function refAtPath(path: string, header: Header): Ref | null {
  const [list, id, field, index] = path.split('/');
  if (!list || !id) return null;
  if (list === 'runners') {
    const line = header.runners.find((r) => r.runner.id === id)?.centerline;
    const bend = line && field === 'points' ? bendAtPoint(Number(index), line.source, bends(line)) : undefined;
    return bend === undefined ? { kind: 'runner', id } : { kind: 'runner', id, bend };
  }
  return list in KINDS ? { kind: KINDS[list as keyof typeof KINDS], id } : null;
}

/** The bend that the document's point `index` belongs to; undefined for the two ends and for points that do not turn. */
function bendAtPoint(
  index: number,
  source: readonly number[],
  list: readonly { readonly first: number; readonly last: number }[],
): number | undefined {
  const interior = source.indexOf(index) - 1;
  const found = list.findIndex((b) => b.first <= interior && interior <= b.last);
  return found < 0 ? undefined : found;
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
