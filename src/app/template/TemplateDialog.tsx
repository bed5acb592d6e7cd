/** The dialog round the template sheet; what is in it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { leaveFieldFirst, useModal } from '../parts/useModal';
import { closeTemplate, useTemplate } from './state';

const TemplateSheet = lazy(async () => ({ default: (await import('./TemplateSheet')).TemplateSheet }));

export function TemplateDialog() {
  const open = useTemplate((s) => s.open);
  const modal = useModal(open, closeTemplate);
  return (
    <dialog {...modal} className="sheet template" aria-labelledby="template-title" onCancel={leaveFieldFirst}>
      {open && (
        <Suspense fallback={<p className="sheet-search">Loading…</p>}>
          <TemplateSheet />
        </Suspense>
      )}
    </dialog>
  );
}
