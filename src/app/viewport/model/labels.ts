/** What is named in the 3D view, and where its name may hang. mm, in the design's frame. */
import { addScaled, dot, type Header, pointAt, scale, sub } from '../../../../geometry';
import type { Surrounding } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import type { Ref } from '../../session';
import type { Ball } from '../camera/fit';
import { eyeAxes, eyePosition, type View } from '../camera/view';

export type Label = {
  readonly key: string;
  readonly kind: 'cylinder' | 'runner' | 'name';
  readonly text: string;
  readonly ref: Ref;
  /** Places to try, best first. */
  readonly at: readonly Vec3[];
};

/** Shares of a runner's length at which its label may hang. */
const ALONG = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74];
/** From the edge of an opening to its cylinder's number, mm. */
const NUMBER_OFF = 20;

/** Numbers at the ports and names of the runners: always wished for. */
export function standingLabels(header: Header): Label[] {
  const labels: Label[] = [];
  for (const { port, pose } of header.ports.values()) {
    const o = port.opening;
    const high = (o.shape === 'round' ? o.diameter : o.height) / 2 + NUMBER_OFF;
    labels.push({
      key: `port ${port.id}`,
      kind: 'cylinder',
      text: String(port.cylinder),
      ref: { kind: 'port', id: port.id },
      at: [addScaled(pose.position, pose.up, high)],
    });
  }
  for (const { runner, centerline } of header.runners) {
    if (!centerline) continue;
    labels.push({
      key: `runner ${runner.id}`,
      kind: 'runner',
      text: runner.id,
      ref: { kind: 'runner', id: runner.id },
      at: ALONG.map((share) => pointAt(centerline, share * centerline.length).position),
    });
  }
  return labels;
}

/** The name of a collector, surrounding or flange, for as long as it is hovered or selected. */
export function nameLabel(header: Header, ref: Ref | null): Label | null {
  if (!ref) return null;
  const label = (at: Vec3): Label => ({ key: `${ref.kind} ${ref.id}`, kind: 'name', text: ref.id, ref, at: [at] });
  if (ref.kind === 'merge') {
    const body = header.merges.get(ref.id)?.body;
    return body ? label(addScaled(body.position, body.axis, body.length / 2)) : null;
  }
  if (ref.kind === 'surrounding') {
    const s = header.surroundings.find(({ id }) => id === ref.id);
    const at = s && middle(s);
    return at ? label(at) : null;
  }
  return null;
}

function middle(s: Surrounding): Vec3 | null {
  if (s.shape === 'box') return scale([s.min[0] + s.max[0], s.min[1] + s.max[1], s.min[2] + s.max[2]], 0.5);
  if (s.shape === 'capsule') return scale([s.a[0] + s.b[0], s.a[1] + s.b[1], s.a[2] + s.b[2]], 0.5);
  return null;
}

/** What may stand before a label's place: balls along the tubes, each as wide as its tube. */
export type Occluder = Ball & { readonly id: string };

export function occluders(header: Header): Occluder[] {
  return header.runners.flatMap(({ runner, centerline, tubeRadius }) => {
    if (!centerline) return [];
    const count = Math.ceil(centerline.length / tubeRadius);
    return Array.from({ length: count + 1 }, (_, i) => {
      const at = pointAt(centerline, (centerline.length * i) / count).position;
      return { id: runner.id, at, radius: tubeRadius };
    });
  });
}

/** Whether another runner's tube stands between the eye and `at`, a place on runner `id`. */
export function isHidden(at: Vec3, id: string, balls: readonly Occluder[], view: View): boolean {
  const eye = eyePosition(view);
  const { back } = eyeAxes(view);
  const sight = view.parallel ? scale(back, -1) : sub(at, eye);
  const length = Math.hypot(...sight);
  const way = scale(sight, 1 / (length || 1));
  return balls.some((ball) => {
    if (ball.id === id) return false;
    const off = sub(ball.at, at);
    const nearer = -dot(off, way);
    if (nearer < ball.radius || (!view.parallel && nearer > length)) return false;
    const aside2 = dot(off, off) - nearer * nearer;
    return aside2 < ball.radius * ball.radius;
  });
}
