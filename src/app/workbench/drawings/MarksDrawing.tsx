/** A straight tube before it is bent, from the end that is measured from: where each bend comes, and how the dial stands. */
import './drawings.css';
import { RADIANS } from '../../../../geometry';
import type { Drawing } from '../../../shop/bench/step';

type Props = Extract<Drawing, { kind: 'marks' }>;

const WIDTH = 320;
const [LEFT, RIGHT] = [14, 306];
const [TOP, HIGH] = [26, 24];
const RADIUS = 40;

export function MarksDrawing({ length, marks, now, dial }: Props) {
  const x = (mm: number) => LEFT + ((RIGHT - LEFT) * mm) / length;
  const height = dial ? 180 : 74;
  const [cx, cy] = [WIDTH / 2, 128];
  const turned = dial ? (dial.clockwise ? dial.at : -dial.at) * RADIANS : 0;
  return (
    <svg
      className="drawing"
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label="The straight tube with its marks, from the end that is measured from"
    >
      <rect x={LEFT} y={TOP} width={RIGHT - LEFT} height={HIGH} className="drawing-bar" />
      {marks.map(({ from, to }, i) => (
        <g key={from} className={i === now ? 'now' : undefined}>
          <rect x={x(from)} y={TOP} width={Math.max(1, x(to) - x(from))} height={HIGH} className="drawing-bend" />
          <path
            d={`M${x(from)} ${TOP - 6} V${TOP + HIGH + 6}`}
            className={i === now ? 'drawing-mark' : 'drawing-line'}
          />
          <text x={x(from)} y={TOP - 10} textAnchor="middle" className={i === now ? 'drawing-accent' : undefined}>
            {i + 1}
          </text>
        </g>
      ))}
      <path
        d={`M${LEFT} ${TOP + HIGH + 14} v8 M${LEFT} ${TOP + HIGH + 18} h20 m-5 -4 l5 4 l-5 4`}
        className="drawing-thin"
      />
      {dial && (
        <>
          <circle cx={cx} cy={cy} r={RADIUS} className="drawing-round" />
          <path d={`M${cx} ${cy - RADIUS - 6} V${cy - RADIUS + 8}`} className="drawing-line" />
          <path
            d={`M${cx} ${cy} L${(cx + (RADIUS - 4) * Math.sin(turned)).toFixed(1)} ${(cy - (RADIUS - 4) * Math.cos(turned)).toFixed(1)}`}
            className="drawing-mark"
          />
          <text x={cx + RADIUS + 10} y={cy + 5}>
            dial
          </text>
        </>
      )}
    </svg>
  );
}
