/** Why something cannot be followed: each place with what was found and what is wanted, and the way to it. */
import type { Refusal } from '../../../shared/design/refusal';
import { actionById, isReady } from '../actions/list/registry';
import { goTo, type Way, wayTo } from './goTo';
import { isNotLaid, refusalText } from './refusalWords';
import { closeForecast } from './state';

export function Refusals({ refusals }: { readonly refusals: readonly Refusal[] }) {
  return (
    <ul className="gain-refusals">
      {refusals.map((refusal) => {
        const { place, text } = refusalText(refusal);
        return (
          <li key={`${refusal.path} ${refusal.found}`}>
            <span>
              <b>{place}</b>: {text}
            </span>{' '}
            {isNotLaid(refusal) ? <LayOrSketch path={refusal.path} /> : <WayThere way={wayTo(refusal.path)} />}
          </li>
        );
      })}
    </ul>
  );
}

const WayThere = ({ way }: { readonly way: Way | null }) =>
  way && (
    <button type="button" className="button small" onClick={() => goTo(way)}>
      {way.name}
    </button>
  );

const SKETCH: Way = { to: 'field', path: 'exhaust/sketch', name: 'Sketch lengths and bores' };

function LayOrSketch({ path }: { readonly path: string }) {
  const lay = actionById('design.lay');
  const onBench = () => {
    closeForecast();
    void lay.run();
  };
  return (
    <span className="gain-acts">
      <WayThere way={SKETCH} />
      {isReady(lay) ? (
        <button type="button" className="button small" onClick={onBench}>
          {lay.name}
        </button>
      ) : (
        <WayThere way={wayTo(path)} />
      )}
    </span>
  );
}
