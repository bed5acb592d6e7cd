/** The dialog of a new header; the page in it is loaded when it is first opened. */
import './newHeader.css';
import { lazy, Suspense } from 'react';
import { useModal } from '../parts/useModal';
import { closeNewHeader, useNewHeader } from './state';

const NewHeaderPage = lazy(async () => ({ default: (await import('./NewHeaderPage')).NewHeaderPage }));

export function NewHeader() {
  const open = useNewHeader((s) => s.open);
  // Its backdrop closes nothing: a header may be half typed, or under way.
  const { ref, onClose } = useModal(open, closeNewHeader);
  return (
    <dialog
      ref={ref}
      onClose={onClose}
      className="new-header"
      aria-labelledby="new-title"
      onCancel={(event) => {
        event.preventDefault();
        // Escape gives up what is being typed first; the page closes on the next one.
        const { activeElement } = document;
        if (activeElement instanceof HTMLInputElement) activeElement.blur();
        else closeNewHeader();
      }}
    >
      {open && (
        <Suspense fallback={<p className="new-note">Loading…</p>}>
          <NewHeaderPage />
        </Suspense>
      )}
    </dialog>
  );
}
