/** Whether two references mean the same part of the design. Apart from `refs.ts`, because the session itself asks. */
import type { Ref } from './session';

export function sameRef(a: Ref | null, b: Ref | null): boolean {
  if (!a || !b) return a === b;
  if (a.kind !== b.kind || a.id !== b.id) return false;
  if (a.kind === 'fastener' && b.kind === 'fastener') return a.index === b.index;
  if (a.kind !== 'runner' || b.kind !== 'runner') return true;
  return a.bend === b.bend && a.straight === b.straight;
}
