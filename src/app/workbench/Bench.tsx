/** The page round the workbench; what is on it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { useDocument } from '../document';
import { useModal } from '../parts/useModal';
import { closeBench, useBench } from './state';

const BenchPage = lazy(async () => ({ default: (await import('./BenchPage')).BenchPage }));

export function Bench() {
  const there = useDocument((s) => s.settled !== null);
  const open = useBench((s) => s.open) && there;
  const modal = useModal(open, closeBench);
  return (
    <dialog {...modal} className="whole-page bench" aria-label="At the workbench">
      {open && (
        <Suspense fallback={<p>Loading…</p>}>
          <BenchPage />
        </Suspense>
      )}
    </dialog>
  );
}
