/**
 * Runs the machine on the document: takes hold, asks at most once a frame, commits or bails. The clock and the frames are
 * handed in, so that tests run without either. A gesture that something else ended is let go of here too.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { headerOf } from '../derived';
import { documents } from '../document';
import { type HandGesture, takeHold } from '../hand/hand';
import { type Amount, type Grip, gripOf } from './grip';
import type { Handle } from './handle';
import { type Effect, holds, IDLE, type Place, type ShapeEvent, type ShapeState, step } from './machine';

/** A burst of nudges is one step of history once the keys rest this long, ms. */
const REST_MS = 600;

export type Clock = {
  /** Calls before the next picture. @returns a way to call it off */
  frame(act: () => void): () => void;
  later(ms: number, act: () => void): () => void;
};

const BROWSER_CLOCK: Clock = {
  frame(act) {
    const id = requestAnimationFrame(act);
    return () => cancelAnimationFrame(id);
  },
  later(ms, act) {
    const id = setTimeout(act, ms);
    return () => clearTimeout(id);
  },
};

type Listener = (handle: Handle, at: Place) => void;

export function createShaper(clock: Clock = BROWSER_CLOCK) {
  const store = createStore<{ readonly state: ShapeState }>()(() => ({ state: IDLE }));
  let hand: HandGesture | null = null;
  let own: number | null = null;
  let waiting: { readonly grip: Grip; readonly amount: Amount; readonly off: () => void } | null = null;
  let resting: (() => void) | null = null;
  const clicks = new Set<Listener>();

  function dispatch(event: ShapeEvent): void {
    const { state, effects } = step(store.getState().state, event);
    if (state !== store.getState().state) store.setState({ state });
    for (const effect of effects) perform(effect);
  }

  function perform(effect: Effect): void {
    switch (effect.kind) {
      case 'take':
        hand = takeHold(effect.grip.held);
        own = documents.store.getState().gesture;
        if (!hand) dispatch({ kind: 'cancel' });
        return;
      case 'ask':
        waiting?.off();
        waiting = { ...effect, off: clock.frame(flush) };
        return;
      case 'commit': {
        flush();
        if (!effect.wait) release()?.commit(effect.label);
        else void settle(effect.label);
        return;
      }
      case 'bail':
        release()?.bail();
        return;
      case 'click':
        for (const listener of clicks) listener(effect.handle, effect.at);
        return;
      case 'wait':
        resting?.();
        resting = clock.later(REST_MS, () => dispatch({ kind: 'rest' }));
        return;
    }
  }

  /** Held until the last ask is answered, so that Escape can still bail. */
  async function settle(label: string): Promise<void> {
    const ending = hand;
    await ending?.commitWhenAnswered(label);
    if (hand !== null && hand !== ending) return;
    release();
    dispatch({ kind: 'settled' });
  }

  function flush(): void {
    if (!waiting) return;
    const { grip, amount, off } = waiting;
    waiting = null;
    off();
    if (hand) hand.ask(grip.ask(hand.from, amount));
  }

  /** From here on the gesture is somebody else's to end. */
  function release(): HandGesture | null {
    const ending = hand;
    waiting?.off();
    resting?.();
    hand = null;
    own = null;
    waiting = null;
    resting = null;
    return ending;
  }

  // Undo, another file, another tool: whoever ended the gesture has had the last word.
  const stop = documents.store.subscribe((now) => {
    if (hand && now.gesture !== own) {
      const ended = release();
      store.setState({ state: IDLE });
      // Changes no design any more; the solver behind it stops.
      ended?.bail();
    }
  });

  return {
    store,
    dispatch,
    state: () => store.getState().state,
    holding: () => holds(store.getState().state),
    /** The handle opened on the design as it is decided; null where there is none. */
    grip(handle: Handle): Grip | null {
      const { settled } = documents.store.getState();
      return settled && gripOf(headerOf(settled), handle);
    },
    /** Told when a press on a handle was no drag. */
    onClick(listener: Listener): () => void {
      clicks.add(listener);
      return () => clicks.delete(listener);
    },
    stop,
  };
}

/** The app's one hand. */
export const shaper = createShaper();

export const useShape = <T>(pick: (state: ShapeState) => T): T => useStore(shaper.store, (s) => pick(s.state));
