/**
 * A hand on the header: one gesture during which something is held and asked to move, and the header follows as near as
 * every rule allows. Each answer is drawn as soon as it is known, with its check, so picture and numbers agree.
 */
import { create } from 'zustand';
import { type Answer, type Held, limitWords } from '../../../geometry';
import type { Design, Surrounding } from '../../../shared/design/types';
import { share } from '../../../shared/share';
import { useReport } from '../derived';
import { documents } from '../document';
import { tellFailure } from '../notices';
import { type Link, linkHand } from './link';

/** What stops the hand just now; null while everything that is asked for can be had. */
export type Resistance = {
  /** How far what is held stays from where it is asked to be, mm. */
  readonly short: number;
  /** The rules that resist, the strongest first, in a fabricator's words. */
  readonly rules: readonly string[];
  /** Paths as in a problem's `where`, in the same order. */
  readonly where: readonly string[];
};

export type HandState = {
  readonly held: Held | null;
  readonly resistance: Resistance | null;
  /** The header broke rules before it was taken hold of, more than following can mend: it is drawn as asked. */
  readonly loose: boolean;
  /** A newer or a better answer is on its way. */
  readonly coming: boolean;
  /** Script that the last answer took, ms. */
  readonly spent: number;
  /**
   * What is around the header, where the hand has it: drawn there at once while nothing resists, since beside a large scan the
   * header's answer may take longer than a frame. Null where the design has it.
   */
  readonly floating: Surrounding | null;
};
const EMPTY: HandState = { held: null, resistance: null, loose: false, coming: false, spent: 0, floating: null };
export const useHand = create<HandState>()(() => EMPTY);

export type HandGesture = {
  /** The design when hold was taken: ask from this, not from the last answer, so that errors do not add up. */
  readonly from: Design;
  /** Asks for a design: `from` with what is held moved to where the pointer wants it. Only the newest ask is answered. */
  ask(asked: Design): void;
  /** One step of history, once the last ask is answered. A gesture that changed nothing leaves none. */
  commit(label: string): void;
  /** The same, for whoever wants to know when it is done. */
  commitWhenAnswered(label: string): Promise<void>;
  /** Back to `from`, without trace. */
  bail(): void;
};

/** Less than this is not felt as resistance, mm. */
const FELT = 0.3;

/** A gesture let go of while its last ask was still being answered. */
let lettingGo: (() => void) | null = null;

/** Commits what is drawn of a gesture that was let go of: called before anything else changes the design. */
export function finishLettingGo(): void {
  lettingGo?.();
}

/** Null where there is no design, or it may not be changed. Ends any other gesture. */
export function takeHold(held: Held): HandGesture | null {
  finishLettingGo();
  const gesture = documents.mark();
  if (!gesture) return null;
  useHand.setState({ ...EMPTY, held });
  const own = documents.store.getState().gesture;
  let whenAnswered: (() => void) | null = null;
  const link: Link = linkHand(gesture.from, documents.store.getState().meshes, held, {
    answered(answer, spent) {
      draw(answer, spent);
      if (!link.waiting) whenAnswered?.();
    },
    failed(why) {
      gesture.bail();
      end();
      tellFailure('The header could not follow', why);
    },
  });

  function draw({ design, report, short, limits, more, follows }: Answer, spent: number): void {
    // Undo, another file, another tool: whoever ended the gesture has had the last word.
    if (documents.store.getState().gesture !== own) {
      end();
      return;
    }
    // For whoever looks into the browser's own timeline, and for the benchmark.
    performance.measure('hand answer', { start: performance.now() - spent, duration: spent, detail: { more } });
    // What did not move since the last answer, or since the gesture began, is not drawn again.
    const drawn = share(documents.store.getState().design, share(gesture!.from, design));
    useReport.setState({ report, of: drawn, checking: false, error: null });
    gesture!.write(drawn);
    // On the way to what is asked nothing has stopped the hand yet.
    const isStopped = short > FELT && limits.length > 0 && (!more || useHand.getState().resistance !== null);
    const resistance = isStopped ? { short, rules: limitWords(limits), where: limits.map((l) => l.where) } : null;
    const { floating } = useHand.getState();
    useHand.setState({
      resistance,
      loose: !follows,
      coming: link.waiting,
      spent,
      floating: resistance || !link.waiting ? null : floating,
    });
  }

  function end(): void {
    link.end();
    lettingGo = null;
    whenAnswered = null;
    useHand.setState(EMPTY);
  }

  const finish = (label: string) => {
    gesture.commit(label);
    end();
  };

  const commitWhenAnswered = (label: string): Promise<void> => {
    if (!link.waiting) {
      finish(label);
      return Promise.resolve();
    }
    return new Promise((resolve) => {
      whenAnswered = () => {
        finish(label);
        resolve();
      };
      lettingGo = whenAnswered;
    });
  };

  return {
    from: gesture.from,
    ask(asked) {
      if (held.kind === 'surrounding' && useHand.getState().resistance === null)
        useHand.setState({ floating: asked.surroundings?.find(({ id }) => id === held.id) ?? null });
      link.ask(asked);
    },
    commit: (label) => void commitWhenAnswered(label),
    commitWhenAnswered,
    bail() {
      gesture.bail();
      end();
    },
  };
}
