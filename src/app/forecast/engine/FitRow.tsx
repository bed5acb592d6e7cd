/** What the measured curve has told of the engine: factors on the usual values, and the way to be rid of them. */
import { useDocument } from '../../document';
import { calibrationWords } from '../calibration';
import { numberText } from '../quantities';
import { setAt } from './given';

const NAMES = { flow: 'valves’ flow', friction: 'friction', heat: 'heat to the walls' } as const;

export function FitRow() {
  const engine = useDocument((s) => s.settled?.engine);
  const fitted = engine?.fitted;
  return (
    <div className="gain-fit" data-path="engine/fitted">
      <p>
        <b>{calibrationWords(engine)}.</b>
        {fitted && (
          <>
            {' '}
            Of the usual values:{' '}
            {Object.entries(NAMES)
              .map(([key, name]) => `${name} × ${numberText(fitted[key as keyof typeof NAMES] ?? 1, 3)}`)
              .join(', ')}
            .
          </>
        )}
      </p>
      {fitted && (
        <button
          type="button"
          className="button small"
          onClick={() => setAt('engine/fitted', undefined, 'Take the usual values again')}
        >
          Take the usual values again
        </button>
      )}
    </div>
  );
}
