/** A tube lying on a flat plate, seen from the side along which it is longest, with its two ends named. */
import './drawings.css';
import type { Vec3 } from '../../../../shared/vec3';

/** `points` and `diameter` in mm, the plate z = 0. */
type Props = { readonly points: readonly Vec3[]; readonly diameter: number };

const WIDTH = 320;
/** Beside the metal, where the words stand; at most so high. */
const [MARGIN, FOOT, MOST] = [16, 24, 170];

export function PlateDrawing({ points, diameter }: Props) {
  const seen = fromTheSide(points);
  const [first, last] = [seen[0], seen.at(-1)];
  if (!first || !last || seen.length < 2) return null;
  const radius = diameter / 2;
  const [low, high] = [Math.min(...seen.map(([x]) => x)) - radius, Math.max(...seen.map(([x]) => x)) + radius];
  const top = Math.max(...seen.map(([, z]) => z)) + radius;
  const scale = Math.min((WIDTH - 2 * MARGIN) / (high - low), MOST / top);
  const height = top * scale + MARGIN + FOOT;
  const x = (mm: number) => WIDTH / 2 + (mm - (low + high) / 2) * scale;
  const y = (mm: number) => MARGIN + (top - mm) * scale;
  const path = seen.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p[0]).toFixed(1)} ${y(p[1]).toFixed(1)}`).join(' ');
  return (
    <svg
      className="drawing"
      viewBox={`0 0 ${WIDTH} ${height.toFixed(1)}`}
      role="img"
      aria-label="The tube lying on a plate, seen from the side"
    >
      <path d={path} className="drawing-tube" strokeWidth={diameter * scale} />
      <path d={path} className="drawing-middle" />
      <path d={`M0 ${y(0)} H${WIDTH}`} className="drawing-line" />
      {[
        { name: 'Start', at: first },
        { name: 'End', at: last },
      ].map(({ name, at }) => (
        <text key={name} x={Math.min(WIDTH - 24, Math.max(24, x(at[0])))} y={y(0) + 17} textAnchor="middle">
          {name}
        </text>
      ))}
    </svg>
  );
}

/** Along the way, over the plate, that it is spread most along; its start to the left. */
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
  const along = points.map(([x, y, z]): readonly [number, number] => [
    (x - mx) * Math.cos(angle) + (y - my) * Math.sin(angle),
    z,
  ]);
  return (along[0]?.[0] ?? 0) <= (along.at(-1)?.[0] ?? 0) ? along : along.map(([x, z]) => [-x, z]);
}
