/** Curves of all that is followed, what one gains over another, and the numbers below. */
import { useMemo, useState } from 'react';
import type { Engine } from '../../../../shared/design/types';
import { engineDifferences } from '../../../pulse/forecast/against';
import { useDisplay } from '../../actions/display';
import { useTheme } from '../../colours';
import { documents, useDocument } from '../../document';
import { shelf, useShelf } from '../../shelf/browserShelf';
import { titleOf } from '../../shelf/names';
import { gainsOf, gainWords, meanGainWords } from '../gains';
import { lendOther } from '../ground';
import { QUANTITIES, type Quantity, wordsFor } from '../quantities';
import type { Run, RunKind } from '../runs';
import { choose, comparePair, layBeside, pick, showQuantity, turnTo, useShown } from '../shown';
import { unevenWords } from '../unevenCost';
import { CurvePlot } from './CurvePlot';
import { CurveTable } from './CurveTable';
import type { PanelWish, Under } from './frame';
import { MEASURED_TITLE } from './legend';
import { pairOf } from './pair';
import { RunList } from './RunList';
import { Saves } from './Saves';
import { measuredPoints, seriesOf } from './series';

/** Two panels at first: whoever asks for torque wants to see power too. */
const PANELS: Readonly<Record<Quantity, readonly Quantity[]>> = {
  torque: ['torque', 'power'],
  power: ['power'],
  filling: ['filling'],
  residual: ['residual'],
  pumping: ['pumping'],
  heat: ['heat'],
};

/** Of the engine's cylinders: those that are followed. */
function partOf(engine: Engine | undefined, runs: readonly Run[]): number {
  const all = engine?.cylinders ?? engine?.firingOrder?.length;
  const followed = runs.find(({ subject }) => !subject.kind.startsWith('other/'))?.subject.engine.cylinders.length;
  return all && followed ? followed / all : 1;
}

export function usePanels(runs: readonly Run[], quantity: Quantity): readonly PanelWish[] {
  const theme = useTheme();
  const display = useDisplay();
  const engine = useDocument((s) => s.settled?.engine);
  return useMemo(
    () =>
      PANELS[quantity].map((q) => ({
        quantity: q,
        series: seriesOf(runs, q, display, theme),
        measured: measuredPoints(engine?.baseline, q, display, partOf(engine, runs)),
      })),
    [runs, quantity, display, theme, engine],
  );
}

/** Another design is read from the shelf first. */
async function chooseRead(kind: RunKind, wanted: boolean): Promise<void> {
  if (wanted && kind.startsWith('other/')) {
    const id = kind.slice('other/'.length);
    const design = useShelf.getState().designs.find((d) => d.id === id);
    try {
      lendOther(id, (await shelf.look(id)).design, design ? titleOf(design) : id);
    } catch {
      // Said beside its name: it is not read.
    }
  }
  const { settled } = documents.store.getState();
  if (settled) choose(kind, wanted, settled);
}

export function CurveFace() {
  const shown = useShown();
  const { quantity } = shown;
  const display = useDisplay();
  const runs = useMemo(() => shown.chosen.flatMap((kind) => shown.runs.get(kind) ?? []), [shown.chosen, shown.runs]);
  const panels = usePanels(runs, quantity);
  const speeds = useMemo(() => [...new Set(runs.flatMap((run) => run.speeds))].sort((a, b) => a - b), [runs]);
  const [under, setUnder] = useState<Under | null>(null);
  const [one, over] = pairOf(shown);
  const open = ({ kind, rpm }: Under) => {
    const other = [one, over].find((run) => run && run.subject.kind !== kind)?.subject.kind;
    if (shown.beside === null && other) layBeside(other);
    pick({ kind, rpm });
    turnTo('valves');
  };
  const onChoose = (kind: RunKind, wanted: boolean) => void chooseRead(kind, wanted);
  return (
    <div className="gain-curve">
      <section className="gain-side" aria-label="What is followed">
        <RunList onChoose={onChoose} />
        {panels.some(({ measured }) => measured.length > 0) && (
          <p className="gain-measured">
            <svg width={26} height={12} aria-hidden="true">
              <path d="M13 1.5l4.5 4.5l-4.5 4.5l-4.5 -4.5z" />
            </svg>
            {MEASURED_TITLE}
          </p>
        )}
        {one && over && <Summary runs={runs} one={one} over={over} />}
        <Saves runs={runs} panels={panels} speeds={speeds} />
      </section>
      <section className="gain-picture" aria-label="Curves">
        <div className="gain-quantities">
          <fieldset className="switch">
            <legend className="unseen">Show</legend>
            {QUANTITIES.map((key) => (
              <button
                key={key}
                type="button"
                aria-pressed={key === quantity}
                title={wordsFor(key, display).name}
                onClick={() => showQuantity(key)}
              >
                {key === 'torque' ? 'Torque and power' : wordsFor(key, display).short}
              </button>
            ))}
          </fieldset>
        </div>
        <CurvePlot panels={panels} speeds={speeds} under={under} onUnder={setUnder} onPick={open} />
      </section>
      {one && (
        <section className="gain-numbers" aria-label="Numbers">
          <CurveTable
            run={one}
            over={over}
            marked={under?.rpm ?? null}
            onPick={(rpm) => open({ kind: one.subject.kind, rpm })}
          />
        </section>
      )}
    </div>
  );
}

const hasFailed = ({ speeds, told }: Run, rpm: number): boolean => {
  const answer = told[speeds.indexOf(rpm)];
  return answer != null && 'failed' in answer;
};

function Summary({ runs, one, over }: { readonly runs: readonly Run[]; readonly one: Run; readonly over: Run }) {
  const display = useDisplay();
  const select = (label: string, value: Run, take: (kind: RunKind) => void) => (
    <select
      className="filling"
      aria-label={label}
      value={value.subject.kind}
      onChange={({ target }) => take(target.value as RunKind)}
    >
      {runs.map(({ subject }) => (
        <option key={subject.kind} value={subject.kind}>
          {subject.title}
        </option>
      ))}
    </select>
  );
  const [a, b] = [one.subject.kind, over.subject.kind];
  const common = one.speeds.filter(
    (rpm) => over.speeds.includes(rpm) && !hasFailed(one, rpm) && !hasFailed(over, rpm),
  ).length;
  const [equal, unlike] = (['equal', 'uneven'] as const).map((kind) => runs.find((run) => run.subject.kind === kind));
  const uneven = equal && unlike ? unevenWords(equal, unlike, display) : null;
  const onAverage = meanGainWords(one, over, display, common);
  const others = engineDifferences(one.subject.engine, over.subject.engine);
  return (
    <div className="gain-summary">
      <h2>Beside each other</h2>
      <div className="gain-pair">
        {select('Compared', one, (kind) => comparePair(kind, kind === b ? a : b))}
        <span>over</span>
        {select('Compared with', over, (kind) => comparePair(kind === a ? b : a, kind))}
      </div>
      <p role="status">
        <b>{one.subject.title}</b> {gainWords(gainsOf(one, over), display, common)}.
      </p>
      {onAverage && <p className="gain-average">{onAverage}</p>}
      {uneven && <p>{uneven}</p>}
      {others.length > 0 && (
        <p className="gain-note">
          Their engines differ too, in {others.join(', ')}: what is told is not what the pipes do alone.
        </p>
      )}
    </div>
  );
}
