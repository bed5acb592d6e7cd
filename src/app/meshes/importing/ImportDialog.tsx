/** The dialog round the import sheet; what is in it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { useDocument } from '../../document';
import { leaveFieldFirst, useModal } from '../../parts/useModal';
import { closeImport, useImport } from './state';

const ImportSheet = lazy(async () => ({ default: (await import('./ImportSheet')).ImportSheet }));

export function ImportDialog() {
  const open = useImport((s) => s.open);
  const design = useDocument((s) => s.settled);
  const there = open && design !== null;
  const modal = useModal(there, closeImport);
  return (
    <dialog {...modal} className="sheet scanned" aria-labelledby="scanned-title" onCancel={leaveFieldFirst}>
      {there && (
        <Suspense fallback={<p className="sheet-search">Loading…</p>}>
          <ImportSheet design={design} />
        </Suspense>
      )}
    </dialog>
  );
}
