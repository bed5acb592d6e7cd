/** One port: its opening where it faces the view, else its flange face edge on; and a stub of tube the way it looks. */
import type { Opening } from '../../../../shared/design/types';
import type { Px } from './projection';

type Props = {
  /** Null: not told apart in this view. */
  readonly number: number | null;
  readonly facing: boolean;
  readonly opening: Opening;
  readonly at: Px;
  /** End of the stub. */
  readonly tip: Px;
  readonly scale: number;
};

export function PortView({ number, facing, opening, at: [x, y], tip, scale }: Props) {
  const [w, h] = opening.shape === 'round' ? [opening.diameter, opening.diameter] : [opening.width, opening.height];
  const [dx, dy] = [tip[0] - x, tip[1] - y];
  const long = Math.hypot(dx, dy);
  // Across the stub, half an opening each way.
  const [nx, ny] = long > 1 ? [(-dy / long) * (h / 2) * scale, (dx / long) * (h / 2) * scale] : [0, 0];
  const corner = opening.shape === 'rounded-rectangle' ? opening.corner : Math.min(w, h) / 2;
  return (
    <g className="sketch-port">
      {facing ? (
        <rect
          x={x - (w * scale) / 2}
          y={y - (h * scale) / 2}
          width={w * scale}
          height={h * scale}
          rx={corner * scale}
        />
      ) : (
        <>
          <path
            d={`M${x + nx} ${y + ny}L${tip[0] + nx} ${tip[1] + ny}L${tip[0] - nx} ${tip[1] - ny}L${x - nx} ${y - ny}Z`}
          />
          <line className="sketch-face" x1={x + 1.5 * nx} y1={y + 1.5 * ny} x2={x - 1.5 * nx} y2={y - 1.5 * ny} />
        </>
      )}
      {number !== null && (
        <text x={facing ? x : x - dx * 0.25} y={(facing ? y : y - dy * 0.25) + (facing ? 4 : -4)} textAnchor="middle">
          {number}
        </text>
      )}
    </g>
  );
}
