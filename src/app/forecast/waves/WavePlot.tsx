/**
 * The x–t picture along one cylinder's way: the valve at the left, pipes end to end, crank angle upward, colour for pressure about its
 * mean. Over it the ways of the waves that are told of, beside it when the valves are open, through it the overlap.
 */
import { useEffect, useMemo, useRef } from 'react';
import type { ValveTimes } from '../../../pulse/forecast/gasExchange';
import type { Theme } from '../../colours';
import { densityFor } from '../../pulse/frame';
import { paintPipe } from '../../pulse/paint';
import type { Picture } from '../../pulse/sample';
import { type AngleView, angleText, angleTicks, deadCentre } from './angles';
import { type DrawnWave, pathLines } from './pathLines';
import type { Spread } from './roll';
import { type WayPanel, wayX } from './wayPlan';

export const WAVE_LEFT = 92;
export const WAVE_RIGHT = 14;
const TOP = 40;
const BOTTOM = 26;
const BAR = 9;

/** The words above and below a pipe. */
export type PipeWords = { readonly name: string; readonly length: string };

export type WaveCursor = { readonly panel: number; readonly x: number; readonly angle: number };

type Props = {
  readonly picture: Picture;
  readonly panels: readonly WayPanel[];
  readonly words: readonly PipeWords[];
  /** How many of the panels are the way; the others stand beside it. */
  readonly onWay: number;
  readonly spread: Spread;
  readonly view: AngleView;
  readonly times: ValveTimes;
  readonly waves: readonly DrawnWave[];
  readonly chosen: string | null;
  readonly theme: Theme;
  readonly width: number;
  readonly height: number;
  readonly cursor: WaveCursor | null;
};

export const waveY = (view: AngleView, height: number) => {
  const tall = Math.max(60, height - TOP - BOTTOM);
  return {
    tall,
    toY: (angle: number) => TOP + (1 - (angle - view.from) / (view.to - view.from)) * tall,
    toAngle: (y: number) => view.from + Math.min(1, Math.max(0, 1 - (y - TOP) / tall)) * (view.to - view.from),
  };
};

export function WavePlot(props: Props) {
  const { picture, panels, words, onWay, spread, view, times, waves, chosen, theme, width, height, cursor } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const { toY, tall } = useMemo(() => waveY(view, height), [view, height]);
  const density = densityFor(Math.min(2, globalThis.devicePixelRatio || 1), width);
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (!pen) return;
    pen.setTransform(density, 0, 0, density, 0, 0);
    pen.clearRect(0, 0, width, height);
    const shades = { middle: spread.mean, half: spread.half };
    panels.forEach((panel, k) => {
      const [w, h] = [Math.max(1, Math.round(panel.width * density)), Math.max(1, Math.round(tall * density))];
      const rows = picture.times.length;
      const { rgba } = paintPipe(picture, rows, k, 'pressure', shades, view.to - view.from, theme, w, h);
      const layer = document.createElement('canvas');
      layer.width = w;
      layer.height = h;
      layer.getContext('2d')?.putImageData(new ImageData(rgba, w, h), 0, 0);
      pen.drawImage(layer, panel.left, TOP, panel.width, tall);
    });
  }, [picture, panels, spread, view, theme, width, height, density, tall]);
  const way = panels.slice(0, onWay);
  const [left, right] = [WAVE_LEFT, way.at(-1)!.left + way.at(-1)!.width];
  const last = panels.at(-1)!;
  return (
    <>
      <canvas
        ref={canvas}
        width={Math.round(width * density)}
        height={Math.round(height * density)}
        style={{ width, height }}
      />
      <svg width={width} height={height} role="img" aria-label="Pressure along the pipes over crank angle, upward">
        {angleTicks(view, Math.max(3, Math.floor(tall / 34))).map((angle) => (
          <g key={angle}>
            <line className="valve-axis" x1={left - 30} x2={left - 26} y1={toY(angle)} y2={toY(angle)} />
            <text className="valve-up" x={left - 33} y={toY(angle)}>
              {deadCentre(angle) && <tspan className="wave-dead">{deadCentre(angle)} </tspan>}
              {angleText(angle)}
            </text>
          </g>
        ))}
        <OpenBar
          name="exhaust valve open"
          x={left - 24}
          from={times.exhaustOpens}
          to={times.exhaustCloses}
          view={view}
          toY={toY}
        />
        <OpenBar
          name="intake valve open"
          x={left - 13}
          from={times.intakeOpens}
          to={times.intakeCloses}
          view={view}
          toY={toY}
        />
        {times.overlap && (
          <g className="wave-overlap">
            <rect
              x={left - 26}
              width={last.left + last.width - left + 26}
              y={toY(times.overlap[1])}
              height={Math.max(1, toY(times.overlap[0]) - toY(times.overlap[1]))}
            />
            <text x={right - 5} y={toY(times.overlap[1]) - 6}>
              overlap
            </text>
          </g>
        )}
        {panels.map((panel, k) => (
          <g key={panel.pipe}>
            <rect className="wave-edge" x={panel.left} y={TOP} width={panel.width} height={tall} />
            {k < onWay - 1 && (
              <line
                className="wave-joint"
                x1={panel.left + panel.width}
                x2={panel.left + panel.width}
                y1={TOP - 6}
                y2={TOP + tall + 4}
              />
            )}
            {words[k]!.name.length <= lettersIn(panel.width - 4) ? (
              <text className="wave-pipe" x={panel.left + 2} y={TOP - 21}>
                {words[k]!.name}
              </text>
            ) : (
              // A name is never cut: where it has no room above, it runs down within.
              <text
                className="wave-pipe wave-pipe-in"
                transform={`translate(${panel.left + panel.width / 2} ${TOP + 6}) rotate(90)`}
              >
                {words[k]!.name}
              </text>
            )}
            <Fitting
              className="wave-length"
              x={panel.left + 2}
              y={TOP - 8}
              width={panel.width - 4}
              text={words[k]!.length}
            />
          </g>
        ))}
        <text className="wave-end" x={left} y={TOP + tall + 14}>
          valve
        </text>
        <text className="wave-end wave-mouth" x={right} y={TOP + tall + 14}>
          open air
        </text>
        {waves.map((wave) => (
          <Way key={wave.key} wave={wave} panels={panels} view={view} toY={toY} chosen={wave.key === chosen} />
        ))}
        {cursor && panels[cursor.panel] && (
          <path
            className="wave-cross"
            d={`M${wayX(panels[cursor.panel]!, cursor.x)} ${TOP}v${tall}M${left} ${toY(cursor.angle)}H${last.left + last.width}`}
          />
        )}
      </svg>
    </>
  );
}

/** About 6 px a letter at this size. */
const lettersIn = (px: number): number => Math.floor(px / 6);

/** Only where it has the room. */
function Fitting(props: { className: string; x: number; y: number; width: number; text: string }) {
  const { className, x, y, width, text } = props;
  const most = lettersIn(width);
  if (text.length > most) return null;
  return (
    <text className={className} x={x} y={y}>
      <title>{text}</title>
      {text}
    </text>
  );
}

type BarProps = {
  readonly name: string;
  readonly x: number;
  readonly from: number;
  readonly to: number;
  readonly view: AngleView;
  readonly toY: (angle: number) => number;
};

function OpenBar({ name, x, from, to, view, toY }: BarProps) {
  const [low, high] = [Math.max(from, view.from), Math.min(to, view.to)];
  const middle = (toY(low) + toY(high)) / 2;
  return (
    <g className="wave-open">
      <title>{name}</title>
      <rect x={x} y={toY(high)} width={BAR} height={Math.max(0, toY(low) - toY(high))} />
      <text transform={`translate(${x + BAR / 2} ${middle}) rotate(-90)`}>{name.split(' ')[0]}</text>
    </g>
  );
}

type WayProps = {
  readonly wave: DrawnWave;
  readonly panels: readonly WayPanel[];
  readonly view: AngleView;
  readonly toY: (angle: number) => number;
  readonly chosen: boolean;
};

function Way({ wave, panels, view, toY, chosen }: WayProps) {
  const lines = pathLines(wave, panels, view, toY);
  const x = panels[0]!.left;
  const seen = wave.arrival !== null && wave.arrival >= view.from && wave.arrival <= view.to;
  return (
    <g className="wave-way" data-chosen={chosen}>
      {lines.map(({ key, d }) => (
        <path key={`halo ${key}`} className="wave-halo" d={d} />
      ))}
      {lines.map(({ key, d, suction }) => (
        <path key={key} d={d} strokeDasharray={suction ? '7 4' : undefined} />
      ))}
      {seen && <circle cx={x} cy={toY(wave.arrival!)} r={chosen ? 5 : 3} />}
      {chosen && seen && (
        <text className="wave-tag" x={x + 9} y={toY(wave.arrival!) - 7}>
          {wave.suction ? 'suction' : 'pressure'} arrives, {angleText(wave.arrival!)}
        </text>
      )}
      {chosen && wave.leaves && wave.leaves.angle >= view.from && (
        <text className="wave-tag" x={x + 9} y={toY(wave.leaves.angle) + 14}>
          {wave.leaves.words}
        </text>
      )}
    </g>
  );
}
