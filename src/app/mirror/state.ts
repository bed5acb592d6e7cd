/** The sheet that mirrors a bank: whether it is open, and the one step of history that it makes. */
import { create } from 'zustand';
import { engineWords } from '../../../geometry';
import { edit } from '../actions/edit';
import type { Action } from '../actions/list/action';
import { documents } from '../document';
import { tell } from '../notices';
import { useSession } from '../session';
import { type MirrorWish, outcomeOf } from './wish';

export const useMirror = create<{ readonly open: boolean }>()(() => ({ open: false }));

export const openMirror = (): void => useMirror.setState({ open: true });
export const closeMirror = (): void => useMirror.setState({ open: false });

/** Nothing where the wish is refused: the sheet says why. */
export function mirrorNow(wish: MirrorWish): void {
  const { settled, readOnly } = documents.store.getState();
  const outcome = settled && outcomeOf(settled, wish);
  if (!outcome?.ok) return;
  closeMirror();
  edit(outcome.design, wish.bank === null ? 'Mirror the bank' : `Mirror bank ${wish.bank}`);
  // Another tab has it: said elsewhere.
  if (readOnly) return;
  const engine = engineWords(settled!, outcome.design);
  tell(`Mirrored: ${outcome.adds} added`, ...(engine ? [engine] : []));
  useSession.getState().ask({ kind: 'fit' });
}

const ports = (): number => documents.store.getState().settled?.ports.length ?? 0;

export const mirrorActions: readonly Action[] = [
  {
    id: 'design.mirror',
    name: 'Mirror a bank…',
    group: 'Design',
    also: 'second other bank opposite reflect image symmetry vee flat boxer v6 v8',
    ready: () => ports() > 0,
    why: () => (documents.store.getState().settled ? 'There is no port to mirror' : 'Open a design first'),
    run: openMirror,
  },
];
