/** A dimension as on a drawing: between two points, set off to one side, with its number. Pixels. */
import type { Px } from './projection';

type Props = {
  readonly from: Px;
  readonly to: Px;
  /** How far to the side, px: down or right where above 0. */
  readonly off: number;
  readonly text: string;
  /** Measured up and down; else from left to right. */
  readonly upright?: boolean;
};

/** Shorter than this there is no room for a number. */
const LEAST = 12;

export function Dimension({ from, to, off, text, upright = false }: Props) {
  const [a, b] = upright
    ? [[from[0] + off, from[1]] as const, [from[0] + off, to[1]] as const]
    : [[from[0], from[1] + off] as const, [to[0], from[1] + off] as const];
  if (Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) < LEAST) return null;
  const tick = upright ? 'M-4 0h8' : 'M0 -4v8';
  return (
    <g className="sketch-dimension">
      <line x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} />
      <path d={tick} transform={`translate(${a[0]} ${a[1]})`} />
      <path d={tick} transform={`translate(${b[0]} ${b[1]})`} />
      <text
        x={upright ? a[0] - 4 : (a[0] + b[0]) / 2}
        y={upright ? (a[1] + b[1]) / 2 + 4 : a[1] - 4}
        textAnchor={upright ? 'end' : 'middle'}
      >
        {text}
      </text>
    </g>
  );
}
