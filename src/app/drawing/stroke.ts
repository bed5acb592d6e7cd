/**
 * Drawing as a state machine: a first stroke sets the base, a second one a height or a radius. A stroke is a press, a drag and
 * a release; or a click, a move and a click, so that nobody has to drag. Pure: an event in, the next state out. Places in
 * pixels and mm.
 */
import type { NewShape, PlacedShape } from '../../../shared/design/edit';
import type { Display } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import type { Sight } from '../shape/pointer';
import { type Base, baseAt, onBase, roundOn, type Surface } from './base';
import { endOf, isEnough, type Stroke, secondSize, shapeOf } from './shapes';

export type Px = readonly [x: number, y: number];

export type DrawState =
  /** Nothing is drawn yet; where it would begin, once the pointer has been seen. */
  | { readonly phase: 'ready'; readonly base: Base | null; readonly at: Vec3 | null }
  | ({ readonly phase: 'first' } & Stroke & Held)
  | ({ readonly phase: 'second'; readonly size: number } & Stroke & Held);

type Held = {
  /** The pointer that is down; null between the clicks. */
  readonly pointer: number | null;
  /** Where it went down, and whether it was dragged from there. */
  readonly press: Px;
  readonly dragged: boolean;
};

/** What the pointer says: where it is on the picture, the line of sight there, what lies under it. */
export type Look = {
  readonly px: Px;
  readonly sight: Sight;
  readonly surface: Surface | null;
  /** Whether places are left as the hand has them. */
  readonly free: boolean;
};

export type DrawEvent =
  | { readonly kind: 'press'; readonly pointer: number; readonly look: Look }
  /** Of the pointer that is down, or of one that hovers. */
  | { readonly kind: 'move'; readonly look: Look }
  | { readonly kind: 'release'; readonly pointer: number }
  /** A second finger, a lost pointer, a lost window: the stroke that is being made never was. */
  | { readonly kind: 'drop' }
  /** Back to the beginning. */
  | { readonly kind: 'cancel' };

/** What stays the same while one thing is drawn. */
export type Wish = { readonly shape: NewShape; readonly ports: Vec3; readonly display: Display };

export const READY: DrawState = { phase: 'ready', base: null, at: null };

/** A press that stays within this is a click, px. */
const SLOP = 6;
/** A plane that is dragged no farther than this lies flat on its base, px. */
const LEAST_ARROW = 24;

export function step(state: DrawState, event: DrawEvent, wish: Wish): { state: DrawState; drawn: PlacedShape | null } {
  const to = (next: DrawState, drawn: PlacedShape | null = null) => ({ state: next, drawn });
  if (event.kind === 'cancel') return to(READY);
  switch (state.phase) {
    case 'ready': {
      if (event.kind !== 'move' && event.kind !== 'press') return to(state);
      const begun = beginning(event.look, wish);
      if (!begun) return to(READY);
      if (event.kind === 'move') return to({ phase: 'ready', ...begun });
      const { base, at } = begun;
      const held: Held = { pointer: event.pointer, press: event.look.px, dragged: false };
      return to({ phase: 'first', shape: wish.shape, base, a: at, b: at, ...held });
    }
    case 'first':
      switch (event.kind) {
        case 'press':
          if (state.pointer !== null) return to(state);
          return to({ ...moved(state, event.look), pointer: event.pointer, press: event.look.px, dragged: true });
        case 'move':
          return to(moved(state, event.look));
        case 'release': {
          if (event.pointer !== state.pointer) return to(state);
          const up = { ...state, pointer: null };
          if (state.shape === 'plane') return to(READY, shapeOf(state, 0));
          return to(state.dragged && isEnough(state) ? { ...up, phase: 'second', size: 0, dragged: false } : up);
        }
        case 'drop':
          return to(READY);
      }
      break;
    case 'second':
      switch (event.kind) {
        case 'press':
          if (state.pointer !== null) return to(state);
          return to({ ...sized(state, event.look), pointer: event.pointer, press: event.look.px });
        case 'move':
          return to(sized(state, event.look));
        case 'release': {
          if (event.pointer !== state.pointer) return to(state);
          const drawn = shapeOf(state, state.size);
          return drawn ? to(READY, drawn) : to({ ...state, pointer: null });
        }
        case 'drop':
          // The base was drawn before, and stays.
          return to({ ...state, pointer: null, size: 0 });
      }
  }
  return to(state);
}

function beginning({ sight, surface, free }: Look, { shape, ports, display }: Wish): { base: Base; at: Vec3 } | null {
  const base = baseAt(shape, sight, surface, ports, display);
  const at = onBase(base, sight);
  return at && { base, at: roundOn(base, at, null, free) };
}

function moved(state: Extract<DrawState, { phase: 'first' }>, { px, sight, free }: Look) {
  const far = Math.hypot(px[0] - state.press[0], px[1] - state.press[1]);
  // Between clicks the pointer has nothing to be dragged from.
  const dragged = state.dragged || (state.pointer !== null && far > SLOP);
  if (state.shape === 'plane' && far <= LEAST_ARROW) return { ...state, dragged, b: state.a };
  const at = onBase(state.base, sight);
  return { ...state, dragged, b: at ? endOf(state, at, free) : state.b };
}

function sized(state: Extract<DrawState, { phase: 'second' }>, { sight, free }: Look) {
  return { ...state, size: secondSize(state, sight, free) ?? state.size };
}

/** What would be drawn if it ended here; null where that is nothing yet. */
export const draftOf = (state: DrawState): PlacedShape | null => {
  if (state.phase === 'ready') return null;
  return shapeOf(state, state.phase === 'second' ? state.size : 0);
};
