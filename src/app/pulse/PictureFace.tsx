/** The x–t picture, and the crosshair that reads it: by pointer, by touch, by arrow keys. */
import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import { paintOf, useTheme } from '../colours';
import { type Colours, coloursFor } from './colourScale';
import { movedBy } from './cursorKeys';
import { drawFixed, drawPicture, fontOf } from './drawPicture';
import { densityFor, type Frame, framePicture, pxToTime, timeToPx, xToPx } from './frame';
import { panelAt } from './plan';
import { QUANTITIES, type Quantity } from './quantities';
import { Readout } from './Readout';
import { rangeOf } from './sample';
import { type Cursor, pointAt, type Seen, useShown } from './shown';
import { useSize } from './useSize';

/** Text is measured as it will be drawn. */
const ruler = document.createElement('canvas').getContext('2d');
export function textWidth(text: string): number {
  if (!ruler) return 7 * text.length;
  ruler.font = fontOf();
  return ruler.measureText(text).width;
}

export function useColours(seen: Seen, quantity: Quantity, span: number): Colours {
  const range = useMemo(
    () => (seen.run.picture ? rangeOf(seen.run.picture, seen.rows, quantity) : null),
    [seen, quantity],
  );
  return useMemo(() => coloursFor(quantity, seen.rig, range, span), [quantity, seen.rig, range, span]);
}

export function PictureFace({ seen }: { readonly seen: Seen }) {
  const { quantity, span, cursor } = useShown();
  const theme = useTheme();
  const colours = useColours(seen, quantity, span);
  const [box, { width, height }] = useSize<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const fixed = useRef<HTMLCanvasElement>(null);
  const [byKeys, setByKeys] = useState(false);
  const frame = useMemo(
    () =>
      seen.run.picture && width > 0 && height > 0
        ? framePicture(seen.rig, seen.run.picture, width, height, textWidth)
        : null,
    [seen, width, height],
  );
  const density = densityFor(Math.min(2, globalThis.devicePixelRatio || 1), frame?.width ?? 1);
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (!frame || !pen) return;
    pen.setTransform(density, 0, 0, density, 0, 0);
    pen.clearRect(0, 0, frame.width, frame.wholeHeight);
    const paints = seen.rig.probes.map((_, k) => paintOf(k, theme));
    const look = { theme, density, quantity, colours, paints };
    drawPicture(pen, seen, frame, look);
    const over = fixed.current?.getContext('2d');
    if (!over) return;
    over.setTransform(density, 0, 0, density, 0, 0);
    over.clearRect(0, 0, frame.room, frame.wholeHeight);
    drawFixed(over, seen, frame, look);
  }, [seen, frame, theme, density, quantity, colours]);

  const point = (event: PointerEvent<HTMLElement>) => {
    if (!frame) return;
    const { left, top } = event.currentTarget.getBoundingClientRect();
    setByKeys(false);
    pointAt(cursorAt(seen, frame, event.clientX - left, event.clientY - top));
  };
  const press = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !seen.run.picture) return;
    const next = movedBy(event.key, event.shiftKey, cursor, seen.run.picture, seen.rows);
    if (!next) return;
    event.preventDefault();
    setByKeys(true);
    pointAt(next);
  };
  return (
    <section className="waves-picture" aria-label="Picture of the waves">
      <div className="waves-frame" ref={box}>
        {frame && (
          <div
            role="application"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys read it
            tabIndex={0}
            className="waves-canvas"
            style={{
              width: frame.width,
              height: frame.wholeHeight,
              ...(frame.width > frame.room && { touchAction: 'pan-x' }),
            }}
            aria-label={`${QUANTITIES[quantity].name} along ${seen.rig.pipes.length === 1 ? 'the pipe' : `${seen.rig.pipes.length} pipes`} over time. Arrow keys move the crosshair, with Shift by ten.`}
            aria-describedby="waves-readout"
            onPointerDown={point}
            onPointerMove={point}
            onKeyDown={press}
          >
            {frame.width > frame.room && (
              <canvas
                ref={fixed}
                className="waves-fixed"
                width={Math.round(frame.room * density)}
                height={Math.round(frame.wholeHeight * density)}
                style={{ width: frame.room, height: frame.wholeHeight, marginBottom: -frame.wholeHeight }}
              />
            )}
            <canvas
              ref={canvas}
              width={Math.round(frame.width * density)}
              height={Math.round(frame.wholeHeight * density)}
              style={{ width: frame.width, height: frame.wholeHeight }}
            />
            {cursor && <Crosshair frame={frame} cursor={cursor} until={seen.until} />}
          </div>
        )}
      </div>
      <Readout seen={seen} quantity={quantity} cursor={cursor} aloud={byKeys} />
    </section>
  );
}

export function cursorAt(seen: Seen, frame: Frame, px: number, py: number): Cursor {
  const { pipe, share } = panelAt(frame.plan, px - frame.left);
  const [from, to] = frame.extents[pipe]!;
  const times = seen.run.picture!.times;
  const last = seen.rows > 0 ? times[seen.rows - 1]! : 0;
  return { pipe, x: from + share * (to - from), time: Math.min(last, pxToTime(frame, py, seen.until)) };
}

type CrosshairProps = { readonly frame: Frame; readonly cursor: Cursor; readonly until: number };

function Crosshair({ frame, cursor, until }: CrosshairProps) {
  const x = xToPx(frame, cursor.pipe, cursor.x);
  const y = timeToPx(frame, cursor.time, until);
  const [first, last] = [frame.plan.panels[0]!, frame.plan.panels.at(-1)!];
  const path = `M${x} ${frame.top}v${frame.height}M${frame.left + first.left} ${y}H${frame.left + last.left + last.width}`;
  return (
    <svg className="waves-crosshair" width={frame.width} height={frame.wholeHeight} aria-hidden="true">
      <path className="waves-halo" d={path} />
      <path d={path} />
      <circle cx={x} cy={y} r={4.5} />
    </svg>
  );
}
