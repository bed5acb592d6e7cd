/** The dialog round the outline sheet; what is in it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { useDocument } from '../document';
import { useModal } from '../parts/useModal';
import { closeOutline, useOutline } from './state';

const OutlineSheet = lazy(async () => ({ default: (await import('./OutlineSheet')).OutlineSheet }));

export function OutlineDialog() {
  const flange = useOutline((s) => s.flange);
  const design = useDocument((s) => s.settled);
  const there = flange !== null && (design?.flanges?.some(({ id }) => id === flange) ?? false);
  const modal = useModal(there, closeOutline);
  return (
    <dialog
      {...modal}
      className="sheet traced"
      aria-labelledby="traced-title"
      onCancel={(event) => {
        // Escape gives up what is being typed first; the sheet closes on the next one.
        const { activeElement } = document;
        if (!(activeElement instanceof HTMLInputElement) || activeElement.type !== 'text') return;
        event.preventDefault();
        activeElement.blur();
      }}
    >
      {there && design && (
        <Suspense fallback={<p className="sheet-search">Loading…</p>}>
          <OutlineSheet design={design} flange={flange} />
        </Suspense>
      )}
    </dialog>
  );
}
