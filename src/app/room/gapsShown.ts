/** What the picture takes of the known gaps; null where they are not known, or not of what is drawn. */
import { useMemo } from 'react';
import { useLeaf } from '../leaf';
import type { GapsShown } from '../viewport/gaps';
import { useAnswers } from './answers';
import { useRoomLook } from './look';

/** @param elsewhere what is drawn is not the document: a layout that is only looked at */
export function useGapsShown(elsewhere: boolean): GapsShown | null {
  const report = useAnswers((s) => s.gaps.value);
  const onTop = useLeaf((s) => s.leaf === 'room');
  const tinted = useRoomLook((s) => s.tinted);
  const listed = useRoomLook((s) => s.open.has('gaps')) && onTop;
  const pointed = useRoomLook((s) => s.pointedGap);
  return useMemo(
    () => (report && !elsewhere && (onTop || tinted) ? { report, listed, pointed: onTop ? pointed : null } : null),
    [report, elsewhere, onTop, tinted, listed, pointed],
  );
}
