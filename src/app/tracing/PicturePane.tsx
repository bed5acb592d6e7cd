/**
 * The scan with the edges that would be traced, and the two points that set its scale: tapped on the picture, then set to the
 * pixel in a glass each, by tapping there or with the arrow keys.
 */
import { type KeyboardEvent, type PointerEvent, useEffect, useState } from 'react';
import { largestRegion, type Point2, TraceError } from '../../../geometry';
import type { Wish } from './outcome';
import type { Source } from './readSource';

type Picture = Extract<Source, { kind: 'picture' }>;
type Props = { readonly picture: Picture; readonly wish: Wish; put(wish: Wish): void };

/** Of the picture's shorter side, squared: what is smaller is not drawn while the scale is not known. */
const SPECK = 0.01;

export function PicturePane({ picture, wish, put }: Props) {
  const { width, height } = picture.raster;
  const edges = useEdges(picture, wish.threshold);
  const set = (which: 0 | 1, at: Point2) => {
    const kept: Point2 = [clamp(at[0], width), clamp(at[1], height)];
    put({ ...wish, points: which === 0 ? [kept, wish.points[1]] : [wish.points[0], kept] });
  };
  const tap = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const at: Point2 = [
      ((event.clientX - box.left) * width) / box.width,
      ((event.clientY - box.top) * height) / box.height,
    ];
    const [a, b] = wish.points;
    if (!a) set(0, at);
    else if (!b) set(1, at);
    else set(gap(a, at) <= gap(b, at) ? 0 : 1, at);
  };
  return (
    <div className="traced-picture">
      <div
        className="traced-frame"
        style={{ aspectRatio: `${width} / ${height}`, maxWidth: `calc(46dvh * ${width / height})` }}
      >
        <img src={picture.url} alt={`The scan ${picture.name}`} />
        <svg viewBox={`0 0 ${width} ${height}`} onPointerDown={tap} aria-hidden="true">
          <path d={edges.path} className="traced-halo" />
          <path d={edges.path} className="traced-edge" />
          {wish.points[0] && wish.points[1] && (
            <line
              x1={wish.points[0][0]}
              y1={wish.points[0][1]}
              x2={wish.points[1][0]}
              y2={wish.points[1][1]}
              className="traced-span"
            />
          )}
          {wish.points.map(
            (p, k) => p && <Mark key={k === 0 ? 'first' : 'second'} at={p} size={Math.max(width, height) / 40} />,
          )}
        </svg>
      </div>
      {edges.problem && <p className="traced-problem">{edges.problem}</p>}
      <div className="traced-glasses">
        <Glass
          name="First point"
          picture={picture}
          at={wish.points[0]}
          start={[0.1, 0.1]}
          onMove={(at) => set(0, at)}
        />
        <Glass
          name="Second point"
          picture={picture}
          at={wish.points[1]}
          start={[0.9, 0.1]}
          onMove={(at) => set(1, at)}
        />
      </div>
    </div>
  );
}

const Mark = ({ at: [x, y], size }: { readonly at: Point2; readonly size: number }) => (
  <path
    className="traced-mark"
    d={`M${x - size} ${y}H${x + size}M${x} ${y - size}V${y + size}M${x - size / 2} ${y}a${size / 2} ${size / 2} 0 1 0 ${size} 0a${size / 2} ${size / 2} 0 1 0 ${-size} 0`}
  />
);

/** Picture pixels to a side of a glass, and page pixels to one of them. */
const SEEN = 40;
const ZOOM = 3;

type GlassProps = {
  readonly name: string;
  readonly picture: Picture;
  readonly at: Point2 | null;
  /** Where it goes when keys first ask for it, as shares of the picture. */
  readonly start: Point2;
  onMove(at: Point2): void;
};

function Glass({ name, picture, at, start, onMove }: GlassProps) {
  const { width, height } = picture.raster;
  const side = SEEN * ZOOM;
  const keys = (event: KeyboardEvent) => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!step && !(event.key === 'Enter' && !at)) return;
    event.preventDefault();
    const by = event.shiftKey ? 25 : 1;
    if (!at) onMove([start[0] * width, start[1] * height]);
    else if (step) onMove([at[0] + by * step[0]!, at[1] + by * step[1]!]);
  };
  const tap = (event: PointerEvent<HTMLButtonElement>) => {
    if (!at) return;
    const box = event.currentTarget.getBoundingClientRect();
    onMove([
      at[0] + (event.clientX - box.left - box.width / 2) / ZOOM,
      at[1] + (event.clientY - box.top - box.height / 2) / ZOOM,
    ]);
  };
  const where = at ? `${Math.round(at[0])}, ${Math.round(at[1])} px` : 'not shown yet';
  return (
    <div className="traced-glass-box">
      <button
        type="button"
        className="traced-glass"
        aria-label={`${name}: ${where}. Arrow keys move it by a pixel, with Shift by 25`}
        onKeyDown={keys}
        onPointerDown={tap}
        style={
          at
            ? {
                backgroundImage: `url("${picture.url}")`,
                backgroundSize: `${width * ZOOM}px ${height * ZOOM}px`,
                backgroundPosition: `${side / 2 - at[0] * ZOOM}px ${side / 2 - at[1] * ZOOM}px`,
              }
            : undefined
        }
      />
      <span>
        {name}
        <br />
        <span className="quiet">{where}</span>
      </span>
    </div>
  );
}

type Edges = { readonly path: string; readonly problem: string | null };

/** The edges at a threshold, from the smaller picture, once the slider rests for a moment. */
function useEdges({ small, reduced }: Picture, threshold: number | null): Edges {
  const [edges, setEdges] = useState<Edges>({ path: '', problem: null });
  useEffect(() => {
    const later = setTimeout(() => setEdges(edgesOf(small, reduced, threshold)), 30);
    return () => clearTimeout(later);
  }, [small, reduced, threshold]);
  return edges;
}

function edgesOf(small: Picture['small'], reduced: number, threshold: number | null): Edges {
  try {
    const speck = (SPECK * Math.min(small.width, small.height)) ** 2;
    const region = largestRegion(small, { ...(threshold === null ? {} : { threshold }), speck });
    const n = (x: number): string => (x * reduced).toFixed(1);
    const path = region.edges.map(({ points }) => `M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}Z`).join('');
    return { path, problem: null };
  } catch (error) {
    if (!(error instanceof TraceError)) throw error;
    const [first, ...rest] = error.message;
    return { path: '', problem: `${first!.toUpperCase()}${rest.join('')}.` };
  }
}

const clamp = (x: number, most: number): number => Math.max(0, Math.min(most, x));
const gap = (a: Point2, b: Point2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
