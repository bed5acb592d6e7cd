/** Pressures on both sides of one cylinder's valves over crank angle, with flows and lifts beneath; runs laid over each other. */
import './faces.css';
import { useMemo, useState } from 'react';
import { overlapTold, type Told } from '../../../pulse/forecast/sourceWords';
import { type OverlapMeans, overlapMeans } from '../../../pulse/forecast/waveOverlap';
import type { WavePath } from '../../../pulse/forecast/wavePath';
import type { OverlapSources } from '../../../pulse/forecast/waveSources';
import { waveSteps } from '../../../pulse/forecast/waveSteps';
import { stepWords, waveWords } from '../../../pulse/forecast/waveWords';
import { paintOf, useTheme } from '../../colours';
import { Swatch } from '../../parts/Swatch';
import { usePlotBox } from '../usePlotBox';
import { VIEW_KEYS, VIEWS, type ViewKey } from './angles';
import { Choice } from './Choice';
import { toldWaves, waveKey } from './pathLines';
import type { FaceProps, WaveRun } from './runs';
import { SavePlot } from './SavePlot';
import { cylindersOf, overlapOf, PRESSURE_NAMES, PRESSURES, type PressureKey, traceOf } from './traces';
import { useSources } from './useSources';
import { type ArrivalMark, type Drawn, LINES, type StepMark, ValvePlot, valveX } from './ValvePlot';
import { ValveReadout } from './ValveReadout';

export function ValveFace({ runs }: FaceProps) {
  const theme = useTheme();
  const cylinders = cylindersOf(runs);
  const [asked, setCylinder] = useState<number | null>(null);
  const cylinder = asked !== null && cylinders.includes(asked) ? asked : (cylinders[0] ?? 1);
  const [view, setView] = useState<ViewKey>('exchange');
  const [shown, setShown] = useState<ReadonlySet<PressureKey>>(new Set(PRESSURES));
  const [cursor, setCursor] = useState<number | null>(null);
  const range = VIEWS[view];
  const box = usePlotBox({
    label: 'Pressures over crank angle. Arrow keys move the line that reads it, with Shift by ten degrees.',
    onPoint: (x) => setCursor(valveX(range, width).toAngle(x)),
    onLeave: () => setCursor(null),
    onKey(key, far) {
      const by = key === 'ArrowLeft' ? -1 : key === 'ArrowRight' ? 1 : 0;
      const next = Math.round(cursor ?? 0) + by * (far ? 10 : 1);
      if (by !== 0) setCursor(Math.min(range.to, Math.max(range.from, next)));
      return by !== 0;
    },
  });
  const { width, height } = box.size;
  const drawn = useMemo(
    () =>
      runs.flatMap((run, k): Drawn[] => {
        const trace = traceOf(run, cylinder);
        return trace ? [{ key: String(k), name: run.name, trace, paint: run.paint ?? paintOf(k, theme) }] : [];
      }),
    [runs, cylinder, theme],
  );
  const [first] = runs;
  const { arrivals, steps } = useMemo(() => {
    if (!first) return { arrivals: [], steps: [] };
    const arrivals = marksOf(first, toldWaves(first, cylinder), overlapMeans(first, cylinder));
    return { arrivals, steps: stepsOf(first, cylinder, arrivals) };
  }, [first, cylinder]);
  const sources = useSources(runs, cylinder);
  const told = useMemo(() => toldOf(runs, sources, cylinder), [runs, sources, cylinder]);
  const overlap = overlapOf(first);
  if (drawn.length === 0)
    return (
      <p className="quiet face-none">
        Follow a speed with its traces kept, and the pressures at its valves stand here.
      </p>
    );
  return (
    <section className="wave-face" aria-label="Pressures at the valves">
      <div className="face-bar">
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
        <ul className="face-kinds" aria-label="Pressures shown">
          {PRESSURES.map((key) => (
            <li key={key}>
              <button
                type="button"
                aria-pressed={shown.has(key)}
                onClick={() =>
                  setShown(new Set(shown.has(key) ? [...shown].filter((k) => k !== key) : [...shown, key]))
                }
              >
                <svg width={26} height={10} aria-hidden="true">
                  <line
                    x1={1}
                    x2={25}
                    y1={5}
                    y2={5}
                    strokeWidth={LINES[key].width}
                    strokeDasharray={LINES[key].dash ?? undefined}
                    strokeLinecap="round"
                  />
                </svg>
                {PRESSURE_NAMES[key]}
              </button>
            </li>
          ))}
        </ul>
        {arrivals.length + steps.length > 0 && (
          <span className="face-marks">
            <svg width={44} height={10} aria-hidden="true">
              <path d="M6 9.5l-5 -9h10z" />
              <path d="M21 9.5l-5 -9h10z" />
              <path className="face-step" d="M31 8.5l5 -7l5 7" />
            </svg>
            suction, pressure, a step comes to the valve
          </span>
        )}
        <ul className="face-runs" aria-label="Runs">
          {drawn.map(({ key, name, paint }) => (
            <li key={key}>
              <Swatch paint={paint} /> {name}
            </li>
          ))}
        </ul>
        <SavePlot
          title={`${drawn.map(({ name }) => name).join(' and ')}, cylinder ${cylinder}, ${runs[0]!.answer.rpm} rpm: pressures at the valves`}
          what={`valves ${runs[0]!.answer.rpm} rpm`}
        />
      </div>
      <div className="face-plot valve-plot" {...box.props}>
        {width > 0 && height > 0 && (
          <ValvePlot
            drawn={drawn}
            shown={shown}
            view={range}
            overlap={overlap}
            arrivals={arrivals}
            steps={steps}
            width={width}
            height={height}
            cursor={cursor}
          />
        )}
      </div>
      <Words told={told} wave={cursor === null ? null : (nearest([...arrivals, ...steps], cursor)?.words ?? null)} />
      <ValveReadout drawn={drawn} overlap={overlap} cursor={cursor} aloud={box.byKeys} />
    </section>
  );
}

/** What was measured comes first, then what makes it; under the cursor, the wave that comes nearest to it. */
function Words({ told, wave }: { readonly told: readonly Told[]; readonly wave: string | null }) {
  const isBehind = wave !== null && told.length > 0;
  return (
    <div className="face-words">
      <div className="face-told" data-behind={isBehind}>
        {told.map(({ name, words }) => (
          <p key={name ?? ''}>
            {name && <b>{name}: </b>}
            {words}
          </p>
        ))}
      </div>
      {wave !== null && <p>{wave}</p>}
    </div>
  );
}

function toldOf(runs: readonly WaveRun[], sources: readonly (OverlapSources | null)[], cylinder: number): Told[] {
  const all = runs.map((run, k) => ({ ...run, sources: sources[k] ?? null }));
  const { measured, difference, each } = overlapTold(all, cylinder);
  return [...(measured ? [{ name: null, words: `${measured} ${difference}`.trim() }] : []), ...each];
}

/** What comes nearest to the cursor. */
const nearest = (marks: readonly StepMark[], at: number): StepMark | null =>
  marks.reduce<StepMark | null>(
    (best, mark) => (best && Math.abs(best.angle - at) <= Math.abs(mark.angle - at) ? best : mark),
    null,
  );

/** Nearer to a pulse whose way is known, a step is that pulse's own front. Degrees. */
const SAME = 8;

function stepsOf(run: WaveRun, cylinder: number, arrivals: readonly ArrivalMark[]): StepMark[] {
  const isTold = (at: number) => arrivals.some(({ angle, suction }) => !suction && Math.abs(angle - at) <= SAME);
  return waveSteps(run, cylinder)
    .filter(({ angle }) => !isTold(angle))
    .map((step) => ({ key: `step ${step.angle}`, angle: step.angle, words: stepWords(run.path, step) }));
}

function marksOf(run: WaveRun, waves: readonly WavePath[], means: OverlapMeans | null): ArrivalMark[] {
  return waves.flatMap((wave) =>
    wave.arrival === null
      ? []
      : [
          {
            key: waveKey(wave),
            angle: wave.arrival,
            suction: wave.strength < 0,
            words: waveWords(run, wave, means),
          },
        ],
  );
}
