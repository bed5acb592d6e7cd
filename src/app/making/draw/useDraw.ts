/** Draws welds and the piece that is meant into the picture while the leaf is there, as the answer and what is hidden change. */
import { useEffect } from 'react';
import { useSession } from '../../session';
import { isHidden, useViewState } from '../../viewState';
import { answeredHeader, useMakingAnswer } from '../answer';
import { useMakeDrawn } from '../drawn';
import { useMakeLook } from '../look';
import { makeShown } from './shown';

export function useDraw(): void {
  const { making, of } = useMakingAnswer();
  const meant = useMakeLook((s) => s.meant);
  const hidden = useViewState((s) => s.hidden);
  const only = useViewState((s) => s.only);
  // Joints are named on the runner that is picked: on all of them they would hide the tubes.
  const picked = useSession((s) => (s.selected?.kind === 'runner' ? s.selected.id : null));
  useEffect(() => {
    if (!making || !of) return;
    const hides = (runner: string) => isHidden({ hidden, only }, `runner/${runner}`);
    const { welds, ends, joints } = makeShown(making, answeredHeader(of), meant, hides);
    const notes = joints
      .filter(({ runner }) => runner === picked)
      .map(({ key, text, at }) => ({ key, text, at, fails: false as const }));
    useMakeDrawn.setState({ drawn: { of, welds, ends, notes } });
    return () => useMakeDrawn.setState({ drawn: null });
  }, [making, of, meant, hidden, only, picked]);
}
