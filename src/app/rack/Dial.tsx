/**
 * Rotation as a small dial: the needle shows which way this bend goes, seen along the direction of travel, against the
 * mark at the top: the bend before it, or for a first bend the start's up (then the mark is a dot).
 */
export const DIAL_RADIUS = 8;

type Props = {
  readonly x: number;
  readonly y: number;
  readonly degrees: number;
  readonly first: boolean;
  readonly colour: string;
};

export function Dial({ x, y, degrees, first, colour }: Props) {
  return (
    <g className="dial" transform={`translate(${x} ${y})`}>
      <circle r={DIAL_RADIUS - 0.5} style={{ stroke: colour }} />
      {first ? (
        <circle className="zero" r={1.4} cy={-DIAL_RADIUS + 3} />
      ) : (
        <path className="zero" d={`M0 ${-DIAL_RADIUS}v3.4`} />
      )}
      <g transform={`rotate(${degrees})`}>
        <path className="needle" d={`M0 0V${-DIAL_RADIUS + 1.5}`} />
      </g>
      <circle className="hub" r={1.6} />
    </g>
  );
}
