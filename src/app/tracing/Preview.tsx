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
import { useWidth } from '../parts/useWidth';
import { pathOfLoop } from './outcome';

type Props = { readonly design: Design; readonly flange: string; readonly drawing: PlacedDrawing | null };

export function Preview({ design, flange, drawing }: Props) {
  const framed = framedOrNone(design, flange);
  const [figure, shown] = useWidth<HTMLElement>();
  if (!framed) return null;
  const ports = framed.ports.map(({ port, at }) => ({ id: port.id, at, loop: openingAt(port.opening, at) }));
  const all: readonly Loop[] = [
    ...ports.map(({ loop }) => loop),
    ...framed.fasteners.map((at) => circleLoop(at, 5)),
    ...(drawing ? [drawing.outline] : []),
  ];
  const boxes = all.map(loopBounds);
  const [left, right] = [Math.min(...boxes.map((b) => b.min[0])), Math.max(...boxes.map((b) => b.max[0]))];
  const [low, high] = [Math.min(...boxes.map((b) => b.min[1])), Math.max(...boxes.map((b) => b.max[1]))];
  const border = 0.06 * (right - left) + 2;
  const wide = right - left + 2 * border;
  // Of a page's pixel, mm: words and marks keep their size on the page.
  const pixel = wide / Math.max(shown, 200);
  const size = 12 * pixel;
  return (
    <figure ref={figure} className="traced-preview">
      <svg
        viewBox={`${left - border} ${-high - border} ${wide} ${high - low + 2 * border}`}
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
            <text x={at[0]} y={-at[1]} fontSize={12.5 * pixel}>
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
