/** A piece from the side: straight, arc, straight, with its cuts and where the arc begins and ends. Drawn to its own scale. */
import './drawings.css';
import { RADIANS } from '../../../../geometry';
import type { Drawing } from '../../../shop/bench/step';

type Props = Extract<Drawing, { kind: 'piece' }>;
type Point = readonly [x: number, y: number];

const WIDTH = 320;
const HEIGHT = 190;
/** Around the metal: words stand there. */
const MARGIN = 34;
const ARC_STEPS = 32;
/** A straight that is shorter is none: its word would stand at the arc. mm */
const NO_WORD = 0.5;

/** Where its middle line runs, y up, and the three stretches of it. */
function middle({ in: before, angle, radius, out }: Props) {
  const points: { at: Point; heading: number }[] = [
    { at: [0, 0], heading: 0 },
    { at: [before, 0], heading: 0 },
  ];
  const turn = angle * RADIANS;
  for (let i = 1; i <= (angle > 0 ? ARC_STEPS : 0); i++) {
    const a = (turn * i) / ARC_STEPS;
    points.push({ at: [before + radius * Math.sin(a), radius * (1 - Math.cos(a))], heading: a });
  }
  const last = points.at(-1)!;
  if (angle > 0)
    points.push({
      at: [last.at[0] + out * Math.cos(turn), last.at[1] + out * Math.sin(turn)],
      heading: turn,
    });
  return points;
}

export function PieceDrawing(props: Props) {
  const { diameter, angle } = props;
  const points = middle(props);
  const radius = diameter / 2;
  const xs = points.flatMap(({ at: [x] }) => [x - radius, x + radius]);
  const ys = points.flatMap(({ at: [, y] }) => [y - radius, y + radius]);
  const [low, high, down, up] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min((WIDTH - 2 * MARGIN) / (high - low), (HEIGHT - 2 * MARGIN) / (up - down));
  const put = ([x, y]: Point): Point => [
    WIDTH / 2 + (x - (low + high) / 2) * scale,
    HEIGHT / 2 - (y - (down + up) / 2) * scale,
  ];
  const path = points
    .map(
      ({ at }, i) =>
        `${i === 0 ? 'M' : 'L'}${put(at)
          .map((v) => v.toFixed(1))
          .join(' ')}`,
    )
    .join(' ');
  const across = ({ at, heading }: (typeof points)[number], reach: number): string => {
    const [x, y] = put(at);
    const [dx, dy] = [Math.sin(heading) * reach * scale, Math.cos(heading) * reach * scale];
    return `M${(x - dx).toFixed(1)} ${(y - dy).toFixed(1)} L${(x + dx).toFixed(1)} ${(y + dy).toFixed(1)}`;
  };
  const [first, begins] = [points[0]!, points[1]!];
  const last = points.at(-1)!;
  const ends = points.at(-2)!;
  // Words stand on the outside of the bend.
  const word = (from: Point, to: Point, heading: number, text: string) => {
    const [x, y] = put([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
    const away = radius * scale + 14;
    return (
      <text x={x + Math.sin(heading) * away} y={y + Math.cos(heading) * away + 4} textAnchor="middle">
        {text}
      </text>
    );
  };
  const half = points[1 + ARC_STEPS / 2];
  return (
    <svg className="drawing" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label="The piece, seen from the side">
      <path d={path} className="drawing-tube" strokeWidth={diameter * scale} />
      <path d={path} className="drawing-middle" />
      <path d={`${across(first, radius * 1.25)} ${across(last, radius * 1.25)}`} className="drawing-cut" />
      {angle > 0 && <path d={`${across(begins, radius)} ${across(ends, radius)}`} className="drawing-thin" />}
      {angle > 0 ? (
        <>
          {props.in > NO_WORD && word(first.at, begins.at, 0, 'before')}
          {half && word(half.at, half.at, half.heading, 'arc')}
          {props.out > NO_WORD && word(ends.at, last.at, last.heading, 'behind')}
        </>
      ) : (
        word(first.at, last.at, 0, 'length')
      )}
    </svg>
  );
}
