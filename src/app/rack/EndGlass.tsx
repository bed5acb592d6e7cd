/** The end of a strip through a magnifying glass: the target line in the middle, the tolerance as a band about it. */
import type { Paint } from '../colours';
import { STRIP_HEIGHT } from './scale';
import { BEND_SHARE } from './shades';

const WIDTH = 120;
const MID = WIDTH / 2;
/** The window reaches this far from the line, so that an end at its very edge still has an edge. */
const REACH = MID - 8;
const OVERHANG = 20;

type Props = {
  readonly deviation: number;
  /** Farther off than the group's tolerance allows. */
  readonly outside: boolean;
  readonly tolerance: number;
  /** Half the width of what is seen, mm. */
  readonly window: number;
  readonly paint: Paint;
};

export function EndGlass({ deviation, outside, tolerance, window, paint }: Props) {
  const x = (mm: number) => MID + Math.max(-1, Math.min(1, mm / window)) * REACH;
  const beyond = Math.abs(deviation) > window;
  const tip = x(deviation);
  const colour = outside ? 'var(--fail)' : paint.colour;
  const slack = Math.min(MID, (tolerance / window) * REACH);
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${STRIP_HEIGHT}`}
      width={WIDTH}
      height={STRIP_HEIGHT}
      className="glass"
      aria-hidden="true"
    >
      <title>End, magnified</title>
      <rect className="slack" x={MID - slack} width={2 * slack} y={-OVERHANG} height={STRIP_HEIGHT + 2 * OVERHANG} />
      <path
        d={`M0 0.5H${tip}${beyond ? `l4 ${STRIP_HEIGHT / 4} -4 ${STRIP_HEIGHT / 4} 4 ${STRIP_HEIGHT / 4} -4 ${STRIP_HEIGHT / 4 - 1}` : `v${STRIP_HEIGHT - 1}`}H0`}
        style={{ fill: `color-mix(in srgb, ${colour} ${BEND_SHARE * 100}%, var(--sheet))`, stroke: colour }}
      />
      <line className="target" x1={MID} x2={MID} y1={-OVERHANG} y2={STRIP_HEIGHT + OVERHANG} />
    </svg>
  );
}
