/** The page round the engine on the header; what is on it is loaded when it is first opened. */
import { lazy, Suspense } from 'react';
import { leaveFieldFirst, useModal } from '../parts/useModal';
import { closeForecast, useForecast } from './state';

const ForecastPage = lazy(async () => ({ default: (await import('./ForecastPage')).ForecastPage }));

export function ForecastDialog() {
  const open = useForecast((s) => s.open);
  const modal = useModal(open, closeForecast);
  return (
    <dialog
      {...modal}
      className="whole-page forecast"
      aria-label="What the header gains"
      // A curve or a table half typed is not thrown away by one key.
      onCancel={leaveFieldFirst}
    >
      {open && (
        <Suspense fallback={<p>Loading…</p>}>
          <ForecastPage />
        </Suspense>
      )}
    </dialog>
  );
}
