/** What the picture takes of making: null while the leaf is not on top, or what is known is not of what is drawn. */
import { useMemo } from 'react';
import type { Header } from '../../../../geometry';
import { useLeaf } from '../../leaf';
import { useSession } from '../../session';
import { useHiding } from '../../viewport/seen';
import { isHidden } from '../../viewState';
import { useMakingAnswer } from '../answer';
import { useMakeLook } from '../look';
import { type MakeShown, makeShown } from './shown';

export type Note = {
  readonly key: string;
  readonly text: string;
  readonly at: readonly [number, number, number];
  readonly fails: boolean;
};

const NONE: readonly Note[] = [];

export function useMakeShown(header: Header | null): MakeShown | null {
  const onTop = useLeaf((s) => s.leaf === 'make');
  const { making, of } = useMakingAnswer();
  const meant = useMakeLook((s) => s.meant);
  const hiding = useHiding();
  return useMemo(
    () =>
      onTop && header && making && of === header.design
        ? makeShown(making, header, meant, (runner) => isHidden(hiding, `runner/${runner}`))
        : null,
    [onTop, header, making, of, meant, hiding],
  );
}

/** Joints are named on the runner that is picked: on all of them they would hide the tubes. */
export function useMakeNotes(shown: MakeShown | null): readonly Note[] {
  const picked = useSession((s) => (s.selected?.kind === 'runner' ? s.selected.id : null));
  return useMemo(
    () =>
      shown && picked !== null
        ? shown.joints
            .filter(({ runner }) => runner === picked)
            .map(({ key, text, at }) => ({ key, text, at, fails: false }))
        : NONE,
    [shown, picked],
  );
}
