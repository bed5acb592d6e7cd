/** What stands under the crosshair in the pipes. */
import { firesAfter } from '../../../pulse/forecast/gasExchange';
import { burntSound, fieldOf, readField } from '../../../pulse/forecast/waveField';
import { tickText } from '../../pulse/scale';
import { angleText } from './angles';
import type { WaveRun } from './runs';
import { KPA } from './traces';

type Props = {
  readonly run: WaveRun;
  readonly cylinder: number;
  readonly at: { readonly pipe: string; readonly name: string; readonly x: number; readonly angle: number } | null;
  readonly mean: number;
  readonly aloud: boolean;
};

export function WaveReadout({ run, cylinder, at, mean, aloud }: Props) {
  const waves = run.answer.waves;
  const pipe = at && waves?.pipes.find((one) => one.pipe === at.pipe);
  if (!at || !waves || !pipe)
    return <p className="quiet wave-readout">Point at the picture, or use the arrow keys on it, to read it.</p>;
  const read = readField(fieldOf(waves), pipe, at.angle + firesAfter(run.engine, cylinder), at.x);
  const off = (read.pressure - mean) * KPA;
  return (
    <p className="wave-readout" aria-live={aloud ? 'polite' : 'off'}>
      <b>{at.name}</b>
      <Value name="from its start" value={tickText(at.x * 1000, 0)} unit="mm" />
      <Value name="at" value={angleText(at.angle)} unit="" />
      <Value
        name="pressure"
        value={`${tickText(read.pressure * KPA, 1)} (${off > 0 ? '+' : ''}${tickText(off, 1)})`}
        unit="kPa"
      />
      <Value name="stream" value={tickText(read.velocity, 0)} unit="m/s" />
      <Value name="gas" value={tickText(read.temperature, 0)} unit="K" />
      <Value name="sound" value={tickText(burntSound(read.temperature), 0)} unit="m/s" />
    </p>
  );
}

const Value = ({ name, value, unit }: { readonly name: string; readonly value: string; readonly unit: string }) => (
  <span>
    <span className="quiet">{name} </span>
    {value} <span className="unit">{unit}</span>
  </span>
);
