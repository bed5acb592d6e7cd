/** What the search came to: layouts to choose from, or, where none holds, what fails and the best attempt. */
import { useDocument } from '../document';
import { useJobs } from '../jobs';
import { OutOfReach } from '../windows/OutOfReach';
import { LayTable } from './LayTable';
import { cancelSearch, choicesOf, keepChosen, type Search, searchOn, useLay } from './state';
import { counted } from './words';

/** More than this says no more. */
const MOST_PROBLEMS = 4;

export function LayChoice({ search }: { readonly search: Search }) {
  const chosen = useLay((s) => s.chosen);
  const readOnly = useDocument((s) => s.readOnly);
  const busy = useJobs((s) => s.running !== null);
  const { harvest, failed } = search;
  const holds = harvest.layouts.length > 0;
  const choices = choicesOf(harvest);
  const many = harvest.layouts.length > 1;
  return (
    <>
      <div role="status">
        {failed !== null && <p className="fails">The search broke off: {failed}</p>}
        <p>
          <strong>{headline(search)}</strong>
        </p>
      </div>
      {!holds && <OutOfReach />}
      {holds ? <LayTable search={search} /> : <Misses search={search} />}
      <p className="quiet lay-spent">
        {counted(search.rounds, 'round')} in {search.spent.toFixed(search.spent < 10 ? 1 : 0)} s, seed{' '}
        {search.wish.seed}.
      </p>
      <div className="lay-acts">
        {choices.length > 0 && (
          <button
            type="button"
            className={`button${holds ? ' strong' : ''}`}
            disabled={readOnly}
            onClick={keepChosen}
            data-first={many ? undefined : true}
          >
            {!holds ? 'Keep it anyway' : many ? `Keep layout ${chosen + 1}` : 'Keep it'}
          </button>
        )}
        <button
          type="button"
          className="button"
          disabled={busy}
          onClick={() => searchOn()}
          data-first={choices.length === 0 ? true : undefined}
        >
          Search on
        </button>
        <button type="button" className="button" onClick={cancelSearch}>
          Discard
        </button>
      </div>
    </>
  );
}

function headline({ harvest, failed }: Search): string {
  const { layouts, best } = harvest;
  if (layouts.length === 1) return 'One layout holds every rule';
  if (layouts.length > 1) return `${layouts.length} layouts hold every rule`;
  if (best) return 'No layout was found that holds every rule';
  return failed === null ? 'Nothing was found in this time' : 'Nothing was found';
}

function Misses({ search }: { readonly search: Search }) {
  const { best } = search.harvest;
  if (!best)
    return (
      <p>Search on, or ease what stands in the way: clearances, lengths, straights, or how many bends there may be.</p>
    );
  const { problems } = best.report;
  return (
    <>
      <p>The best attempt misses {problems.length === 1 ? 'one' : problems.length}:</p>
      <ul className="lay-misses">
        {problems.slice(0, MOST_PROBLEMS).map((p, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: problems have no id of their own; the list is replaced as a whole
          <li key={i}>{p.message}</li>
        ))}
      </ul>
      {problems.length > MOST_PROBLEMS && (
        <p className="quiet">And {problems.length - MOST_PROBLEMS} more, under Problems.</p>
      )}
    </>
  );
}
