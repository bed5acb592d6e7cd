/** What the last balance came to: how far each runner moved, how even it is now, and what stands in the way if anything. */
import { limitWords } from '../../../geometry';
import { useDocument } from '../document';
import { history } from '../history';
import { type BalanceOutcome, isAbout, movedBy, useJobs } from '../jobs';
import { Length } from '../parts/Length';
import { Spread } from '../parts/Spread';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { hasWays } from '../route/offer';
import { openLay } from '../route/state';
import { Icon } from './Icon';

/** More than this says no more. */
const MOST_LIMITS = 6;

export function BalanceCard() {
  const outcome = useJobs((s) => s.balanced);
  const settled = useDocument((s) => s.settled);
  if (!outcome) return null;
  const moved = movedBy(outcome);
  return isAbout(outcome, settled) ? (
    <Outcome outcome={outcome} moved={moved} edited={settled === outcome.design} />
  ) : null;
}

type Props = { readonly outcome: BalanceOutcome; readonly moved: BalanceOutcome['moved']; readonly edited: boolean };

function Outcome({ outcome, moved, edited }: Props) {
  const paints = usePaints();
  const { report } = outcome;
  return (
    <section className={`card${report.ok ? '' : ' fail'}`} aria-label="Balance" role="status">
      <div className="card-head">
        <h2 className="card-title">{headline(outcome, moved.length)}</h2>
        {edited && moved.length > 0 && (
          <button type="button" className="button" onClick={() => history.undo()}>
            Undo
          </button>
        )}
        <button
          type="button"
          className="button icon bare"
          aria-label="Dismiss"
          onClick={() => useJobs.setState({ balanced: null })}
        >
          <Icon name="close" />
        </button>
      </div>
      {moved.length > 0 && <p className="quiet">Farthest that a point moved:</p>}
      {moved.length > 0 && (
        <ul className="moved">
          {moved.map(({ id, distance }) => (
            <li key={id}>
              {paints.get(id) && <Swatch paint={paints.get(id)!} />}
              <strong>{id}</strong> <Length mm={distance} />
            </li>
          ))}
        </ul>
      )}
      <p className="quiet">
        {report.ok ? <Evenness report={report} /> : 'What stands in the way is listed under Problems.'}
      </p>
      {outcome.limits.length > 0 && (
        <p className="quiet">At the limit: {limitWords(outcome.limits.slice(0, MOST_LIMITS)).join('; ')}.</p>
      )}
      {!report.ok && hasWays(outcome.before) && (
        <button type="button" className="button anew" onClick={() => layAnew(edited)}>
          {edited ? 'Undo it, and lay anew…' : 'Lay anew…'}
        </button>
      )}
    </section>
  );
}

/** From the way that the runners went before: what balance left of it where it found none that holds is nobody's shape. */
function layAnew(edited: boolean): void {
  if (edited) history.undo();
  openLay(true);
}

function Evenness({ report }: Pick<BalanceOutcome, 'report'>) {
  const spread = Math.max(0, ...report.groups.map((g) => g.spread));
  return (
    <>
      Lengths now differ by <Spread mm={spread} />.
    </>
  );
}

function headline({ report }: BalanceOutcome, moved: number): string {
  if (!report.ok) return `As near as it comes: ${report.problems.length} still in the way`;
  return moved === 0 ? 'Nothing to move: even, and every rule holds' : 'Balanced: every rule holds';
}
