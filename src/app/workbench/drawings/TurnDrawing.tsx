/** The end of a tube, looking along it away from its start: the line before at the top, and where the next one's comes. */
import './drawings.css';
import { RADIANS } from '../../../../geometry';
import type { Drawing } from '../../../shop/bench/step';

type Props = Extract<Drawing, { kind: 'turn' }>;

const [WIDTH, HEIGHT] = [320, 190];
const [X, Y] = [WIDTH / 2, HEIGHT / 2 + 4];
const RADIUS = 54;

/** Clockwise on paper, from the top. */
const at = (degrees: number, radius: number): readonly [number, number] => [
  X + radius * Math.sin(degrees * RADIANS),
  Y - radius * Math.cos(degrees * RADIANS),
];
const said = ([x, y]: readonly [number, number]): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

export function TurnDrawing({ degrees, from, to }: Props) {
  const [lx, ly] = at(degrees, RADIUS + 18);
  const inner = RADIUS - 20;
  const end = at(degrees, inner);
  const large = Math.abs(degrees) > 180 ? 1 : 0;
  const sweep = degrees < 0 ? 0 : 1;
  // An arrow's barbs, behind its tip along the arc.
  const back = degrees - Math.sign(degrees) * Math.min(Math.abs(degrees), 14);
  const near = Math.abs(degrees) < 24;
  return (
    <svg
      className="drawing"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`The tube’s end, looking along it away from its start: from ${from} at the top to ${to}`}
    >
      <circle cx={X} cy={Y} r={RADIUS} className="drawing-round" />
      <path d={`M${said(at(0, RADIUS - 8))} L${said(at(0, RADIUS + 8))}`} className="drawing-line" />
      <path d={`M${said(at(degrees, RADIUS - 8))} L${said(at(degrees, RADIUS + 10))}`} className="drawing-mark" />
      {Math.abs(degrees) > 0.25 && (
        <>
          <path
            d={`M${said(at(0, inner))} A${inner} ${inner} 0 ${large} ${sweep} ${said(end)}`}
            className="drawing-mark"
          />
          <path
            d={`M${said(at(back, inner + 6))} L${said(end)} L${said(at(back, inner - 6))}`}
            className="drawing-mark"
          />
        </>
      )}
      <text
        x={near ? X - Math.sign(degrees || 1) * 12 : X}
        y={Y - RADIUS - 14}
        textAnchor={near ? (degrees < 0 ? 'start' : 'end') : 'middle'}
      >
        {from}
      </text>
      <text
        x={near ? X + Math.sign(degrees || 1) * 18 : lx}
        y={near ? Y - RADIUS - 14 : ly + 5}
        className="drawing-accent"
        textAnchor={near ? (degrees < 0 ? 'end' : 'start') : lx < X - 10 ? 'end' : lx > X + 10 ? 'start' : 'middle'}
      >
        {to}
      </text>
    </svg>
  );
}
