/** What fails, where and by how much, each a click from the place; or, when all holds, the numbers that say so. */
import type { CheckReport, Header, Problem, RuleName } from '../../../geometry';
import { useReport } from '../derived';
import { Length } from '../parts/Length';
import { Spread } from '../parts/Spread';
import { placeOf, refAtPath } from '../refs';
import { useIsPreview, useShownHeader, useShownReport } from '../route/shown';
import { useSession } from '../session';
import { Icon } from './Icon';

export function ProblemPanel() {
  // A layout that is looked at comes with its report.
  const isPreview = useIsPreview();
  const checking = useReport((s) => s.checking) && !isPreview;
  const error = useReport((s) => (isPreview ? null : s.error));
  const report = useShownReport();
  const header = useShownHeader();
  return (
    <section className="panel problems" aria-label="Problems" aria-busy={checking}>
      <div aria-live="polite">
        {error !== null && <p className="verdict fails">Measuring failed: {error}</p>}
        {error === null && !report && <p className="verdict quiet">Measuring…</p>}
        {report && <Verdict report={report} checking={checking} />}
      </div>
      {report && header && report.problems.length > 0 && (
        <ul className="problem-list">
          {byUrgency(report.problems).map((problem, i) => (
            // Problems have no id of their own; two may share rule and place.
            // biome-ignore lint/suspicious/noArrayIndexKey: the list is replaced as a whole
            <ProblemRow key={`${problem.rule} ${problem.where} ${i}`} problem={problem} header={header} />
          ))}
        </ul>
      )}
    </section>
  );
}

/** What cannot be built or fitted first; what balance sets right by itself last. */
const LAST: readonly RuleName[] = ['straight', 'balance', 'end'];

const byUrgency = (problems: readonly Problem[]): readonly Problem[] =>
  [...problems].sort((a, b) => LAST.indexOf(a.rule) - LAST.indexOf(b.rule));

function Verdict({ report, checking }: { readonly report: CheckReport; readonly checking: boolean }) {
  const count = report.problems.length;
  return (
    <div className={`verdict${count > 0 ? ' fails' : ''}`}>
      <h2>
        <Icon name={count > 0 ? 'warn' : 'tick'} />
        {count === 0 ? 'Every rule holds' : count === 1 ? '1 problem' : `${count} problems`}
        {checking && <span className="quiet checking"> measuring…</span>}
      </h2>
      {count === 0 && <Proof report={report} />}
    </div>
  );
}

/** The few numbers that a good state rests on. */
function Proof({ report }: { readonly report: CheckReport }) {
  const spread = Math.max(0, ...report.groups.map((g) => g.spread));
  const tightest = Object.values(report.clearance)
    .filter((m) => m !== null)
    .sort((a, b) => a.margin - b.margin)[0];
  return (
    <p className="quiet">
      Lengths differ by <Spread mm={spread} />
      {tightest && (
        <>
          ; tightest gap <Length mm={tightest.gap} /> of <Length mm={tightest.required} /> needed, {tightest.between[0]}{' '}
          to {tightest.between[1]}
        </>
      )}
      .
    </p>
  );
}

/** How much of the neighbourhood to show around a problem, mm. */
const LOOK_RADIUS = 120;

function ProblemRow({ problem, header }: { readonly problem: Problem; readonly header: Header }) {
  const ref = refAtPath(problem.where, header);
  const at = problem.at ?? (ref && placeOf(ref, header));
  const go = () => {
    const { select, ask, setMark } = useSession.getState();
    if (ref) select(ref);
    setMark(at ?? null);
    ask(at ? { kind: 'look', at, radius: LOOK_RADIUS } : { kind: 'fit' });
  };
  return (
    <li>
      <button
        type="button"
        onClick={go}
        onPointerEnter={() => useSession.getState().hover(ref)}
        onPointerLeave={() => useSession.getState().hover(null)}
      >
        {problem.message}
      </button>
    </li>
  );
}
