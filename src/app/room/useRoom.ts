/**
 * Keeps what is known of the room round the header up to date, for as long as something shows it: gaps with every design that
 * is drawn, in a drag too; the rest once the design rests. Who shows nothing pays nothing: the workers are let go.
 */
import { useEffect } from 'react';
import type { Design } from '../../../shared/design/types';
import { type DocumentState, documents, useDocument } from '../document';
import { useLeaf } from '../leaf';
import { answered, failed, idle, useAnswers, working } from './answers';
import { type Asker, live, resting } from './asker';
import { useRoomLook } from './look';
import type { Question } from './messages';

const heard = { answered, failed };

/** Whether gaps are shown: by the leaf, or as colours. */
const useGapsWanted = (): boolean => {
  const onTop = useLeaf((s) => s.leaf === 'room');
  const tinted = useRoomLook((s) => s.tinted);
  return onTop || tinted;
};

/** What is asked once the design rests, joined; empty: nothing. Removal takes longest and is asked last, where it is looked at. */
const useRestWanted = (): string => {
  const onTop = useLeaf((s) => s.leaf === 'room');
  const removal = useRoomLook((s) => s.open.has('removal'));
  const sensors = useDocument((s) => (s.settled?.sensors?.length ?? 0) > 0);
  const asked: Question[] = [];
  if (onTop || sensors) asked.push('sensors');
  if (onTop) asked.push('access');
  if (onTop && removal) asked.push('removal');
  return asked.join(' ');
};

/** Mounted once, by `Watch`. */
export function useRoom(): void {
  const gaps = useGapsWanted();
  const rest = useRestWanted();
  useEffect(() => {
    if (gaps) return keepUp(live(heard), ['gaps'], (s) => s.design);
  }, [gaps]);
  useEffect(() => {
    if (rest !== '') return keepUp(resting(heard), rest.split(' ') as Question[], (s) => s.settled);
  }, [rest]);
}

/** Asks about each new design; what is known of it already is not asked again. @returns ends it */
function keepUp(asker: Asker, questions: readonly Question[], pick: (s: DocumentState) => Design | null): () => void {
  const ask = (now: DocumentState, isNew: (question: Question, design: Design) => boolean) => {
    const design = pick(now);
    if (!design) return;
    const asked = questions.filter((question) => isNew(question, design));
    if (asked.length === 0) return;
    for (const question of asked) working(question);
    asker.ask(asked, design, now.meshes);
  };
  const known = (question: Question, design: Design) => useAnswers.getState()[question].of === design;
  ask(documents.store.getState(), (question, design) => !known(question, design));
  const stop = documents.store.subscribe((now, before) => {
    if (pick(now) === pick(before) && now.meshes === before.meshes) return;
    ask(now, () => true);
  });
  return () => {
    stop();
    asker.end();
    idle(questions);
  };
}
