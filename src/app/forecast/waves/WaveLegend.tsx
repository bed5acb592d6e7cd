/** Which colour is which value, about the mean (of velocities: about rest). Screen units. */
import './legend.css';
import type { Theme } from '../../colours';
import { QUANTITIES, type Quantity } from '../../pulse/quantities';
import { type RampOn, ramp, SHADES } from '../../pulse/ramp';
import { ticksIn, tickText } from '../../pulse/scale';
import type { Spread } from './roll';

const WIDTH = 300;
const STOPS = 33;

type Props = {
  readonly spread: Spread;
  readonly theme: Theme;
  readonly quantity?: Quantity;
  readonly on?: RampOn;
};

export function WaveLegend({ spread, theme, quantity = 'pressure', on = 'frame' }: Props) {
  const { name, unit, factor } = QUANTITIES[quantity];
  const shades = ramp(theme, on);
  const half = spread.half * factor;
  const stops = Array.from({ length: STOPS }, (_, k) => shades[Math.round((k / (STOPS - 1)) * (SHADES - 1))]!);
  const gradient = `linear-gradient(to right, ${stops.map((shade) => `rgb(${shade.join(' ')})`).join(', ')})`;
  const { at, decimals } = ticksIn(-half, half, 6);
  const share = (value: number) => `${((value + half) / (2 * half)) * 100}%`;
  const moves = quantity === 'velocity';
  return (
    <div className="wave-legend">
      <span>
        {moves ? 'Gas speed' : `${name} about its mean`} <span className="unit">{unit}</span>
      </span>
      <div className="wave-scale" style={{ width: WIDTH }}>
        <div style={{ background: gradient }} />
        {at.map((value) => (
          <span key={value} style={{ left: share(value) }}>
            {value > 0 ? `+${tickText(value, decimals)}` : tickText(value, decimals)}
          </span>
        ))}
      </div>
      <span className="quiet">
        {moves ? (
          'plus: away from the valves'
        ) : (
          <>
            mean {tickText(spread.mean * factor, 0)} <span className="unit">{unit}</span>
          </>
        )}
      </span>
    </div>
  );
}
