/** The page round the waves; what is on it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { useModal } from '../parts/useModal';
import { closeWaves, useWaves } from './state';

const WavesPage = lazy(async () => ({ default: (await import('./WavesPage')).WavesPage }));

export function WavesDialog() {
  const open = useWaves((s) => s.open);
  const modal = useModal(open, closeWaves);
  return (
    <dialog {...modal} className="whole-page waves" aria-label="Pressure waves in pipes">
      {open && (
        <Suspense fallback={<p>Loading…</p>}>
          <WavesPage />
        </Suspense>
      )}
    </dialog>
  );
}
