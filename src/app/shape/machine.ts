/**
 * One tool for every handle, as a state machine: hover, press, drag, type, nudge, then commit or abandon. Pure: an event
 * in, the next state and what is to be done out. What a handle does lies in its grip; who does it, in `shaper.ts`.
 *
 *   idle ⇄ hovering → pressed → dragging ⇄ typing → (commit | bail) → idle
 *   idle → nudging (a burst of keys) → commit;  idle → typing (exact entry without a pointer);  a typed value → settling
 */
import { norm, RADIANS, snap, snapTurn } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { type Entry, type Field, fieldOf, lockedTo, openEntry, readEntry, stepField, withText } from './entry';
import { type Amount, byOf, type Grip } from './grip';
import { type Handle, handleName, sameHandle } from './handle';
import { AXIS_WAYS, type Axis, advance, rawAmount, type Sight, zeroOf } from './pointer';

export type Place = readonly [x: number, y: number];

/** Something is held: a gesture is open for as long as a state carries this. */
export type Hold = {
  readonly grip: Grip;
  /** The pointer that drags; null once it is up, or where keys do it. */
  readonly pointer: number | null;
  /** Where the pointer is, for what is written beside it. */
  readonly at: Place | null;
  /** As the hand pulls, before snapping. */
  readonly pulled: Amount;
  /** What is asked for. */
  readonly amount: Amount;
  readonly snapped: { readonly words: readonly string[]; readonly guides: readonly (readonly [Vec3, Vec3])[] } | null;
  readonly lock: Axis | null;
  /** Where the amount is counted from, and what the pointer said there: anew at each change of lock or speed. */
  readonly base: { readonly amount: Amount; readonly raw: Amount | null; readonly fine: boolean };
  readonly sight: Sight | null;
};

export type ShapeState =
  | { readonly phase: 'idle' }
  | { readonly phase: 'hovering'; readonly handle: Handle }
  | {
      readonly phase: 'pressed';
      readonly grip: Grip;
      readonly pointer: number;
      readonly at: Place;
      readonly slop: number;
      readonly sight: Sight;
      readonly moved: boolean;
    }
  | ({ readonly phase: 'dragging' } & Hold)
  | ({ readonly phase: 'nudging' } & Hold)
  | ({ readonly phase: 'settling' } & Hold)
  | ({ readonly phase: 'typing'; readonly entry: Entry } & Hold);

export type ShapeEvent =
  | { readonly kind: 'over'; readonly handle: Handle | null }
  | {
      readonly kind: 'press';
      readonly grip: Grip;
      readonly pointer: number;
      readonly at: Place;
      readonly sight: Sight;
      readonly touch: boolean;
    }
  | {
      readonly kind: 'move';
      readonly pointer: number;
      readonly at: Place;
      readonly sight: Sight;
      readonly fine: boolean;
      readonly free: boolean;
    }
  | { readonly kind: 'release'; readonly pointer: number }
  /** Escape, a lost pointer, a lost window, a second finger, another gesture. */
  | { readonly kind: 'cancel' }
  | { readonly kind: 'axis'; readonly axis: Axis }
  /** Exact entry: opens with a first character while dragging, or for a grip that nothing holds yet. */
  | { readonly kind: 'type'; readonly text: string }
  | { readonly kind: 'exact'; readonly grip: Grip; readonly at: Place | null }
  | { readonly kind: 'text'; readonly field: Field; readonly text: string }
  | { readonly kind: 'field'; readonly step: 1 | -1 }
  | { readonly kind: 'enter' }
  | { readonly kind: 'nudge'; readonly grip: Grip; readonly by: Amount }
  /** A burst of nudges has come to rest. */
  | { readonly kind: 'rest' }
  | { readonly kind: 'settled' };

export type Effect =
  | { readonly kind: 'take'; readonly grip: Grip }
  | { readonly kind: 'ask'; readonly grip: Grip; readonly amount: Amount }
  /** `wait`: until the last ask is answered. */
  | { readonly kind: 'commit'; readonly label: string; readonly wait: boolean }
  | { readonly kind: 'bail' }
  /** The press was no drag. */
  | { readonly kind: 'click'; readonly handle: Handle; readonly at: Place }
  | { readonly kind: 'wait' };

export type Step = { readonly state: ShapeState; readonly effects: readonly Effect[] };

export const IDLE: ShapeState = { phase: 'idle' };
const SLOP = { mouse: 4, touch: 9 };
/** Shift slows the hand to a fifth. */
const FINE = 0.2;
/** How near a snap has to be, px and radians. */
const SNAP_PX = 7;
const SNAP_TURN = { step: 5 * RADIANS, reach: 1.2 * RADIANS };

/** Whether a gesture is open in this state. */
export const holds = (s: ShapeState): s is Extract<ShapeState, Hold> =>
  s.phase === 'dragging' || s.phase === 'typing' || s.phase === 'nudging' || s.phase === 'settling';

export function step(state: ShapeState, event: ShapeEvent): Step {
  if (event.kind === 'cancel') return { state: IDLE, effects: holds(state) ? [{ kind: 'bail' }] : [] };
  switch (state.phase) {
    case 'idle':
    case 'hovering':
      return whenFree(state, event);
    case 'pressed':
      return whenPressed(state, event);
    case 'dragging':
      return whenDragging(state, event);
    case 'typing':
      return whenTyping(state, event);
    case 'nudging':
      return whenNudging(state, event);
    case 'settling':
      return event.kind === 'settled' ? to(IDLE) : to(state);
  }
}

const to = (state: ShapeState, ...effects: Effect[]): Step => ({ state, effects });
const label = (hold: Hold): string => handleName(hold.grip.handle);

function whenFree(state: ShapeState & { phase: 'idle' | 'hovering' }, event: ShapeEvent): Step {
  switch (event.kind) {
    case 'over':
      if (!event.handle) return to(state.phase === 'idle' ? state : IDLE);
      return to(
        state.phase === 'hovering' && sameHandle(state.handle, event.handle)
          ? state
          : { phase: 'hovering', handle: event.handle },
      );
    case 'press': {
      const { grip, pointer, at, sight, touch } = event;
      return to({ phase: 'pressed', grip, pointer, at, sight, slop: touch ? SLOP.touch : SLOP.mouse, moved: false });
    }
    case 'exact': {
      if (event.grip.refusal) return to(state);
      const hold = heldAt(event.grip, null, event.at, null);
      return to({ phase: 'typing', ...hold, entry: openEntry(event.grip) }, { kind: 'take', grip: event.grip });
    }
    case 'nudge': {
      if (event.grip.refusal) return to(state);
      const hold: Hold = { ...heldAt(event.grip, null, null, null), pulled: event.by, amount: event.by };
      return to({ phase: 'nudging', ...hold }, { kind: 'take', grip: hold.grip }, asking(hold), { kind: 'wait' });
    }
    default:
      return to(state);
  }
}

function whenPressed(state: ShapeState & { phase: 'pressed' }, event: ShapeEvent): Step {
  const { grip, pointer, at, sight, slop } = state;
  if (event.kind === 'release' && event.pointer === pointer)
    return to(IDLE, ...(state.moved ? [] : [{ kind: 'click', handle: grip.handle, at } as const]));
  if (event.kind === 'press') return to(IDLE);
  if (event.kind !== 'move' || event.pointer !== pointer) return to(state);
  if (Math.hypot(event.at[0] - at[0], event.at[1] - at[1]) <= slop) return to(state);
  // What refuses is pulled at in vain, and says why for as long as it is.
  if (grip.refusal) return to({ ...state, moved: true });
  const hold = pull(heldAt(grip, pointer, event.at, sight), event);
  return to({ phase: 'dragging', ...hold }, { kind: 'take', grip }, asking(hold));
}

function whenDragging(state: ShapeState & { phase: 'dragging' }, event: ShapeEvent): Step {
  switch (event.kind) {
    case 'move': {
      if (event.pointer !== state.pointer) return to(state);
      const hold = pull(state, event);
      return to({ ...hold, phase: 'dragging' }, asking(hold));
    }
    case 'release':
      return event.pointer === state.pointer
        ? to(IDLE, { kind: 'commit', label: label(state), wait: false })
        : to(state);
    case 'press':
      return to(IDLE, { kind: 'bail' });
    case 'axis': {
      if (state.grip.motion.kind !== 'space') return to(state);
      const hold = locked(state, state.lock === event.axis ? null : event.axis);
      return to({ ...hold, phase: 'dragging' }, asking(hold));
    }
    case 'type':
      return typed({ ...state, phase: 'typing', entry: openEntry(state.grip) }, (e) =>
        withText(e, fieldOf(e), event.text),
      );
    case 'enter':
      return settle(state);
    default:
      return to(state);
  }
}

function whenTyping(state: ShapeState & { phase: 'typing' }, event: ShapeEvent): Step {
  switch (event.kind) {
    case 'text':
      return state.entry.fields.includes(event.field)
        ? typed(state, (e) => withText(e, event.field, event.text))
        : to(state);
    case 'field':
      return to({ ...state, entry: stepField(state.entry, event.step) });
    case 'enter':
      return state.entry.problem === null ? settle(state) : to(state);
    case 'release':
      // The number is still to be finished: the pointer may go.
      return to(event.pointer === state.pointer ? { ...state, pointer: null } : state);
    case 'press':
      return state.entry.problem === null && state.pointer === null ? settle(state) : to(IDLE, { kind: 'bail' });
    default:
      return to(state);
  }
}

function whenNudging(state: ShapeState & { phase: 'nudging' }, event: ShapeEvent): Step {
  if (event.kind === 'nudge' && sameHandle(event.grip.handle, state.grip.handle)) {
    const amount = sum(state.amount, event.by);
    const hold: Hold = { ...state, pulled: amount, amount };
    return to({ ...hold, phase: 'nudging' }, asking(hold), { kind: 'wait' });
  }
  if (event.kind === 'over' || event.kind === 'move' || event.kind === 'settled') return to(state);
  // Rest, or anything else that is done: the burst is one step.
  const ended = to(IDLE, { kind: 'commit', label: label(state), wait: false });
  if (event.kind === 'rest' || event.kind === 'enter' || event.kind === 'release') return ended;
  // What comes next was opened on the design before the nudges: it has to be asked for again.
  return ended;
}

const settle = (hold: ShapeState & Hold): Step =>
  to({ ...stripped(hold), phase: 'settling' }, { kind: 'commit', label: label(hold), wait: true });

function stripped(state: Hold): Hold {
  const { grip, pointer, at, pulled, amount, snapped, lock, base, sight } = state;
  return { grip, pointer, at, pulled, amount, snapped, lock, base, sight };
}

function heldAt(grip: Grip, pointer: number | null, at: Place | null, sight: Sight | null): Hold {
  const zero = zeroOf(grip);
  const raw = sight && rawAmount(grip, null, sight);
  return {
    grip,
    pointer,
    at,
    pulled: zero,
    amount: zero,
    snapped: null,
    lock: null,
    base: { amount: zero, raw, fine: false },
    sight,
  };
}

const asking = ({ grip, amount }: Hold): Effect => ({ kind: 'ask', grip, amount });

function pull(hold: Hold, { at, sight, fine, free }: ShapeEvent & { kind: 'move' }): Hold {
  const { grip, lock } = hold;
  let { base } = hold;
  const raw = rawAmount(grip, lock, sight);
  if (base.raw === null || base.fine !== fine)
    base = { amount: hold.pulled, raw: hold.sight ? rawAmount(grip, lock, hold.sight) : raw, fine };
  const pulled = advance(base.amount, base.raw!, raw, fine ? FINE : 1);
  return { ...stripped(hold), at, sight, base, pulled, ...snapping({ ...hold, pulled }, sight, free) };
}

/** What is asked for: the hand's wish, or what it is near to. */
function snapping(hold: Hold, sight: Sight, free: boolean): Pick<Hold, 'amount' | 'snapped'> {
  const { grip, pulled, lock } = hold;
  const plain = { amount: pulled, snapped: null };
  if (free) return plain;
  if (pulled.kind === 'turn') {
    const base = grip.motion.kind === 'turn' ? grip.motion.round : 0;
    const round = snapTurn(pulled.angle + base, SNAP_TURN.step, SNAP_TURN.reach);
    if (round === null) return plain;
    const words = `rotation of ${Math.round(round / RADIANS)}°`;
    return { amount: { kind: 'turn', angle: round - base }, snapped: { words: base === 0 ? [] : [words], guides: [] } };
  }
  const from = grip.anchor ?? grip.at;
  const asked = plus(from, pulled.by);
  const way = lock ? AXIS_WAYS[lock] : grip.motion.kind === 'line' ? grip.motion.way : grip.rail;
  const reach = SNAP_PX * sight.mmPerPx;
  // Along a rail only the part along it has a place; the part aside is kept.
  const met = snap(asked, grip.targets, reach, way && { from, way });
  if (!met) return plain;
  const rail = way && onRail(asked, from, way);
  const by = rail ? plus(pulled.by, minus(met.at, rail)) : minus(met.at, from);
  return { amount: { kind: 'move', by }, snapped: { words: met.words, guides: met.guides } };
}

/** Locking keeps what was pulled along the axis and forgets the rest; letting go of the lock starts from there. */
function locked(hold: Hold, lock: Axis | null): Hold {
  const by = byOf(hold.pulled);
  const pulled: Amount = { kind: 'move', by: lock ? lockedTo(by, lock) : by };
  const raw = hold.sight && rawAmount(hold.grip, lock, hold.sight);
  const base = { amount: pulled, raw, fine: hold.base.fine };
  return { ...stripped(hold), lock, pulled, amount: pulled, snapped: null, base };
}

function typed(state: ShapeState & { phase: 'typing' }, change: (entry: Entry) => Entry): Step {
  const entry = change(state.entry);
  const read = readEntry(entry, state.grip, state.pulled, state.lock);
  if (read && 'problem' in read) return to({ ...state, entry: { ...entry, problem: read.problem } });
  const hold = { ...state, amount: read ?? state.pulled, snapped: null, entry: { ...entry, problem: null } };
  return to(hold, asking(hold));
}

const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const onRail = (p: Vec3, from: Vec3, way: Vec3): Vec3 => {
  const off = minus(p, from);
  const t = off[0] * way[0] + off[1] * way[1] + off[2] * way[2];
  return [from[0] + t * way[0], from[1] + t * way[1], from[2] + t * way[2]];
};

function sum(a: Amount, b: Amount): Amount {
  if (a.kind === 'turn' && b.kind === 'turn') return { kind: 'turn', angle: a.angle + b.angle };
  return { kind: 'move', by: plus(byOf(a), byOf(b)) };
}

/** How far that is, for what is written beside the pointer: mm or radians. */
export const sizeOf = (amount: Amount): number => (amount.kind === 'move' ? norm(amount.by) : amount.angle);
