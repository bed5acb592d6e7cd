/** The part of a runner's length that lies in the head: hatched, because no tube is cut for it. */
import type { Paint } from '../colours';
import { type Scale, STRIP_HEIGHT } from './scale';
import type { Strip } from './strip';

type Props = { readonly strip: Strip; readonly scale: Scale; readonly paint: Paint; readonly hatch: string };

const INSET = 3;

export function HeadMark({ strip, scale, paint, hatch }: Props) {
  const head = strip.pieces.find((p) => p.kind === 'head');
  if (!head) return null;
  return (
    <g>
      <pattern id={hatch} width={6} height={6} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1={0} x2={0} y1={0} y2={6} stroke={paint.colour} strokeWidth={1.6} opacity={0.75} />
      </pattern>
      <rect
        x={0.5}
        y={INSET}
        width={Math.max(0, scale.x(head.to) - 1)}
        height={STRIP_HEIGHT - 2 * INSET}
        fill={`url(#${hatch})`}
        stroke={paint.colour}
        strokeOpacity={0.6}
      >
        <title>In the head</title>
      </rect>
    </g>
  );
}
