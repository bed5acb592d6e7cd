/** How the run stands: how far it is, and how to end it; and why the last choice is not shown, place by place. */
import type { Refusal } from '../../../shared/design/refusal';
import { Icon } from '../panels/Icon';
import { timeUnit } from './quantities';
import { dismiss, endRun, followRig, type Shown, useShown } from './shown';
import { beyondWords, leftWords, reachWords, timeText } from './words';

/**
 * In the head of the page: progress while it runs, else the way to run it again. One button throughout, never disabled: so the
 * keyboard's place is kept from one to the other.
 */
export function RunState() {
  const standing = useShown((s) => s.standing);
  const asked = useShown((s) => s.asked);
  const rig = useShown((s) => s.rig);
  if (standing.is === 'nothing' || !asked || !rig) return null;
  const busy = standing.is === 'starting' || standing.is === 'running';
  const progress = standing.is === 'running' ? standing.progress : null;
  const ending = standing.is === 'running' && standing.ending;
  const whole = progress?.duration ?? 1;
  const left = progress && leftWords(progress, rig);
  const press = (clicks: number) => {
    if (ending) return;
    if (busy) endRun();
    // The second click of a double one on "Stop here" is no wish to begin anew.
    else if (clicks < 2) followRig(asked);
  };
  return (
    <div className="waves-run">
      {busy && (
        <>
          <progress aria-label="Followed so far" max={1} value={progress ? progress.time / whole : 0} />
          <span className="waves-time">
            {progress ? `${timeText(progress.time, rig)} of ${timeText(whole, rig)}` : '0'}{' '}
            <span className="unit">{timeUnit(rig).unit}</span>
            {left && <span className="waves-left">, {left.left}</span>}
          </span>
        </>
      )}
      <button type="button" className="button" aria-disabled={ending} onClick={({ detail }) => press(detail)}>
        {busy ? 'Stop here' : 'Run again'}
      </button>
    </div>
  );
}

/** Below the head, where there is something to be told. */
export function StandingNotes() {
  const { standing, seen, asked, rig, trouble } = useShown();
  const failed = standing.is === 'failed' ? standing.why : null;
  const reach = seen ? reachWords(seen) : null;
  const stays = trouble || failed ? staysWords({ standing, seen, asked }) : null;
  const beyond = seen && beyondWords(seen.run);
  const progress = standing.is === 'running' ? standing.progress : null;
  const long = progress && rig ? leftWords(progress, rig)?.why : null;
  if (!trouble && !failed && !reach && !beyond && !long) return null;
  return (
    <div className="waves-notes" role="status">
      {trouble && (
        <p className="fails waves-trouble">
          {trouble.title}
          <button type="button" className="button bare icon" aria-label="Put this note away" onClick={dismiss}>
            <Icon name="close" />
          </button>
        </p>
      )}
      {trouble && trouble.refusals.length > 0 && <Refusals refusals={trouble.refusals} />}
      {failed && <p className="fails">{failed}</p>}
      {stays && <p>{stays}</p>}
      {long && <p>{long}</p>}
      {beyond && <p className="fails">{beyond}</p>}
      {reach && <p className={seen?.ending?.how === 'stopped' ? 'fails' : ''}>{reach}</p>}
    </div>
  );
}

/** What is shown beside the news of another rig. */
export function staysWords({ standing, seen, asked }: Pick<Shown, 'standing' | 'seen' | 'asked'>): string | null {
  if (standing.is === 'starting' || standing.is === 'running') return `${asked?.name} goes on.`;
  return seen && `The picture below is still that of ${seen.name}.`;
}

/** After a slash, rather than within a name. */
const mayBreak = (path: string): string => path.replaceAll('/', '/\u200b');

function Refusals({ refusals }: { readonly refusals: readonly Refusal[] }) {
  return (
    <table className="waves-refusals">
      <thead>
        <tr>
          <th>Where</th>
          <th>Found</th>
          <th>Allowed</th>
        </tr>
      </thead>
      <tbody>
        {refusals.map(({ path, found, allowed }) => (
          <tr key={`${path} ${found}`}>
            <td>{path ? mayBreak(path) : 'the file'}</td>
            <td>{found}</td>
            <td>{allowed}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
