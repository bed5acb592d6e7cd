/**
 * A hand on the header: one gesture during which something is held and asked to move, and the header follows as near as
 * every rule allows. The answer is drawn as soon as it is known; what is committed is what was drawn last.
 */
import { create } from 'zustand';
import type { Held } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { documents } from '../document';

/** What stops the hand just now; null while everything that is asked for can be had. */
export type Resistance = {
  /** How far what is held stays from where it is asked to be, mm. */
  readonly short: number;
  /** The rules that resist, the strongest first, in a fabricator's words. */
  readonly rules: readonly string[];
  /** Paths as in a problem's `where`, in the same order. */
  readonly where: readonly string[];
};

export type HandState = { readonly held: Held | null; readonly resistance: Resistance | null };
export const useHand = create<HandState>()(() => ({ held: null, resistance: null }));

export type HandGesture = {
  /** The design when hold was taken: ask from this, not from the last answer, so that errors do not add up. */
  readonly from: Design;
  /** Asks for a design: `from` with what is held moved to where the pointer wants it. Only the newest ask is answered. */
  ask(asked: Design): void;
  /** One step of history, of what is drawn. A gesture that changed nothing leaves none. */
  commit(label: string): void;
  /** For a typed value: waits until the last ask is answered, then commits. */
  commitWhenAnswered(label: string): Promise<void>;
  /** Back to `from`, without trace. */
  bail(): void;
};

/** Null where there is no design. Ends any other gesture. */
export function takeHold(held: Held): HandGesture | null {
  const gesture = documents.mark();
  if (!gesture) return null;
  useHand.setState({ held, resistance: null });
  const end = () => useHand.setState({ held: null, resistance: null });
  return {
    from: gesture.from,
    ask: (asked) => void gesture.write(asked),
    commit(label) {
      gesture.commit(label);
      end();
    },
    async commitWhenAnswered(label) {
      gesture.commit(label);
      end();
    },
    bail() {
      gesture.bail();
      end();
    },
  };
}
