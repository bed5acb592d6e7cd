/**
 * Pointer events to the hand: from a press on a handle, or on a part that is already picked, to its end. While it drags,
 * the camera hears nothing; a second finger, a lost pointer or a lost window bails.
 */
import type { Vec3 } from '../../../../shared/vec3';
import type { Handle } from '../../shape/handle';
import { keyWhileHeld, openExact } from '../../shape/keys';
import type { Place } from '../../shape/machine';
import { shaper } from '../../shape/shaper';
import type { Rig } from '../camera/rig';
import { sightThrough } from '../camera/sight';

export type Link = {
  /** @param tube the press was on the thing itself: without a drag it stays a click there */
  start(e: PointerEvent, handle: Handle, tube?: boolean): boolean;
  /** A further pointer while something is pressed or dragged. */
  second(): void;
  stop(): void;
};

/** @param layer takes the pointer; may itself be transparent to it @param onClick a press on a part that was no drag */
export function linkHand(layer: SVGElement, rig: Rig, onClick: (at: Place) => void): Link {
  const end = new AbortController();
  const also = { signal: end.signal };
  let pointer: number | null = null;
  let at: Vec3 = [0, 0, 0];
  let onTube = false;
  let last: { x: number; y: number; shift: boolean; alt: boolean } | null = null;

  const local = (x: number, y: number): Place => {
    const box = layer.getBoundingClientRect();
    return [x - box.left, y - box.top];
  };
  const sight = (place: Place) => sightThrough(rig.drawn(), rig.size(), place[0], place[1], at);
  const busy = () => ['pressed', 'dragging'].includes(shaper.state().phase);
  const follow = () => {
    if (!last || pointer === null) return;
    const place = local(last.x, last.y);
    shaper.dispatch({ kind: 'move', pointer, at: place, sight: sight(place), fine: last.shift, free: last.alt });
  };
  const own = (e: PointerEvent): boolean => {
    if (e.pointerId !== pointer) return false;
    e.stopPropagation();
    return true;
  };

  layer.addEventListener(
    'pointermove',
    (e) => {
      if (!own(e)) return;
      last = { x: e.clientX, y: e.clientY, shift: e.shiftKey, alt: e.altKey };
      follow();
    },
    also,
  );
  layer.addEventListener(
    'pointerup',
    (e) => {
      if (!own(e)) return;
      const released = pointer!;
      pointer = null;
      shaper.dispatch({ kind: 'release', pointer: released });
    },
    also,
  );
  const lost = (e: PointerEvent) => {
    if (!own(e)) return;
    pointer = null;
    if (busy()) shaper.dispatch({ kind: 'cancel' });
  };
  layer.addEventListener('pointercancel', lost, also);
  layer.addEventListener('lostpointercapture', lost, also);
  const gone = () => {
    if (busy()) shaper.dispatch({ kind: 'cancel' });
  };
  addEventListener('blur', gone, also);
  document.addEventListener('visibilitychange', () => document.hidden && gone(), also);

  const key = (e: KeyboardEvent) => {
    if (last && (e.key === 'Shift' || e.key === 'Alt') && shaper.state().phase === 'dragging') {
      last = { ...last, shift: e.shiftKey, alt: e.altKey };
      follow();
    }
    if (e.type !== 'keydown' || !keyWhileHeld(e)) return;
    e.preventDefault();
    e.stopImmediatePropagation();
  };
  addEventListener('keydown', key, { ...also, capture: true });
  addEventListener('keyup', key, { ...also, capture: true });

  const unclick = shaper.onClick((handle, place) => {
    if (onTube) {
      const box = layer.getBoundingClientRect();
      onClick([place[0] + box.left, place[1] + box.top]);
    } else openExact(handle);
  });

  return {
    start(e, handle, tube = false) {
      const grip = shaper.grip(handle);
      if (!grip) return false;
      at = grip.at;
      onTube = tube;
      const place = local(e.clientX, e.clientY);
      // Whatever was going on by keys is one step of its own; then this is opened on what it left.
      if (shaper.state().phase === 'nudging') shaper.dispatch({ kind: 'rest' });
      const fresh = shaper.grip(handle);
      if (!fresh) return false;
      shaper.dispatch({
        kind: 'press',
        grip: fresh,
        pointer: e.pointerId,
        at: place,
        sight: sight(place),
        touch: e.pointerType === 'touch',
      });
      if (shaper.state().phase !== 'pressed') return false;
      pointer = e.pointerId;
      last = { x: e.clientX, y: e.clientY, shift: e.shiftKey, alt: e.altKey };
      layer.setPointerCapture(e.pointerId);
      return true;
    },
    second: gone,
    stop() {
      gone();
      unclick();
      end.abort();
    },
  };
}
