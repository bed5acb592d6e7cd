/** The curves on screen: drawn on a canvas, read by pointer or arrow keys, one speed opened by a press. */
import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import { useDisplay } from '../../actions/display';
import { useTheme } from '../../colours';
import { densityFor } from '../../pulse/frame';
import { useSize } from '../../pulse/useSize';
import { numberText, wordsFor } from '../quantities';
import { drawCurve } from './drawCurve';
import { type Frame, framePlot, type PanelWish, pointUnder, rpmToPx, type Under, valueToPx } from './frame';
import { movedBy } from './moved';

type Props = {
  readonly panels: readonly PanelWish[];
  /** rpm of all that is or will be shown. */
  readonly speeds: readonly number[];
  readonly under: Under | null;
  readonly onUnder: (under: Under | null) => void;
  readonly onPick: (under: Under) => void;
};

export function CurvePlot({ panels, speeds, under, onUnder, onPick }: Props) {
  const theme = useTheme();
  const display = useDisplay();
  const [box, { width, height }] = useSize<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const [byKeys, setByKeys] = useState(false);
  const frame = useMemo(
    () => (width > 0 && height > 0 ? framePlot(panels, speeds, display, width, height) : null),
    [panels, speeds, display, width, height],
  );
  const density = densityFor(Math.min(2, globalThis.devicePixelRatio || 1), width || 1);
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (!frame || !pen) return;
    pen.setTransform(density, 0, 0, density, 0, 0);
    pen.clearRect(0, 0, frame.width, frame.height);
    drawCurve(pen, frame, { theme, display });
  }, [frame, theme, display, density]);
  const place = (event: PointerEvent<HTMLElement>): Under | null => {
    if (!frame) return null;
    const { left, top } = event.currentTarget.getBoundingClientRect();
    return pointUnder(frame, event.clientX - left, event.clientY - top);
  };
  const press = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter' && under) {
      event.preventDefault();
      return onPick(under);
    }
    const next = movedBy(event.key, under, panels[0]?.series ?? []);
    if (!next) return;
    event.preventDefault();
    setByKeys(true);
    onUnder(next);
  };
  return (
    <div className="gain-plot">
      <div ref={box} className="gain-plot-room">
        {frame && (
          <div
            role="application"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys read it
            tabIndex={0}
            className="gain-canvas"
            aria-label={`${panels.map(({ quantity }) => wordsFor(quantity, display).name).join(' and ')} over the engine's speed. Left and right go from speed to speed, up and down from run to run, Enter looks at the speed closely.`}
            aria-describedby="gain-under"
            onPointerMove={(event) => {
              setByKeys(false);
              onUnder(place(event));
            }}
            onPointerLeave={(event) => event.pointerType === 'mouse' && onUnder(null)}
            onClick={(event) => {
              const at = place(event as unknown as PointerEvent<HTMLElement>);
              if (at) onPick(at);
            }}
            onKeyDown={press}
          >
            <canvas
              ref={canvas}
              width={Math.round(width * density)}
              height={Math.round(height * density)}
              style={{ width, height }}
            />
            {under && <Mark frame={frame} under={under} />}
          </div>
        )}
      </div>
      <p id="gain-under" className="gain-under" aria-live={byKeys ? 'polite' : 'off'}>
        {under ? <UnderWords panels={panels} under={under} /> : <span className="quiet">{HINT}</span>}
      </p>
    </div>
  );
}

const HINT = globalThis.matchMedia?.('(pointer: coarse)').matches
  ? 'Touch a point to look at that speed closely.'
  : 'Point at a curve to read it; press to look at that speed closely.';

function Mark({ frame, under }: { readonly frame: Frame; readonly under: Under }) {
  const x = rpmToPx(frame, under.rpm);
  const [first, last] = [frame.panels[0]!, frame.panels.at(-1)!];
  return (
    <svg className="gain-mark" width={frame.width} height={frame.height} aria-hidden="true">
      <line x1={x} x2={x} y1={first.top} y2={last.top + last.height} />
      {frame.panels.map((panel) => {
        const point = panel.series.find(({ kind }) => kind === under.kind)?.points.find(({ rpm }) => rpm === under.rpm);
        return point && <circle key={panel.quantity} cx={x} cy={valueToPx(panel, point.value)} r={6.5} />;
      })}
    </svg>
  );
}

function UnderWords({ panels, under }: { readonly panels: readonly PanelWish[]; readonly under: Under }) {
  const display = useDisplay();
  const series = panels[0]?.series.find(({ kind }) => kind === under.kind);
  return (
    <>
      <span>
        <b>{under.rpm}</b> <span className="unit">rpm</span>
      </span>
      <span>{series?.title}</span>
      {panels.map((panel) => {
        const { name, unit, decimals } = wordsFor(panel.quantity, display);
        const point = panel.series.find(({ kind }) => kind === under.kind)?.points.find(({ rpm }) => rpm === under.rpm);
        return (
          point && (
            <span key={panel.quantity}>
              <span className="quiet">{name.toLowerCase()}</span> <b>{numberText(point.value, decimals)}</b>{' '}
              <span className="unit">{unit}</span>
              {!point.settled && <span className="quiet"> (not settled)</span>}
              {!point.final && <span className="quiet"> (coarse so far)</span>}
            </span>
          )
        );
      })}
    </>
  );
}
