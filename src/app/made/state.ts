/**
 * The real parts of the header that the user has settled on, as last made; what is being made now, and why not where it
 * failed. Follows from the design: never saved, never undone.
 */
import { useEffect } from 'react';
import { create } from 'zustand';
import { type Header, type PartRemark, resolveHeader } from '../../../geometry';
import { type DocumentState, documents } from '../document';
import { createMaker } from './maker';
import type { ShownMade } from './messages';
import type { ShownPart } from './shape';

export type MadeState = ShownMade & {
  /** The header that the parts are of; null until some were made. */
  readonly of: Header | null;
  /** What is being made of a newer design, in words; null: nothing. */
  readonly making: string | null;
  /** Why making failed, where it did. */
  readonly error: string | null;
  /** The one that is pointed at in the list, by id. */
  readonly pointed: string | null;
};

const NONE: readonly PartRemark[] = [];
const NOTHING = { parts: [], notMade: NONE, warnings: NONE, of: null, making: null, error: null, pointed: null };

export const useMade = create<MadeState>()(() => NOTHING);

export const pointAtPart = (pointed: string | null): void => useMade.setState({ pointed });

/** Parts that came out as before keep their identity, so that nothing is drawn again for them. */
export function keepSame(before: readonly ShownPart[], next: readonly ShownPart[]): readonly ShownPart[] {
  const known = new Map(before.map((part) => [part.id, part]));
  return next.map((part) => {
    const old = known.get(part.id);
    if (old?.print !== part.print) return part;
    return JSON.stringify({ ...old, shape: 0 }) === JSON.stringify({ ...part, shape: 0 })
      ? old
      : { ...part, shape: old.shape };
  });
}

/** Keeps the parts up to date with the document; mounted once by the app. */
export function useMaking(): void {
  useEffect(() => {
    const maker = createMaker({
      doing: (making) => useMade.setState({ making }),
      done: (design, made) =>
        useMade.setState(({ parts }) => ({
          ...made,
          parts: keepSame(parts, made.parts),
          of: resolveHeader(design),
          making: null,
          error: null,
        })),
      failed: (_, error) => useMade.setState({ making: null, error }),
    });
    const look = (now: DocumentState, before?: DocumentState) => {
      if (!now.settled || now.settled === before?.settled) return;
      if (now.id !== before?.id) useMade.setState(NOTHING);
      useMade.setState({ making: 'parts' });
      maker.make(now.settled);
    };
    look(documents.store.getState());
    const stop = documents.store.subscribe(look);
    return () => {
      stop();
      maker.end();
    };
  }, []);
}
