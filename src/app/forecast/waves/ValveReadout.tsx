/** What stands under the cursor for each run; without one, the means over the overlap, which is what a header works on. */
import { meanOver, valueAt } from '../../../pulse/forecast/waveOverlap';
import { Swatch } from '../../parts/Swatch';
import { tickText } from '../../pulse/scale';
import { angleText } from './angles';
import { GRAMS, KPA, PRESSURE_NAMES, PRESSURES, pressuresOf } from './traces';
import type { Drawn } from './ValvePlot';

type Props = {
  readonly drawn: readonly Drawn[];
  readonly overlap: readonly [number, number] | null;
  readonly cursor: number | null;
  readonly aloud: boolean;
};

export function ValveReadout({ drawn, overlap, cursor, aloud }: Props) {
  if (cursor === null && !overlap) return <p className="quiet face-readout">Point at the picture to read it.</p>;
  const read = ({ trace }: Drawn, values: Float32Array): number =>
    cursor === null ? meanOver(trace, values, overlap![0], overlap![1]) : valueAt(trace, values, cursor);
  return (
    <div className="face-readout" aria-live={aloud ? 'polite' : 'off'}>
      <table>
        <thead>
          <tr>
            <th scope="col">{cursor === null ? 'Mean over the overlap' : `At ${angleText(cursor)}`}</th>
            {PRESSURES.map((key) => (
              <th key={key} scope="col">
                {PRESSURE_NAMES[key]} <span className="unit">kPa</span>
              </th>
            ))}
            <th scope="col">
              flow out <span className="unit">g/s</span>
            </th>
            <th scope="col">
              flow in <span className="unit">g/s</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {drawn.map((one) => (
            <tr key={one.key}>
              <th scope="row">
                <Swatch paint={one.paint} /> {one.name}
              </th>
              {PRESSURES.map((key) => (
                <td key={key}>{tickText(read(one, pressuresOf(one.trace, key)) * KPA, 1)}</td>
              ))}
              <Flow grams={read(one, one.trace.exhaustFlow) * GRAMS} />
              <Flow grams={read(one, one.trace.intakeFlow) * GRAMS} />
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const Flow = ({ grams }: { readonly grams: number }) => (
  <td className={grams < -0.05 ? 'fails' : undefined}>{tickText(grams, 1)}</td>
);
