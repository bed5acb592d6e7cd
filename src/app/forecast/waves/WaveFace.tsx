/** Waves in every pipe along one cylinder's way, what comes back to its valve, and when: drawn, and said in words. */
import './faces.css';
import './waveFace.css';
import { useMemo, useState } from 'react';
import { firesAfter, valveTimes } from '../../../pulse/forecast/gasExchange';
import { cellOf } from '../../../pulse/forecast/waveField';
import { overlapMeans } from '../../../pulse/forecast/waveOverlap';
import type { WaveStart } from '../../../pulse/forecast/wavePath';
import { routeOf } from '../../../pulse/forecast/waveRoute';
import type { OverlapSources, SourcePart } from '../../../pulse/forecast/waveSources';
import { foremost } from '../../../pulse/forecast/waveWords';
import { useTheme } from '../../colours';
import { usePlotBox } from '../usePlotBox';
import { VIEW_KEYS, VIEWS, type ViewKey } from './angles';
import { Choice } from './Choice';
import { drawnSource, drawnWave, sourceKey, toldWaves, waveKey } from './pathLines';
import { pipeWords } from './pipeWords';
import { rolled, type Spread, spreadOf } from './roll';
import type { FaceProps, WaveRun } from './runs';
import { SavePlot } from './SavePlot';
import { useSources } from './useSources';
import { WaveLegend } from './WaveLegend';
import { WaveList } from './WaveList';
import { WAVE_LEFT, WAVE_RIGHT, type WaveCursor, WavePlot, waveY } from './WavePlot';
import { WaveReadout } from './WaveReadout';
import { placeAt, planWay } from './wayPlan';

const STARTS = [
  { key: 'peak', name: 'the pulse’s peak' },
  { key: 'opening', name: 'the valve’s opening' },
] as const;
/** Beside the way: nothing. */
const ALONE = '';

export function WaveFace({ runs }: FaceProps) {
  const withWaves = useMemo(() => runs.filter(({ answer }) => answer.waves !== null), [runs]);
  const [asked, setAsked] = useState(0);
  const which = asked < withWaves.length ? asked : 0;
  const run = withWaves[which];
  if (!run)
    return <p className="quiet face-none">Follow a speed with its waves kept, and they stand here in every pipe.</p>;
  return <Face run={run} which={which} runs={withWaves} onRun={setAsked} />;
}

/** One scale for all runs, so that changing from one to another compares them. */
function halfOf(runs: readonly WaveRun[]): number {
  return Math.max(
    ...runs.map(
      ({ answer, path }) =>
        spreadOf(
          answer.waves!,
          path.pipes.map(({ id }) => id),
        )?.half ?? 0,
    ),
  );
}

type Props = {
  readonly run: WaveRun;
  readonly which: number;
  readonly runs: readonly WaveRun[];
  readonly onRun: (which: number) => void;
};

function Face({ run, which, runs, onRun }: Props) {
  const theme = useTheme();
  const { cylinders } = run.engine;
  const [asked, setCylinder] = useState(cylinders[0]!);
  const cylinder = cylinders.includes(asked) ? asked : cylinders[0]!;
  const [view, setView] = useState<ViewKey>('exchange');
  const [begins, setBegins] = useState<WaveStart>('peak');
  const [beside, setBeside] = useState(ALONE);
  const [picked, setPicked] = useState<string | null>(null);
  const [cursor, setCursor] = useState<WaveCursor | null>(null);
  const box = usePlotBox({
    label: 'Pressure along the pipes over crank angle. Arrow keys move the crosshair, with Shift by ten.',
    onPoint: (x, y) => setCursor({ ...placeAt(panels, x), angle: waveY(range, height).toAngle(y) }),
    onLeave: () => setCursor(null),
    onKey(key, far) {
      const next = movedCursor(key, far, cursor, picture.pipes, range);
      if (next) setCursor(next);
      return next !== null;
    },
  });
  const { width, height } = box.size;
  const waves = run.answer.waves!;
  const range = VIEWS[view];
  const way = useMemo(() => routeOf(run.path, cylinder).turns.map(({ pipe }) => pipe), [run, cylinder]);
  const others = waves.pipes.map(({ pipe }) => pipe).filter((id) => !way.includes(id));
  const extra = others.includes(beside) ? beside : ALONE;
  const ids = useMemo(() => (extra === ALONE ? way : [...way, extra]), [way, extra]);
  const picture = useMemo(
    () => rolled(waves, firesAfter(run.engine, cylinder), ids, range),
    [waves, run, cylinder, ids, range],
  );
  const panels = useMemo(
    () => planWay(picture.pipes, WAVE_LEFT, Math.max(60, width - WAVE_LEFT - WAVE_RIGHT), extra === ALONE ? 0 : 1),
    [picture, width, extra],
  );
  const half = useMemo(() => halfOf(runs), [runs]);
  const spread = useMemo((): Spread => ({ mean: spreadOf(waves, way)?.mean ?? 0, half }), [waves, way, half]);
  const followed = useMemo(() => toldWaves(run, cylinder, begins), [run, cylinder, begins]);
  const means = useMemo(() => overlapMeans(run, cylinder), [run, cylinder]);
  const alone = useMemo(() => [run], [run]);
  const [sources = null] = useSources(alone, cylinder);
  const parts = useMemo(() => shownParts(sources), [sources]);
  const drawn = useMemo(
    () => [...followed.map(drawnWave), ...parts.map((part) => drawnSource(part, cylinder, way))],
    [followed, parts, cylinder, way],
  );
  // What explains the overlap before what would be expected to.
  const [part] = parts;
  const first = foremost(run, followed, means);
  const chosen = drawn.some(({ key }) => key === picked) ? picked : part ? sourceKey(part) : first && waveKey(first);
  const names = ids.map((id) => pipeWords(run.path, id));
  const at = cursor && picture.pipes[cursor.panel];
  return (
    <section className="wave-face" aria-label="Waves in the pipes">
      <div className="face-bar">
        {runs.length > 1 && (
          <Choice
            label="Run"
            options={runs.map((one, key) => ({ key, name: one.name }))}
            value={which}
            onChoose={onRun}
          />
        )}
        <Choice
          label="Cylinder"
          shown
          options={cylinders.map((id) => ({ key: id, name: String(id) }))}
          value={cylinder}
          onChoose={setCylinder}
        />
        <Choice
          label="Part of the cycle"
          options={VIEW_KEYS.map((key) => ({ key, name: VIEWS[key].name }))}
          value={view}
          onChoose={setView}
        />
        <label className="face-choice">
          <span>Follow</span>
          <select value={begins} onChange={({ target }) => setBegins(target.value as WaveStart)}>
            {STARTS.map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label className="face-choice">
          <span>Another pipe</span>
          <select value={extra} onChange={({ target }) => setBeside(target.value)}>
            <option value={ALONE}>none</option>
            {others.map((id) => (
              <option key={id} value={id}>
                {pipeWords(run.path, id).name}
              </option>
            ))}
          </select>
        </label>
        <SavePlot
          title={`${run.name}, cylinder ${cylinder}, ${run.answer.rpm} rpm: pressure in the pipes`}
          what={`waves ${run.answer.rpm} rpm`}
        />
      </div>
      <div className="wave-body">
        <div className="wave-main">
          <div className="face-plot" {...box.props}>
            {width > 0 && height > 0 && (
              <WavePlot
                picture={picture}
                panels={panels}
                words={names}
                onWay={way.length}
                spread={spread}
                view={range}
                times={valveTimes(run.engine)}
                waves={drawn.filter(({ key }) => key === chosen || !key.startsWith('source'))}
                chosen={chosen}
                theme={theme}
                width={width}
                height={height}
                cursor={cursor}
              />
            )}
          </div>
          <WaveLegend spread={spread} theme={theme} />
          <WaveReadout
            run={run}
            cylinder={cylinder}
            at={
              at ? { pipe: at.pipe, name: pipeWords(run.path, at.pipe).name, x: cursor.x, angle: cursor.angle } : null
            }
            mean={spread.mean}
            aloud={box.byKeys}
          />
        </div>
        <WaveList
          run={run}
          cylinder={cylinder}
          waves={followed}
          sources={sources}
          parts={parts}
          chosen={chosen}
          onChoose={setPicked}
        />
      </div>
    </section>
  );
}

/** Pa: what comes with less is not listed. */
const LISTED = 1500;
/** Not more than so many. */
const MOST = 5;

/** Those that make the overlap what it is come first, then those against it. */
function shownParts(sources: OverlapSources | null): readonly SourcePart[] {
  if (!sources) return [];
  const rank = ({ pressure }: SourcePart) => (pressure < 0 === sources.toward < 0 ? 0 : 1);
  return sources.parts
    .filter(({ pressure, legs }) => Math.abs(pressure) >= LISTED && legs.length > 0)
    .slice(0, MOST)
    .sort((a, b) => rank(a) - rank(b) || Math.abs(b.pressure) - Math.abs(a.pressure));
}

/** By a cell and a degree, with Shift by ten; from one pipe into the next. */
function movedCursor(
  key: string,
  far: boolean,
  from: WaveCursor | null,
  pipes: Parameters<typeof planWay>[0],
  { from: least, to: most }: { readonly from: number; readonly to: number },
): WaveCursor | null {
  const across = key === 'ArrowLeft' ? -1 : key === 'ArrowRight' ? 1 : 0;
  const up = key === 'ArrowDown' ? -1 : key === 'ArrowUp' ? 1 : 0;
  if (across === 0 && up === 0) return null;
  const was = from && pipes[from.panel] ? from : { panel: 0, x: pipes[0]!.x[0]!, angle: 0 };
  const by = far ? 10 : 1;
  const angle = Math.min(most, Math.max(least, Math.round(was.angle) + up * by));
  const { x: centres } = pipes[was.panel]!;
  const x = was.x + across * by * cellOf(pipes[was.panel]!);
  if (x > centres.at(-1)! && pipes[was.panel + 1])
    return { panel: was.panel + 1, x: pipes[was.panel + 1]!.x[0]!, angle };
  if (x < centres[0]! && was.panel > 0) return { panel: was.panel - 1, x: pipes[was.panel - 1]!.x.at(-1)!, angle };
  return { panel: was.panel, x: Math.min(centres.at(-1)!, Math.max(centres[0]!, x)), angle };
}
