/**
 * What was last found out about making the header's tubes, and of which design. Follows from the design: never saved, never
 * undone. Kept up to date for as long as something shows it; who shows nothing pays nothing.
 */
import { useEffect } from 'react';
import { create } from 'zustand';
import { type Header, resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { remembered } from '../../../shared/remember';
import type { Making } from '../../shop/making/report';
import { type DocumentState, documents, whenOpened } from '../document';
import { createAsker, type MakingAsker } from './asker';

export type MakingAnswer = {
  /** The last answer; null until the first. */
  readonly making: Making | null;
  readonly of: Design | null;
  /** True while a newer design is being looked at: what is shown may be outdated. */
  readonly working: boolean;
  /** Why the last look failed, where it did. */
  readonly error: string | null;
};

/**
 * The header that the answer is of. Not by `headerOf`, which remembers the design that is drawn alone: asked for two by turns it
 * would make both anew each time.
 */
export const answeredHeader = remembered((design: Design): Header => resolveHeader(design));

const NOTHING: MakingAnswer = { making: null, of: null, working: false, error: null };

export const useMakingAnswer = create<MakingAnswer>()(() => NOTHING);

const ears = {
  done: (of: Design, making: Making) => useMakingAnswer.setState({ making, of, working: false, error: null }),
  failed: (_: Design, error: string) => useMakingAnswer.setState({ working: false, error }),
};

let shown = 0;
let stop = () => {};

function start(makeAsker: () => MakingAsker): () => void {
  const asker = makeAsker();
  const look = (now: DocumentState) => {
    if (!now.settled) return;
    // Gone back to what is known: what is under way would be of something that is no more.
    const known = now.settled === useMakingAnswer.getState().of;
    useMakingAnswer.setState({ working: !known, ...(known && { error: null }) });
    if (known) asker.end();
    else asker.ask(now.settled);
  };
  look(documents.store.getState());
  const unsubscribe = documents.store.subscribe((now, before) => {
    if (now.settled !== before.settled) look(now);
  });
  return () => {
    unsubscribe();
    asker.end();
    useMakingAnswer.setState({ working: false });
  };
}

/** Keeps the answer up to date until what it answers is called. However many ask for it, one worker answers. */
export function keepAnswer(makeAsker = () => createAsker(ears)): () => void {
  if (shown++ === 0) stop = start(makeAsker);
  return () => {
    if (--shown === 0) stop();
  };
}

/** For whatever shows it. */
export function useMaking(): MakingAnswer {
  useEffect(() => keepAnswer(), []);
  return useMakingAnswer();
}

/** Another design: nothing is known about it. */
whenOpened(() => useMakingAnswer.setState(NOTHING));
