/** Which handles go with what is picked, and which one the keys move. Pure. */
import { type Header, type Path, pathIn, ridesEnd, ridesStart } from '../../../geometry';
import type { Ref } from '../session';
import { sketch } from './grip';
import type { Handle } from './handle';

/**
 * Handles of the picked thing; of a runner its bends, and what can be done with the straight that is picked or pointed at.
 * @param hovered what the pointer is over
 */
export function handlesFor(header: Header, picked: Ref | null, hovered: Ref | null): Handle[] {
  switch (picked?.kind) {
    case 'runner': {
      const id = picked.id;
      if (!header.runners.some((r) => r.runner.id === id && r.centerline)) return [];
      const path = pathIn(header, id);
      const bends = path.bends.map((_, bend): Handle => ({ kind: 'bend', runner: id, bend }));
      // A picked bend has its two straights' ticks; theirs come once one of them is picked.
      if (picked.bend !== undefined) return [...slides(path, id, picked.bend), ...bends];
      const pointed = hovered?.kind === 'runner' && hovered.id === id ? hovered.straight : undefined;
      const straight = pointed ?? picked.straight;
      if (straight === undefined || path.runner.locked || !path.straights[straight]) return bends;
      const parts = (['run', 'add', 'turn'] as const).map((kind): Handle => ({ kind, runner: id, straight }));
      return [...parts.filter((h) => !sketch(header, h)?.refusal), ...bends];
    }
    case 'merge': {
      const { id } = picked;
      return [
        { kind: 'merge', id },
        ...(['up', 'side', 'axis'] as const).map((about): Handle => ({ kind: 'tilt', id, about })),
      ];
    }
    case 'port':
      return [{ kind: 'port', id: picked.id }];
    case 'surrounding': {
      const { id } = picked;
      const shape = header.surroundings.find((s) => s.id === id)?.shape;
      const whole: Handle = { kind: 'surrounding', id };
      if (shape === 'capsule' || shape === 'cylinder')
        return [whole, { kind: 'capsule-end', id, end: 'a' }, { kind: 'capsule-end', id, end: 'b' }];
      if (shape !== 'box') return [whole];
      const faces = ([0, 1, 2] as const).flatMap((axis) =>
        (['min', 'max'] as const).map((side): Handle => ({ kind: 'face', id, axis, side })),
      );
      return [whole, ...faces];
    }
    default:
      return [];
  }
}

/** The first bend slides only along the line of its start, the last along that of its end; a lone bend on neither. */
function slides(path: Path, runner: string, bend: number): Handle[] {
  const range = path.bends[bend];
  if (!range || path.runner.locked) return [];
  const sides = (['in', 'out'] as const).filter((s) => (s === 'in' ? !ridesEnd(path, range) : !ridesStart(range)));
  return sides.map((along) => ({ kind: 'slide', runner, bend, along }));
}

/** What arrow keys and exact entry move; null where what is picked has no one place. */
export function mainHandle(picked: Ref | null): Handle | null {
  switch (picked?.kind) {
    case 'runner':
      if (picked.bend !== undefined) return { kind: 'bend', runner: picked.id, bend: picked.bend };
      return picked.straight === undefined ? null : { kind: 'run', runner: picked.id, straight: picked.straight };
    case 'merge':
    case 'port':
    case 'surrounding':
      return { kind: picked.kind, id: picked.id };
    default:
      return null;
  }
}
