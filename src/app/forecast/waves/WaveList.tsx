/** The waves that come to the valve, in words; the one that is chosen is drawn strong in the picture. */

import { useMemo } from 'react';
import { originWords, sourcesWords } from '../../../pulse/forecast/sourceWords';
import { overlapMeans, overlapWords } from '../../../pulse/forecast/waveOverlap';
import type { WavePath } from '../../../pulse/forecast/wavePath';
import type { OverlapSources, SourcePart } from '../../../pulse/forecast/waveSources';
import { waitOf } from '../../../pulse/forecast/waveWait';
import { kindWords, placeWords, waveWords } from '../../../pulse/forecast/waveWords';
import { angleText } from './angles';
import { sourceKey, waveKey } from './pathLines';
import { pipeWords } from './pipeWords';
import type { WaveRun } from './runs';

type Props = {
  readonly run: WaveRun;
  readonly cylinder: number;
  readonly waves: readonly WavePath[];
  /** What the overlap's pressure comes from, and the parts of it that are listed. */
  readonly sources: OverlapSources | null;
  readonly parts: readonly SourcePart[];
  /** The one that is drawn strong. */
  readonly chosen: string | null;
  readonly onChoose: (key: string) => void;
};

export function WaveList({ run, cylinder, waves, sources, parts, chosen, onChoose }: Props) {
  const means = useMemo(() => overlapMeans(run, cylinder), [run, cylinder]);
  const measured = useMemo(() => overlapWords([run], cylinder), [run, cylinder]);
  const told = waves.find((wave) => waveKey(wave) === chosen) ?? null;
  const wait = told && waitOf(told, run.answer.rpm);
  return (
    <div className="wave-list">
      {measured && <p className="wave-measured">{measured}</p>}
      {sources && (
        <>
          <p className="wave-measured">{sourcesWords(run, cylinder, sources, means)}</p>
          {parts.length > 0 && <h4>Makes the pressure in the overlap</h4>}
          <ul>
            {parts.map((part) => (
              <li key={sourceKey(part)}>
                <button
                  type="button"
                  aria-pressed={sourceKey(part) === chosen}
                  onClick={() => onChoose(sourceKey(part))}
                >
                  <Line suction={part.pressure < 0} />
                  <span>{capital(originWords(run, cylinder, part))}</span>
                  <span className="wave-when">
                    {part.pressure < 0 ? '−' : '+'}
                    {Math.abs(part.pressure / 1000).toFixed(0)} <span className="unit">kPa</span>
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      {told && (
        <div className="wave-told">
          <p>{waveWords(run, told, means)}</p>
          {wait && (
            <p className="quiet">
              For {angleText(wait.degrees)} it stands in {pipeWords(run.path, wait.pipe).name}: gas streams against it
              nearly as fast as sound.
            </p>
          )}
          <dl>
            {told.carried !== null && (
              <Fact
                name="All that comes to the valve then"
                value={`${told.carried > 0 ? '+' : ''}${(told.carried / 1000).toFixed(1).replace('-', '−')}`}
                unit="kPa from its mean"
              />
            )}
            <Fact name="Way there and back" value={told.length.toFixed(2)} unit="m" />
            <Fact name="Mean speed of sound" value={told.sound.toFixed(0)} unit="m/s" />
            {told.tuning !== null && (
              <Fact name="Tuning number Q" value={told.tuning.toFixed(2)} unit="of one pipe, most power near 1" />
            )}
          </dl>
        </div>
      )}
      <h4>Followed from the valves</h4>
      <ul>
        {waves.length === 0 && <li className="quiet">None of those followed, while it is open.</li>}
        {waves.map((wave) => (
          <li key={waveKey(wave)}>
            <button type="button" aria-pressed={waveKey(wave) === chosen} onClick={() => onChoose(waveKey(wave))}>
              <Line suction={wave.strength < 0} />
              <span>
                {capital(kindWords(wave))} {wave.from === wave.to ? 'from' : `of cylinder ${wave.from} by`}{' '}
                {placeWords(run.path, wave)}
              </span>
              <span className="wave-when">
                {wave.inOverlap && <b>in overlap </b>}
                {wave.arrival === null ? 'never' : angleText(wave.arrival)}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <p className="quiet">
        What makes the overlap’s pressure is read off the gas of this run, followed back to the valves it left. The
        others are followed from their valves with sound and stream. Kind and strength are by pipe areas alone, as for
        weak waves, a silencer’s by its mean stream. What the open valve sends out again is not followed: the pressures
        show it.
      </p>
    </div>
  );
}

const Line = ({ suction }: { readonly suction: boolean }) => (
  <svg width={22} height={10} aria-hidden="true">
    <line x1={1} x2={21} y1={5} y2={5} strokeDasharray={suction ? '5 3' : undefined} />
  </svg>
);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const Fact = ({ name, value, unit }: { readonly name: string; readonly value: string; readonly unit: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>
      {value} <span className="unit">{unit}</span>
    </dd>
  </div>
);
