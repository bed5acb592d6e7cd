/** Which runner to work on: each with how far it is, and what changed since it was ticked. */
import type { Step } from '../../shop/bench/step';
import { chosenWay } from '../../shop/making/chosen';
import type { Making } from '../../shop/making/report';
import { counted, WAY_NAMES } from '../making/words';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { useBench } from './state';
import { untick, useTicks } from './tickStore';
import { firstToDo, goneOf, progressOf } from './ticks';

export function Choose({ steps, making }: { readonly steps: readonly Step[]; readonly making: Making }) {
  const paints = usePaints();
  const ticks = useTicks((s) => s.ticks);
  const gone = goneOf(steps, ticks);
  const own = (runner: string | null) => steps.filter((step) => step.runner === runner);
  const stops = making.remarks.filter((r) => r.stops);
  return (
    <div className="bench-choose">
      <h2>What are you working on?</h2>
      {stops.length > 0 && (
        <div className="bench-care" role="note">
          <strong>Not everything here can be made as it stands:</strong>
          <ul>
            {[...new Set(stops.map((r) => r.message))].map((message) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        </div>
      )}
      <ul className="bench-runners">
        {making.welded.map(({ runner, tube }) => (
          <Row
            key={runner}
            of={runner}
            name={runner}
            says={WAY_NAMES[chosenWay(making, tube)]}
            swatch={paints.get(runner)}
            steps={own(runner)}
          />
        ))}
        <Row of="header" name="Whole header" says="Once every runner is made" steps={own(null)} />
      </ul>
      {gone.length > 0 && (
        <div className="bench-care">
          <strong>Ticked off, and no longer in the design:</strong>
          <ul>
            {gone.map(([id, title]) => (
              <li key={id}>{title}</li>
            ))}
          </ul>
          <button type="button" className="button" onClick={() => untick(...gone.map(([id]) => id))}>
            Forget {counted(gone.length, 'tick')}
          </button>
        </div>
      )}
    </div>
  );
}

type RowProps = {
  readonly of: string;
  readonly name: string;
  readonly says: string;
  readonly swatch?: React.ComponentProps<typeof Swatch>['paint'] | undefined;
  readonly steps: readonly Step[];
};

function Row({ of, name, says, swatch, steps }: RowProps) {
  const ticks = useTicks((s) => s.ticks);
  const { done, changed, all } = progressOf(steps, ticks);
  if (all === 0) return null;
  const go = () => useBench.setState({ of, step: firstToDo(steps, ticks)?.id ?? null });
  return (
    <li>
      <button type="button" className="bench-runner" onClick={go}>
        <span className="bench-runner-name">
          {swatch && <Swatch paint={swatch} />} {name}
        </span>
        <span className="bench-runner-count number">
          {done} of {all}
        </span>
        <span className="quiet">{says}</span>
        {changed > 0 && <span className="fails">{changed} changed since ticked</span>}
        <progress value={done} max={all} aria-label={`${name}: ${done} of ${all} steps done`} />
      </button>
    </li>
  );
}
