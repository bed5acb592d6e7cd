/** A runner's colour and dash, as a short length of line: how the rack, the tables and the 3D view name it alike. */
import type { Paint } from '../colours';

const WIDTH = 26;
const STROKE = 3;
/** Dashes are drawn at this size so that the longest pattern shows whole. */
const DASH_UNIT = 1.6;

export function Swatch({ paint }: { readonly paint: Paint }) {
  return (
    <svg width={WIDTH} height={10} aria-hidden="true" className="swatch">
      <line
        x1={0}
        x2={WIDTH}
        y1={5}
        y2={5}
        stroke={paint.colour}
        strokeWidth={STROKE}
        strokeDasharray={paint.dash.map((d) => d * DASH_UNIT).join(' ')}
      />
    </svg>
  );
}
