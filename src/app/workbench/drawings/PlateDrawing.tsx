/** A tube lying on a flat plate, seen from the side along which it is longest. mm; the plate is the line at its foot. */
import type { Vec3 } from '../../../../shared/vec3';

type Props = { readonly points: readonly Vec3[]; readonly diameter: number };

/** Around the drawing, as a share of its width. */
const MARGIN = 0.04;

export function PlateDrawing({ points, diameter }: Props) {
  const seen = fromTheSide(points);
  if (seen.length < 2) return null;
  const radius = diameter / 2;
  const [low, high] = [Math.min(...seen.map(([x]) => x)) - radius, Math.max(...seen.map(([x]) => x)) + radius];
  const top = Math.max(...seen.map(([, z]) => z)) + radius;
  const margin = MARGIN * (high - low);
  const path = seen.map(([x, z], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${(top - z).toFixed(2)}`).join(' ');
  return (
    <svg
      className="drawing"
      viewBox={`${low - margin} ${-margin} ${high - low + 2 * margin} ${top + 3 * margin}`}
      role="img"
      aria-label="The tube lying on a plate, seen from the side"
    >
      <path d={path} className="drawing-tube" strokeWidth={diameter} />
      <path d={path} className="drawing-middle" vectorEffect="non-scaling-stroke" />
      <path
        d={`M${low - margin} ${top} H${high + margin}`}
        className="drawing-line"
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  );
}

/** Along the way, over the plate, that it is spread most along. */
function fromTheSide(points: readonly Vec3[]): readonly (readonly [x: number, z: number])[] {
  const count = points.length || 1;
  const mean = (k: 0 | 1) => points.reduce((sum, p) => sum + p[k], 0) / count;
  const [mx, my] = [mean(0), mean(1)];
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return points.map(([x, y, z]) => [(x - mx) * Math.cos(angle) + (y - my) * Math.sin(angle), z]);
}
