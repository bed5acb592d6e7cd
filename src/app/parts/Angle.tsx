/** An angle in degrees. */
import { angleNumber } from '../format';

export function Angle({ degrees, decimals = 1 }: { readonly degrees: number; readonly decimals?: number }) {
  return (
    <data value={degrees} className="number">
      {angleNumber(degrees, decimals)}
      <span className="unit">°</span>
    </data>
  );
}
