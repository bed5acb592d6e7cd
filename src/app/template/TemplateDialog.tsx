/** The dialog round the template sheet; what is in it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { useModal } from '../parts/useModal';
import { closeTemplate, useTemplate } from './state';

const TemplateSheet = lazy(async () => ({ default: (await import('./TemplateSheet')).TemplateSheet }));

export function TemplateDialog() {
  const open = useTemplate((s) => s.open);
  const modal = useModal(open, closeTemplate);
  return (
    <dialog
      {...modal}
      className="sheet template"
      aria-labelledby="template-title"
      onCancel={(event) => {
        // Escape gives up what is being typed first; the sheet closes on the next one.
        const { activeElement } = document;
        if (!(activeElement instanceof HTMLInputElement) || activeElement.type !== 'text') return;
        event.preventDefault();
        activeElement.blur();
      }}
    >
      {open && (
        <Suspense fallback={<p className="sheet-search">Loading…</p>}>
          <TemplateSheet />
        </Suspense>
      )}
    </dialog>
  );
}
