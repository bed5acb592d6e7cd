/** Which colour is which pressure, about the mean; kPa. */
import type { Theme } from '../../colours';
import { ramp, SHADES } from '../../pulse/ramp';
import { ticksIn, tickText } from '../../pulse/scale';
import type { Spread } from './roll';
import { KPA } from './traces';

const WIDTH = 300;
const EDGE = 10;
const STOPS = 33;

export function WaveLegend({ spread, theme }: { readonly spread: Spread; readonly theme: Theme }) {
  const shades = ramp(theme);
  const half = spread.half * KPA;
  const stops = Array.from({ length: STOPS }, (_, k) => shades[Math.round((k / (STOPS - 1)) * (SHADES - 1))]!);
  const gradient = `linear-gradient(to right, ${stops.map((shade) => `rgb(${shade.join(' ')})`).join(', ')})`;
  const { at, decimals } = ticksIn(-half, half, 6);
  const share = (value: number) => `${((value + half) / (2 * half)) * 100}%`;
  return (
    <div className="wave-legend">
      <span>
        Pressure about its mean <span className="unit">kPa</span>
      </span>
      <div className="wave-scale" style={{ width: WIDTH, margin: `0 ${EDGE}px` }}>
        <div style={{ background: gradient }} />
        {at.map((value) => (
          <span key={value} style={{ left: share(value) }}>
            {value > 0 ? `+${tickText(value, decimals)}` : tickText(value, decimals)}
          </span>
        ))}
      </div>
      <span className="quiet">
        mean {tickText(spread.mean * KPA, 0)} <span className="unit">kPa</span>
      </span>
    </div>
  );
}
