/** The dialog round the outline sheet; what is in it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { useDocument } from '../document';
import { leaveFieldFirst, useModal } from '../parts/useModal';
import { closeOutline, useOutline } from './state';

const OutlineSheet = lazy(async () => ({ default: (await import('./OutlineSheet')).OutlineSheet }));

export function OutlineDialog() {
  const flange = useOutline((s) => s.flange);
  const design = useDocument((s) => s.settled);
  const there = flange !== null && (design?.flanges?.some(({ id }) => id === flange) ?? false);
  const modal = useModal(there, closeOutline);
  return (
    <dialog {...modal} className="sheet traced" aria-labelledby="traced-title" onCancel={leaveFieldFirst}>
      {there && design && (
        <Suspense fallback={<p className="sheet-search">Loading…</p>}>
          <OutlineSheet design={design} flange={flange} />
        </Suspense>
      )}
    </dialog>
  );
}
