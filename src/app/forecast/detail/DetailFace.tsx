/** One speed looked at closely: which run and speed, what is laid beside it, and the faces of the waves once they are followed. */
import { type ReactNode, useEffect, useMemo, useRef } from 'react';
import { type Theme, useTheme } from '../../colours';
import { useDocument } from '../../document';
import { pickInPair } from '../curve/pair';
import { paintFor } from '../curve/series';
import { playOnHeader } from '../motion/state';
import { hasTubes } from '../motion/tubes';
import { Refusals } from '../Refusals';
import { answerAt, type Run, type RunKind } from '../runs';
import {
  detailOf,
  followPicked,
  kindsSeen,
  layBeside,
  type Picked,
  pick,
  type Shown,
  staysAs,
  turnTo,
  useShown,
} from '../shown';
import { closeForecast } from '../state';
import type { FaceProps, WaveRun } from '../waves/runs';

type Props = {
  readonly label: string;
  /** What is shown once it is there. */
  readonly children: (props: FaceProps) => ReactNode;
};

/** What is there of a run at a speed, under its name. */
function runAt(shown: Pick<Shown, 'runs' | 'details'>, kind: RunKind, rpm: number, theme: Theme): WaveRun | null {
  const run = shown.runs.get(kind);
  const detail = detailOf(shown, { kind, rpm });
  if (!run || detail?.is !== 'there') return null;
  const { title, engine, path } = run.subject;
  return { name: title, answer: detail.answer, engine, path, paint: paintFor(kind, theme) };
}

const sameRuns = (a: readonly WaveRun[], b: readonly WaveRun[]): boolean =>
  a.length === b.length &&
  a.every(
    (run, k) => run.answer === b[k]!.answer && run.name === b[k]!.name && run.paint?.colour === b[k]!.paint?.colour,
  );

export function DetailFace({ label, children }: Props) {
  const shown = useShown();
  const { picked, beside } = shown;
  const runs = shown.chosen.flatMap((kind) => shown.runs.get(kind) ?? []);
  const theme = useTheme();
  const { runs: all, details } = shown;
  // The same while other speeds come in: what is drawn of waves takes a while.
  const faces = useMemo(() => {
    if (!picked) return [];
    const [first, other] = kindsSeen(picked, beside).map((kind) =>
      runAt({ runs: all, details }, kind, picked.rpm, theme),
    );
    return first ? [first, ...(other ? [other] : [])] : [];
  }, [all, details, picked, beside, theme]);
  // Another header since, or left before it was there: followed again where it is looked at, rather than a blank face.
  const settled = useDocument((s) => s.settled);
  // biome-ignore lint/correctness/useExhaustiveDependencies: they are what it reads from the store
  useEffect(() => {
    if (shown.of === settled) followPicked();
  }, [all, details, picked, beside, shown.of, settled]);
  const face = useRef(faces);
  if (!sameRuns(face.current, faces)) face.current = faces;
  if (!picked) return <Nothing label={label} runs={runs} />;
  const [first] = faces;
  const isPlayable = picked.kind === 'header' && first?.answer.waves;
  const canPlay = isPlayable && hasTubes(first);
  return (
    <section className="gain-detail" aria-label={label}>
      <div className="gain-detail-bar">
        <Choice runs={runs} picked={picked} />
        <label>
          beside{' '}
          <select
            className="gain-select"
            value={beside ?? 'alone'}
            onChange={({ target }) => layBeside(target.value as RunKind | 'alone')}
          >
            <option value="alone">nothing</option>
            {runs
              .filter(({ subject }) => subject.kind !== picked.kind)
              .map(({ subject }) => (
                <option key={subject.kind} value={subject.kind}>
                  {subject.title}
                </option>
              ))}
          </select>
        </label>
        {canPlay && (
          <button
            type="button"
            className="button"
            onClick={() => {
              playOnHeader(first, staysAs(picked.kind, first));
              closeForecast();
            }}
          >
            Play it on the header
          </button>
        )}
        {isPlayable && !canPlay && <span className="quiet">Lay the runners out to play it on the header.</span>}
      </div>
      <Standing shown={shown} picked={picked} beside={beside} />
      {first && <div className="gain-detail-face">{children({ runs: face.current })}</div>}
    </section>
  );
}

function Choice({ runs, picked }: { readonly runs: readonly Run[]; readonly picked: Picked }) {
  const run = runs.find(({ subject }) => subject.kind === picked.kind);
  const speeds = run?.speeds ?? [];
  const at = speeds.indexOf(picked.rpm);
  const step = (by: number) => {
    const rpm = speeds[at + by];
    if (rpm !== undefined) pick({ ...picked, rpm });
  };
  return (
    <>
      <select
        className="gain-select"
        aria-label="Run"
        value={picked.kind}
        onChange={({ target }) => pick({ ...picked, kind: target.value as RunKind })}
      >
        {runs.map(({ subject }) => (
          <option key={subject.kind} value={subject.kind}>
            {subject.title}
          </option>
        ))}
      </select>
      <span className="gain-speeds">
        <button type="button" className="button icon" aria-label="Slower" disabled={at <= 0} onClick={() => step(-1)}>
          −
        </button>
        <select
          className="gain-select"
          aria-label="Speed"
          value={picked.rpm}
          onChange={({ target }) => pick({ ...picked, rpm: Number(target.value) })}
        >
          {speeds.map((rpm) => (
            <option key={rpm} value={rpm}>
              {rpm} rpm
            </option>
          ))}
        </select>
        <button
          type="button"
          className="button icon"
          aria-label="Faster"
          disabled={at < 0 || at >= speeds.length - 1}
          onClick={() => step(1)}
        >
          +
        </button>
      </span>
    </>
  );
}

/** How far both are, or why one is not there. */
function Standing({
  shown,
  picked,
  beside,
}: { readonly shown: Shown } & { readonly picked: Picked; readonly beside: Shown['beside'] }) {
  return (
    <div className="gain-detail-standing" role="status">
      {kindsSeen(picked, beside).map((kind) => {
        const detail = detailOf(shown, { kind, rpm: picked.rpm });
        const title = shown.runs.get(kind)?.subject.title;
        if (!detail || detail.is === 'there') return null;
        if (detail.is === 'failed')
          return (
            <p key={kind} className="fails">
              {title}: {detail.why}
            </p>
          );
        return (
          <p key={kind}>
            {title} is followed at {picked.rpm} rpm…{' '}
            <progress aria-label={`${title}: followed so far`} max={1} value={detail.done} />
          </p>
        );
      })}
    </div>
  );
}

function Nothing({ label, runs }: { readonly label: string; readonly runs: readonly Run[] }) {
  const [run] = runs;
  const middle = run?.speeds.filter((rpm) => answerAt(run, rpm));
  const rpm = middle?.[middle.length >> 1];
  const { chosen, barred } = useShown();
  const why = chosen.flatMap((kind) => barred.get(kind) ?? []);
  // There is no point to press where none can be followed.
  if (!run && why.length > 0)
    return (
      <section className="gain-none" aria-label={label}>
        <p>No speed can be followed yet:</p>
        <Refusals refusals={why.slice(0, 1)} />
      </section>
    );
  return (
    <section className="gain-none" aria-label={label}>
      <p>Choose a speed: press a point of the curves, or a speed in the table below them.</p>
      <p>
        {run && rpm !== undefined && (
          <button type="button" className="button strong" onClick={() => pickInPair({ kind: run.subject.kind, rpm })}>
            {run.subject.title} at {rpm} rpm
          </button>
        )}{' '}
        <button type="button" className="button" onClick={() => turnTo('curve')}>
          To the curves
        </button>
      </p>
    </section>
  );
}
