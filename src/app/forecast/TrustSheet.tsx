/** What of this is to be trusted and what is not, in plain words; every number that nobody gave; the doubts of what was followed. */
import { useDocument } from '../document';
import { Icon } from '../panels/Icon';
import { assumedKey, eachOnce } from './assumed';
import { calibrationWords } from './calibration';
import { useFit } from './engine/fit';
import { isAnswer } from './quantities';
import { useShown } from './shown';

export function TrustSheet({ onClose }: { readonly onClose: () => void }) {
  const { runs, chosen } = useShown();
  const there = chosen.flatMap((kind) => runs.get(kind) ?? []);
  const engine = useDocument((s) => s.settled?.engine);
  const last = useFit((s) => s.last);
  const assumed = eachOnce(there.flatMap(({ subject }) => subject.assumed));
  const doubts = there.flatMap(({ subject, told }) =>
    told
      .filter(isAnswer)
      .flatMap(({ rpm, doubts }) => doubts.map(({ message }) => ({ run: subject.title, rpm, message }))),
  );
  return (
    <aside className="gain-trust" aria-label="What to trust">
      <header>
        <h2>What to trust</h2>
        <button type="button" className="button bare icon" aria-label="Close what to trust" onClick={onClose}>
          <Icon name="close" />
        </button>
      </header>
      <ul className="gain-points">
        <li>
          <b>{calibrationWords(engine, last)}.</b> The gas in every pipe is followed along its length, crank degree by
          crank degree. The method is checked against theory and published trends; it was not checked against your
          engine.
        </li>
        <li>
          <b>Trust differences more than heights.</b> What two headers do to the same engine is told better than how
          much torque that engine has: what is wrong with the engine is wrong in both.
        </li>
        <li>
          <b>Bends, welds and merges are idealised.</b> A bend counts as its length of pipe; a collector joins its pipes
          at one place. The intake is one pipe a cylinder. Nothing here knows of ignition maps, fuel systems, knock,
          valve float or a turbocharger.
        </li>
        <li>
          <b>It says nothing of strength, heat or noise.</b> Lean mixtures and advanced ignition can destroy an engine,
          and one that breathes better needs its mixture set anew: measure it before it is driven hard.
        </li>
        <li>
          <b>Hollow points have not settled:</b> from cycle to cycle their torque still moved by more than 0.1 % when
          the last cycle that is followed was over.
        </li>
      </ul>
      <h3>{assumed.length > 0 ? `Numbers that nobody gave: ${assumed.length}` : 'Every number was given'}</h3>
      {assumed.length > 0 && (
        <table className="gain-assumed">
          <thead>
            <tr>
              <th>What</th>
              <th>Taken</th>
              <th>Because</th>
            </tr>
          </thead>
          <tbody>
            {assumed.map((one) => (
              <tr key={assumedKey(one)}>
                <th scope="row">{one.name}</th>
                <td>{one.taken}</td>
                <td>{one.why}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <h3>{doubts.length > 0 ? 'Doubts of what was followed' : 'No doubts of what was followed so far'}</h3>
      {doubts.length > 0 && (
        <ul className="gain-doubts">
          {doubts.map(({ run, rpm, message }) => (
            <li key={`${run} ${rpm} ${message}`}>
              <b>
                {run}, {rpm} rpm:
              </b>{' '}
              {message}
            </li>
          ))}
        </ul>
      )}
    </aside>
  );
}
