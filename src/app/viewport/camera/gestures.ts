/**
 * Pointer, wheel and keys to camera steps. A press that hardly moves is a click and never turns the camera; a drag never
 * clicks. Left or one finger turns, right, middle, shift or two fingers move, wheel or pinch zooms toward the pointer. Where
 * a tool has the plain press for itself, the right button and two fingers turn.
 */
import type { Vec3 } from '../../../../shared/vec3';
import type { Rig } from './rig';
import { orbit, pan, zoom } from './view';

export type Gestures = {
  /** Where the pointer rests, once a frame; null when it leaves or drags. Client coordinates. */
  hover(at: readonly [number, number] | null): void;
  /** @param adds Shift or Ctrl was held: for picking several */
  click(at: readonly [number, number], adds: boolean): void;
  doubleClick(at: readonly [number, number]): void;
  /** What lies under the pointer: zooming keeps that depth still. */
  under(at: readonly [number, number]): Vec3 | null;
  /**
   * A plain press that something under the pointer takes for itself: the camera then leaves it alone. Where it is a second
   * finger, what has the first may let go of it: it is handed over, and the camera has both.
   */
  hold?(e: PointerEvent): boolean | Finger;
  /** Whether a tool has every plain press. */
  tooled?(): boolean;
  /** Whether a drag goes on, for the pointer's look. */
  dragging(on: boolean): void;
};

export type Finger = { readonly pointerId: number; readonly x: number; readonly y: number };

/** A finger wanders further than a mouse before it means a drag, px. */
const SLOP = { mouse: 4, touch: 9 };
const TURN_PER_PX = 0.0065;
const WHEEL_RATE = 0.0014;
/** Wheels report lines or pages as well as pixels. */
const WHEEL_UNIT = [1, 18, 400] as const;

export function listen(element: HTMLElement, rig: Rig, on: Gestures): () => void {
  const held = new Map<number, { x: number; y: number }>();
  let start: { x: number; y: number; moves: boolean; slop: number } | null = null;
  let dragging = false;
  let resting: readonly [number, number] | null = null;
  let waiting = 0;
  const end = new AbortController();
  const also = { signal: end.signal };

  const centred = (x: number, y: number): readonly [number, number] => {
    const box = element.getBoundingClientRect();
    const half = box.height / 2;
    return [(x - box.left - box.width / 2) / half, -(y - box.top - half) / half];
  };
  const zoomAt = (factor: number, x: number, y: number) => {
    const under = on.under([x, y]) ?? undefined;
    rig.move((v) => zoom(v, factor, centred(x, y), under));
  };
  const panBy = (dx: number, dy: number) => {
    const half = element.clientHeight / 2;
    rig.move((v) => pan(v, dx / half, -dy / half));
  };
  const turnBy = (dx: number, dy: number) => rig.move((v) => orbit(v, dx * TURN_PER_PX, -dy * TURN_PER_PX));
  const rest = (at: readonly [number, number] | null) => {
    resting = at;
    waiting ||= requestAnimationFrame(() => {
      waiting = 0;
      on.hover(resting);
    });
  };
  const drag = (now: boolean) => {
    if (dragging === now) return;
    dragging = now;
    on.dragging(now);
    if (now) rest(null);
  };
  const spread = () => {
    const [a, b] = [...held.values()];
    return { x: (a!.x + b!.x) / 2, y: (a!.y + b!.y) / 2, gap: Math.hypot(a!.x - b!.x, a!.y - b!.y) };
  };

  const down = (e: PointerEvent) => {
    if (held.size >= 2) return;
    const isPlain = e.button === 0 && !e.shiftKey && !e.ctrlKey && !e.metaKey;
    const taken = held.size === 0 && isPlain && on.hold?.(e);
    if (taken === true) return;
    if (taken) {
      element.setPointerCapture(taken.pointerId);
      held.set(taken.pointerId, { x: taken.x, y: taken.y });
    }
    element.setPointerCapture(e.pointerId);
    held.set(e.pointerId, { x: e.clientX, y: e.clientY });
    const turns = e.button === 2 && on.tooled?.();
    const moves = !turns && (e.button !== 0 || e.shiftKey || e.ctrlKey || e.metaKey);
    if (held.size === 1)
      start = { x: e.clientX, y: e.clientY, moves, slop: e.pointerType === 'mouse' ? SLOP.mouse : SLOP.touch };
    else drag(true);
  };
  const move = (e: PointerEvent) => {
    const last = held.get(e.pointerId);
    if (!last) {
      if (held.size === 0 && e.pointerType !== 'touch') rest([e.clientX, e.clientY]);
      return;
    }
    if (held.size === 2) {
      const before = spread();
      held.set(e.pointerId, { x: e.clientX, y: e.clientY });
      const after = spread();
      const [dx, dy] = [after.x - before.x, after.y - before.y];
      if (on.tooled?.()) turnBy(dx, dy);
      else panBy(dx, dy);
      if (before.gap > 0 && after.gap > 0) zoomAt(before.gap / after.gap, after.x, after.y);
      return;
    }
    if (!dragging && start && Math.hypot(e.clientX - start.x, e.clientY - start.y) > start.slop) drag(true);
    if (!dragging) return;
    const [dx, dy] = [e.clientX - last.x, e.clientY - last.y];
    held.set(e.pointerId, { x: e.clientX, y: e.clientY });
    if (start?.moves) panBy(dx, dy);
    else turnBy(dx, dy);
  };
  const up = (e: PointerEvent) => {
    if (!held.delete(e.pointerId)) return;
    if (!dragging && start && e.type === 'pointerup' && e.button === 0)
      on.click([e.clientX, e.clientY], e.shiftKey || e.ctrlKey || e.metaKey);
    if (held.size === 0) {
      drag(false);
      start = null;
      if (e.pointerType !== 'touch') rest([e.clientX, e.clientY]);
    }
  };

  element.addEventListener('pointerdown', down, also);
  element.addEventListener('pointermove', move, also);
  element.addEventListener('pointerup', up, also);
  element.addEventListener('pointercancel', up, also);
  element.addEventListener('pointerleave', () => held.size === 0 && rest(null), also);
  element.addEventListener('contextmenu', (e) => e.preventDefault(), also);
  element.addEventListener('dblclick', (e) => on.doubleClick([e.clientX, e.clientY]), also);
  element.addEventListener(
    'wheel',
    (e) => {
      e.preventDefault();
      // A pinch on a trackpad arrives as a wheel with the control key and small steps.
      const rate = WHEEL_RATE * WHEEL_UNIT[e.deltaMode as 0 | 1 | 2]! * (e.ctrlKey ? 6 : 1);
      zoomAt(Math.exp(Math.max(-0.5, Math.min(0.5, e.deltaY * rate))), e.clientX, e.clientY);
    },
    { passive: false, signal: end.signal },
  );
  return () => {
    end.abort();
    cancelAnimationFrame(waiting);
  };
}
