/** Grips on collectors, ports and surroundings. mm, radians. */
import {
  addScaled,
  type Header,
  lerp,
  mergeAxes,
  moveBoxFace,
  moveCapsuleEnd,
  moveMerge,
  movePlane,
  movePort,
  moveSurrounding,
  turnMerge,
  unit,
} from '../../../geometry';
import { middleOfSurrounding } from '../../../shared/design/edit';
import type { Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { documents } from '../document';
import { boxOf } from '../meshes/facts';
import { lieOf, placedMiddle } from '../meshes/lie';
import { angleOf, byOf, type Maker } from './grip';
import type { Handle } from './handle';
import { lockedJoint } from './refusals';

const UP: Vec3 = [0, 0, 1];
const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

export function gripOfMerge(header: Header, id: string): Maker | null {
  const merge = header.merges.get(id);
  if (!merge) return null;
  return {
    held: { kind: 'merge', id },
    at: merge.body.position,
    motion: { kind: 'space' },
    along: merge.body.axis,
    refusal: lockedJoint(header, (r) => r.to.merge === id || ('merge' in r.from && r.from.merge === id)),
    ask: (from, amount) => moveMerge(from, id, byOf(amount)),
  };
}

export function gripOfTilt(header: Header, id: string, about: 'up' | 'side' | 'axis'): Maker | null {
  const moved = gripOfMerge(header, id);
  const merge = header.merges.get(id);
  if (!moved || !merge) return null;
  const { u, v, w } = mergeAxes(merge.merge);
  const axis = { up: u, side: v, axis: w }[about];
  return {
    ...moved,
    // A tilt is held at the outlet's end, a twist at the rim of the inlets.
    at:
      about === 'axis'
        ? addScaled(merge.body.position, u, merge.body.startRadius)
        : addScaled(merge.body.position, w, merge.body.length),
    motion: { kind: 'turn', axis, centre: merge.body.position, round: 0 },
    along: axis,
    targets: [],
    ask: (from, amount) => turnMerge(from, id, axis, angleOf(amount)),
  };
}

export function gripOfPort(header: Header, id: string): Maker | null {
  const port = header.ports.get(id);
  if (!port) return null;
  return {
    held: { kind: 'port', id },
    at: port.pose.position,
    motion: { kind: 'space' },
    along: port.pose.direction,
    refusal: lockedJoint(header, (r) => 'port' in r.from && r.from.port === id),
    ask: (from, amount) => movePort(from, id, byOf(amount)),
  };
}

export function gripOfSurrounding(
  header: Header,
  handle: Extract<Handle, { kind: 'capsule-end' | 'face' }> | { readonly kind: 'surrounding'; readonly id: string },
): Maker | null {
  const { id } = handle;
  const body = header.surroundings.find((s) => s.id === id);
  if (!body) return null;
  const common = {
    held: { kind: 'surrounding', id } as const,
    motion: { kind: 'space' } as const,
    along: UP,
    refusal: null,
  };
  if (handle.kind === 'capsule-end') {
    if (body.shape !== 'capsule' && body.shape !== 'cylinder') return null;
    return {
      ...common,
      at: body[handle.end],
      ask: (from, amount) => moveCapsuleEnd(from, id, handle.end, byOf(amount)),
    };
  }
  if (handle.kind === 'face') {
    if (body.shape !== 'box') return null;
    const { axis, side } = handle;
    const corner = (side === 'min' ? Math.min : Math.max)(body.min[axis], body.max[axis]);
    const at = lerp(body.min, body.max, 0.5).map((x, i) => (i === axis ? corner : x)) as unknown as Vec3;
    return {
      ...common,
      at,
      motion: { kind: 'line', way: AXES[axis]! },
      along: AXES[axis]!,
      ask: (from, amount) => moveBoxFace(from, id, axis, side, byOf(amount)[axis]),
    };
  }
  const at = middleOf(body);
  if (body.shape === 'plane') {
    const way = unit(body.normal);
    return {
      ...common,
      at,
      motion: { kind: 'line', way },
      along: way,
      ask: (from, amount) => movePlane(from, id, byOf(amount)),
    };
  }
  return { ...common, at, ask: (from, amount) => moveSurrounding(from, id, byOf(amount)) };
}

/** A mesh is held in its middle: its file's origin may lie anywhere. */
function middleOf(body: Surrounding): Vec3 {
  const soup = body.shape === 'mesh' ? documents.store.getState().meshes.get(body.file) : undefined;
  return body.shape === 'mesh' && soup ? placedMiddle(lieOf(body), boxOf(soup)) : middleOfSurrounding(body);
}
