/** An angle in degrees. */
import { formatAngle } from '../format';

export function Angle({ degrees, decimals = 1 }: { readonly degrees: number; readonly decimals?: number }) {
  return (
    <data value={degrees} className="number">
      {formatAngle(degrees, decimals)}
      <span className="unit">°</span>
    </data>
  );
}
