/** What would be taken, over the flange's ports and fasteners as they are. mm, seen from where the tubes are. */
import {
  circleLoop,
  type FramedFlange,
  framedFlange,
  type Loop,
  loopBounds,
  openingAt,
  type PlacedDrawing,
} from '../../../geometry';
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { pathOfLoop } from './outcome';

type Props = { readonly design: Design; readonly flange: string; readonly drawing: PlacedDrawing | null };

export function Preview({ design, flange, drawing }: Props) {
  const framed = framedOrNone(design, flange);
  if (!framed) return null;
  const ports = framed.ports.map(({ port, at }) => ({ id: port.id, at, loop: openingAt(port.opening, at) }));
  const all: readonly Loop[] = [...ports.map(({ loop }) => loop), ...(drawing ? [drawing.outline] : [])];
  const boxes = all.map(loopBounds);
  const [left, right] = [Math.min(...boxes.map((b) => b.min[0])), Math.max(...boxes.map((b) => b.max[0]))];
  const [low, high] = [Math.min(...boxes.map((b) => b.min[1])), Math.max(...boxes.map((b) => b.max[1]))];
  const border = 0.06 * (right - left) + 2;
  const size = (right - left + 2 * border) / 46;
  return (
    <figure className="traced-preview">
      <svg
        viewBox={`${left - border} ${-high - border} ${right - left + 2 * border} ${high - low + 2 * border}`}
        role="img"
        aria-label={drawing ? 'The outline over the ports' : 'The ports'}
      >
        {drawing && (
          <path
            className="traced-metal"
            fillRule="evenodd"
            d={[
              drawing.outline,
              ...drawing.openings.map(({ loop }) => loop),
              ...drawing.holes.map(({ centre, radius }) => circleLoop(centre, radius)),
              ...drawing.others,
            ]
              .map(pathOfLoop)
              .join('')}
          />
        )}
        {ports.map(({ id, at, loop }) => (
          <g key={id}>
            <path className="traced-port" d={pathOfLoop(loop)} />
            <text x={at[0]} y={-at[1]} fontSize={Math.max(size, 4)}>
              {id}
            </text>
          </g>
        ))}
        {framed.fasteners.map(([x, y]) => (
          <path
            key={`${x} ${y}`}
            className="traced-port"
            d={`M${x - size / 2} ${-y}h${size}M${x} ${-y - size / 2}v${size}`}
          />
        ))}
      </svg>
      <figcaption className="quiet">
        {drawing ? 'Filled: what would be taken.' : ''} Dashed: ports and fasteners as they are, seen from the tubes.
      </figcaption>
    </figure>
  );
}

/** Why there is none is said where the drawing is placed. */
function framedOrNone(design: Design, flange: string): FramedFlange | null {
  try {
    return framedFlange(design, flange);
  } catch (error) {
    if (error instanceof DesignError) return null;
    throw error;
  }
}
