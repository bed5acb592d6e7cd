/**
 * Pointer and keys to strokes, while something is drawn in the picture. The view lends its presses and its hovering; from a
 * press on, the pointer is the layer's. A second finger takes the stroke back and leaves both to the camera. What comes of it
 * is added in one step and picked.
 */
import { create } from 'zustand';
import { addSurrounding, type NewShape } from '../../../shared/design/edit';
import type { Vec3 } from '../../../shared/vec3';
import { documents } from '../document';
import { addAndPick } from '../inspect/inspectActions';
import type { Ref } from '../session';
import type { Finger } from '../viewport/camera/gestures';
import type { Rig } from '../viewport/camera/rig';
import { sightThrough } from '../viewport/camera/sight';
import type { PickedSurface } from '../viewport/gl/pick';
import { stopDrawing } from './state';
import { type DrawEvent, type DrawState, type Look, type Px, READY, step } from './stroke';

/** What the view calls while something is drawn; client coordinates. */
export type DrawTool = {
  hold(e: PointerEvent): boolean | Finger;
  hover(at: readonly [number, number] | null): void;
};

type Drawing = {
  readonly state: DrawState;
  /** Where the pointer was last, for what is written beside it. */
  readonly px: Px | null;
  /** What the base lies on. */
  readonly on: Ref | null;
};
const PLAIN: Drawing = { state: READY, px: null, on: null };

export const useDraft = create<Drawing>()(() => PLAIN);

type Given = {
  readonly shape: NewShape;
  readonly rig: Rig;
  /** Transparent to the pointer; takes it once it is pressed. */
  readonly layer: SVGElement;
  /** What lies under a place on the page. */
  readonly under: (at: readonly [number, number]) => PickedSurface | null;
};

export function drawTool({ shape, rig, layer, under }: Given): DrawTool & { stop(): void } {
  const end = new AbortController();
  const also = { signal: end.signal };
  let finger: Finger | null = null;
  let last: readonly [number, number] | null = null;
  let free = false;
  useDraft.setState(PLAIN);

  function tell(event: DrawEvent): void {
    const { settled } = documents.store.getState();
    if (!settled) return;
    const wish = { shape, ports: middle(settled.ports.map((p) => p.position)), display: settled.display ?? 'mm' };
    const { state, drawn } = step(useDraft.getState().state, event, wish);
    useDraft.setState({ state });
    if (!drawn) return;
    addAndPick((design) => addSurrounding(design, drawn), '');
    stopDrawing();
  }

  function look(at: readonly [number, number]): Look {
    const box = layer.getBoundingClientRect();
    const px: Px = [at[0] - box.left, at[1] - box.top];
    last = at;
    const { state } = useDraft.getState();
    // Once it is begun, it lies on what it was begun on.
    const found = state.phase === 'ready' ? under(at) : null;
    const depth = state.phase === 'ready' ? (found?.at ?? portsOf()) : state.a;
    useDraft.setState(state.phase === 'ready' ? { px, on: found?.ref ?? null } : { px });
    return { px, sight: sightThrough(rig.drawn(), rig.size(), px[0], px[1], depth), surface: found, free };
  }

  const own = (e: PointerEvent): boolean => e.pointerId === finger?.pointerId;
  const drop = () => {
    finger = null;
    tell({ kind: 'drop' });
  };

  layer.addEventListener(
    'pointermove',
    (e) => {
      if (!own(e)) return;
      e.stopPropagation();
      finger = { pointerId: e.pointerId, x: e.clientX, y: e.clientY };
      free = e.altKey;
      tell({ kind: 'move', look: look([e.clientX, e.clientY]) });
    },
    also,
  );
  layer.addEventListener(
    'pointerup',
    (e) => {
      if (!own(e)) return;
      e.stopPropagation();
      finger = null;
      tell({ kind: 'release', pointer: e.pointerId });
    },
    also,
  );
  for (const lost of ['pointercancel', 'lostpointercapture'] as const)
    layer.addEventListener(lost, (e) => own(e) && drop(), also);
  addEventListener('blur', () => finger && drop(), also);

  const key = (e: KeyboardEvent) => {
    if (e.key === 'Alt' && free !== e.altKey) {
      free = e.altKey;
      if (last) tell({ kind: 'move', look: look(last) });
    }
    if (e.type !== 'keydown' || e.key !== 'Escape' || e.defaultPrevented) return;
    const target = e.target instanceof Element ? e.target : null;
    if (target?.closest('dialog, input, select, textarea') || document.querySelector('dialog[open]:modal')) return;
    e.preventDefault();
    e.stopImmediatePropagation();
    finger = null;
    if (useDraft.getState().state.phase === 'ready') stopDrawing();
    else tell({ kind: 'cancel' });
  };
  addEventListener('keydown', key, { ...also, capture: true });
  addEventListener('keyup', key, { ...also, capture: true });

  return {
    hold(e) {
      if (finger) {
        if (e.pointerType !== 'touch') return true;
        const first = finger;
        drop();
        return first;
      }
      finger = { pointerId: e.pointerId, x: e.clientX, y: e.clientY };
      free = e.altKey;
      layer.setPointerCapture(e.pointerId);
      tell({ kind: 'press', pointer: e.pointerId, look: look([e.clientX, e.clientY]) });
      return true;
    },
    hover(at) {
      if (finger) return;
      if (at) tell({ kind: 'move', look: look(at) });
      else if (useDraft.getState().state.phase === 'ready') useDraft.setState(PLAIN);
    },
    stop() {
      end.abort();
      useDraft.setState(PLAIN);
    },
  };
}

const portsOf = (): Vec3 => middle((documents.store.getState().settled?.ports ?? []).map((p) => p.position));

function middle(places: readonly Vec3[]): Vec3 {
  const n = Math.max(1, places.length);
  return [0, 1, 2].map((i) => places.reduce((sum, p) => sum + p[i]!, 0) / n) as unknown as Vec3;
}
