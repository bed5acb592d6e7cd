/** The scan to be turned about and clicked on, the crop round it, the header as it would stand, and the points that were picked. */
import { type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import { type Header, sampleCenterline, type TriangleSoup } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { useTheme } from '../../colours';
import { TOKENS } from '../../theme';
import type { Corners } from '../facts';
import { inFile, type Lie } from '../lie';
import { CropHandles } from './CropHandles';
import { createPicture, type Picture } from './picture';

type Props = {
  readonly soup: TriangleSoup;
  /** In the file's unit, as all places here are. */
  readonly crop: Corners | null;
  /** The same in mm, to be pulled at; null: no crop, or no unit yet. */
  readonly pull: { readonly crop: Corners; readonly k: number; put(crop: Corners): void } | null;
  readonly points: readonly (Vec3 | null)[];
  /** The header to be drawn with it, and how the scan would lie in its design; null: it is not known yet. */
  readonly header: Header;
  readonly lie: Lie | null;
  /** What a click on the scan is for; null: nothing. */
  readonly picks: string | null;
  onPick(place: Vec3): void;
};

/** A press that strays no farther is a click, px. */
const STRAY = 5;

export function ScanPicture({ soup, crop, pull, points, header, lie, picks, onPick }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const marks = useRef<(HTMLSpanElement | null)[]>([]);
  const placeMarks = useRef(() => {});
  const placeHandles = useRef(() => {});
  const [picture, setPicture] = useState<Picture | null>(null);
  const [missed, setMissed] = useState(false);
  const theme = useTheme();

  useEffect(() => {
    const made = createPicture(canvas.current!, () => {
      placeMarks.current();
      placeHandles.current();
    });
    setPicture(made);
    const watch = new ResizeObserver(() => made.resize());
    watch.observe(canvas.current!);
    return () => {
      watch.disconnect();
      made.end();
    };
  }, []);
  useEffect(() => picture?.show(soup), [picture, soup]);
  useEffect(() => picture?.crop(crop), [picture, crop]);
  useEffect(() => {
    const { accent, edge } = TOKENS[theme];
    picture?.paint({ mesh: theme === 'light' ? '#c9c2b4' : '#6d747b', line: edge, accent });
  }, [picture, theme]);
  const pairs = useMemo(() => (lie ? linesOf(header, lie) : new Float32Array(0)), [header, lie]);
  useEffect(() => picture?.lines(pairs), [picture, pairs]);
  useEffect(() => {
    placeMarks.current = () => {
      points.forEach((p, k) => {
        const mark = marks.current[k];
        if (!mark || !p || !picture) return;
        const [x, y] = picture.see(p);
        mark.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
      });
    };
    placeMarks.current();
  }, [picture, points]);

  const pressed = useRef<readonly [number, number] | null>(null);
  const press = (event: PointerEvent) => {
    pressed.current = [event.clientX, event.clientY];
  };
  const release = (event: PointerEvent<HTMLCanvasElement>) => {
    const from = pressed.current;
    pressed.current = null;
    if (!from || !picks || Math.hypot(event.clientX - from[0], event.clientY - from[1]) > STRAY) return;
    const box = event.currentTarget.getBoundingClientRect();
    const place = picture?.hit(event.clientX - box.left, event.clientY - box.top);
    setMissed(!place);
    if (place) onPick(place);
  };
  return (
    <div className="scanned-picture" data-picks={picks !== null}>
      <canvas
        ref={canvas}
        onPointerDown={press}
        onPointerUp={release}
        role="img"
        aria-label="The mesh; drag turns it, two fingers or the wheel bring it nearer"
      />
      {points.map(
        (p, k) =>
          p && (
            <span
              // biome-ignore lint/suspicious/noArrayIndexKey: a point is its number
              key={k}
              ref={(node) => {
                marks.current[k] = node;
                placeMarks.current();
              }}
              className="scanned-mark"
              aria-hidden="true"
            >
              {k + 1}
            </span>
          ),
      )}
      {picture && pull && <CropHandles picture={picture} onDrawn={placeHandles} {...pull} />}
      <p className="scanned-hint">
        {missed ? 'That was beside the mesh. ' : ''}
        {picks ??
          `${pull ? 'Drag a square to move that side of the box. A drag elsewhere' : 'Drag'} turns it, ${isTouched() ? 'two fingers bring' : 'the wheel brings'} it nearer.`}
      </p>
    </div>
  );
}

const isTouched = (): boolean => matchMedia('(pointer: coarse)').matches;

/** Of the tubes' centerlines, mm. */
const SAGITTA = 1;

/** The centerlines of all runners, in the file. */
function linesOf(header: Header, lie: Lie): Float32Array {
  const pairs: number[] = [];
  for (const { centerline } of header.runners) {
    if (!centerline) continue;
    const along = sampleCenterline(centerline, SAGITTA).map(({ position }) => inFile(lie, position));
    for (let i = 1; i < along.length; i++) pairs.push(...along[i - 1]!, ...along[i]!);
  }
  return Float32Array.from(pairs);
}
