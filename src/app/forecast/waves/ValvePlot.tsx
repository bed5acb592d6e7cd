/**
 * Three strips over one axis of crank angle: pressures on both sides of the valves, what flows through them, their lifts. The overlap
 * runs through all three; what flows the wrong way is hatched. Runs by colour, what is drawn by the line's kind.
 */
import { useMemo } from 'react';
import type { CylinderTrace } from '../../../pulse/forecast/types';
import { meanOver } from '../../../pulse/forecast/waveOverlap';
import type { Paint } from '../../colours';
import { curvePath } from '../../pulse/curves';
import { ticksIn, tickText } from '../../pulse/scale';
import { type AngleView, angleText, angleTicks, deadCentre } from './angles';
import { flowRange, GRAMS, highestLift, KPA, MM, type PressureKey, pressureRange, pressuresOf } from './traces';

/** `key` tells runs of one name apart. */
export type Drawn = {
  readonly key: string;
  readonly name: string;
  readonly trace: CylinderTrace;
  readonly paint: Paint;
};

/** A step of pressure that comes along the pipe: drawn at the foot of the pressures. */
export type StepMark = { readonly key: string; readonly angle: number; readonly words: string };

/** A wave that comes to the valve: drawn over the pressures where it arrives. */
export type ArrivalMark = StepMark & { readonly suction: boolean };

type Props = {
  readonly drawn: readonly Drawn[];
  readonly shown: ReadonlySet<PressureKey>;
  readonly view: AngleView;
  readonly overlap: readonly [number, number] | null;
  readonly arrivals: readonly ArrivalMark[];
  readonly steps: readonly StepMark[];
  readonly width: number;
  readonly height: number;
  readonly cursor: number | null;
};

const LEFT = 50;
const RIGHT = 12;
const TOP = 36;
const AXIS = 50;
const GAP = 22;

/** Line widths and dashes of what is drawn; the run's own dash shows in the thick line. */
export const LINES: Readonly<Record<PressureKey, { readonly width: number; readonly dash: string | null }>> = {
  exhaustPort: { width: 2.2, dash: null },
  cylinder: { width: 1.1, dash: null },
  intakePort: { width: 1.7, dash: '1.5 3.5' },
};

export const valveX = (view: AngleView, width: number) => {
  const inner = width - LEFT - RIGHT;
  return {
    toX: (angle: number) => LEFT + ((angle - view.from) / (view.to - view.from)) * inner,
    toAngle: (x: number) => view.from + Math.min(1, Math.max(0, (x - LEFT) / inner)) * (view.to - view.from),
  };
};

export function ValvePlot({ drawn, shown, view, overlap, arrivals, steps, width, height, cursor }: Props) {
  const traces = useMemo(() => drawn.map(({ trace }) => trace), [drawn]);
  const { toX } = useMemo(() => valveX(view, width), [view, width]);
  const right = width - RIGHT;
  const room = Math.max(120, height - TOP - AXIS - 2 * GAP);
  const [tallest, middle, lowest] = [room * 0.62, room * 0.23, room * 0.15];
  const pressureTop = TOP;
  const flowTop = pressureTop + tallest + GAP;
  const liftTop = flowTop + middle + GAP;
  const bottom = liftTop + lowest;
  const [low, high] = useMemo(() => pressureRange(traces, view), [traces, view]);
  const [least, most] = useMemo(() => flowRange(traces, view), [traces, view]);
  const lift = useMemo(() => highestLift(traces), [traces]);
  const toY = (kpa: number) => pressureTop + (1 - (kpa - low) / (high - low)) * tallest;
  const toFlow = (grams: number) => flowTop + (1 - (grams - least) / (most - least)) * middle;
  const toLift = (mm: number) => bottom - (mm / lift) * (lowest - 2);
  const clip = `valve-clip-${Math.round(width)}-${Math.round(height)}`;
  const up = ticksIn(low, high, Math.max(2, Math.floor(tallest / 40)));
  const flows = ticksIn(least, most, Math.max(2, Math.floor(middle / 26)));
  return (
    <svg
      width={width}
      height={height}
      role="img"
      aria-label="Pressures, flows and lifts at the valves over crank angle"
    >
      <defs>
        <clipPath id={clip}>
          <rect x={LEFT} y={pressureTop} width={right - LEFT} height={tallest} />
        </clipPath>
        <clipPath id={`${clip}-whole`}>
          <rect x={LEFT} y={0} width={right - LEFT} height={height} />
        </clipPath>
        <pattern id="valve-back" width={5} height={5} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="valve-hatch" x1={0} x2={0} y1={0} y2={5} />
        </pattern>
      </defs>
      {overlap && (
        <g>
          <rect
            className="valve-overlap"
            x={toX(overlap[0])}
            width={Math.max(1, toX(overlap[1]) - toX(overlap[0]))}
            y={pressureTop - 4}
            height={bottom - pressureTop + 4}
          />
          <text className="valve-overlap-word" x={toX((overlap[0] + overlap[1]) / 2)} y={10}>
            overlap {angleText(overlap[0])} to {angleText(overlap[1])}
          </text>
        </g>
      )}
      {up.at.map((value) => (
        <g key={value}>
          <line className="valve-rule" x1={LEFT} x2={right} y1={toY(value)} y2={toY(value)} />
          <text className="valve-up" x={LEFT - 6} y={toY(value)}>
            {tickText(value, up.decimals)}
          </text>
        </g>
      ))}
      {flows.at.map((value) => (
        <g key={value}>
          <line
            className={value === 0 ? 'valve-axis' : 'valve-rule'}
            x1={LEFT}
            x2={right}
            y1={toFlow(value)}
            y2={toFlow(value)}
          />
          <text className="valve-up" x={LEFT - 6} y={toFlow(value)}>
            {tickText(value, flows.decimals)}
          </text>
        </g>
      ))}
      <text className="valve-name" x={LEFT - 44} y={pressureTop - 13}>
        Pressure, kPa absolute
      </text>
      <text className="valve-name" x={LEFT - 44} y={flowTop - 9}>
        Flow, g/s{least < 0 ? ' (hatched: the wrong way)' : ''}
      </text>
      <text className="valve-name" x={LEFT - 44} y={liftTop - 9}>
        Lift, mm
      </text>
      <text className="valve-up" x={LEFT - 6} y={toLift(lift)}>
        {lift.toFixed(1)}
      </text>
      {drawn.map(({ key: own, trace, paint }, k) => {
        const line = (values: Float32Array, y: (value: number) => number) => curvePath(trace.angle, values, toX, y);
        const dash = paint.dash.map((part) => part * 2).join(' ');
        const mean = meanOver(trace, trace.exhaustPort, -360, 360) * KPA;
        return (
          <g key={own} stroke={paint.colour} fill="none" strokeLinejoin="round">
            <g clipPath={`url(#${clip})`}>
              {shown.has('exhaustPort') && (
                <line className="valve-mean" x1={LEFT} x2={right} y1={toY(mean)} y2={toY(mean)} />
              )}
              {(['intakePort', 'cylinder', 'exhaustPort'] as const)
                .filter((key) => shown.has(key))
                .map((key) => (
                  <path
                    key={key}
                    d={within(line(pressuresOf(trace, key), (pa) => toY(pa * KPA)))}
                    strokeWidth={LINES[key].width}
                    strokeDasharray={LINES[key].dash ?? dash}
                    strokeLinecap={LINES[key].dash ? 'round' : undefined}
                  />
                ))}
            </g>
            {shown.has('exhaustPort') && k === 0 && mean > low && mean < high && (
              <text className="valve-mean-word" x={LEFT + 4} y={toY(mean) - 5}>
                mean
              </text>
            )}
            <g clipPath={`url(#${clip}-whole)`}>
              <path
                className="valve-reversed"
                d={reversed(trace, trace.exhaustFlow, toX, toFlow) + reversed(trace, trace.intakeFlow, toX, toFlow)}
              />
              <path d={line(trace.exhaustFlow, (f) => toFlow(f * GRAMS))} strokeWidth={1.8} strokeDasharray={dash} />
              <path
                d={line(trace.intakeFlow, (f) => toFlow(f * GRAMS))}
                strokeWidth={LINES.intakePort.width}
                strokeDasharray="1.5 3.5"
                strokeLinecap="round"
              />
            </g>
          </g>
        );
      })}
      {drawn[0] && (
        <g className="valve-lifts" clipPath={`url(#${clip}-whole)`}>
          <path
            d={`${curvePath(drawn[0].trace.angle, drawn[0].trace.exhaustLift, toX, (m) => toLift(m * MM))}V${bottom}H${LEFT}Z`}
          />
          <path
            d={`${curvePath(drawn[0].trace.angle, drawn[0].trace.intakeLift, toX, (m) => toLift(m * MM))}V${bottom}H${LEFT}Z`}
          />
          <LiftWord trace={drawn[0].trace} lift={drawn[0].trace.exhaustLift} word="exhaust" toX={toX} y={bottom - 5} />
          <LiftWord trace={drawn[0].trace} lift={drawn[0].trace.intakeLift} word="intake" toX={toX} y={bottom - 5} />
        </g>
      )}
      <line className="valve-axis" x1={LEFT} x2={right} y1={bottom} y2={bottom} />
      {angleTicks(view, Math.max(3, Math.floor((right - LEFT) / 46))).map((angle) => (
        <g key={angle}>
          <line className="valve-axis" x1={toX(angle)} x2={toX(angle)} y1={bottom} y2={bottom + 4} />
          <text className="valve-across" x={toX(angle)} y={bottom + 13}>
            {angleText(angle)}
          </text>
          {deadCentre(angle) && (
            <text className="valve-dead" x={toX(angle)} y={bottom + 26}>
              {deadCentre(angle)}
            </text>
          )}
        </g>
      ))}
      <text className="valve-across" x={(LEFT + right) / 2} y={height - 7}>
        {right - LEFT > 420
          ? 'crank angle from top dead centre of the exhaust stroke'
          : 'crank angle, exhaust TDC at 0'}
      </text>
      {arrivals
        .filter(({ angle }) => angle >= view.from && angle <= view.to)
        .map(({ key, angle, suction, words }) => (
          <g key={key} className="valve-arrival" data-suction={suction}>
            <title>{words}</title>
            <path d={`M${toX(angle)} ${pressureTop + 1}l-5 -9h10z`} />
            <line x1={toX(angle)} x2={toX(angle)} y1={pressureTop} y2={pressureTop + tallest} />
          </g>
        ))}
      {steps
        .filter(({ angle }) => angle >= view.from && angle <= view.to)
        .map(({ key, angle, words }) => (
          <path key={key} className="face-step" d={`M${toX(angle) - 5} ${pressureTop + tallest - 1}l5 -7l5 7`}>
            <title>{words}</title>
          </path>
        ))}
      {cursor !== null && cursor >= view.from && cursor <= view.to && (
        <line className="valve-cursor" x1={toX(cursor)} x2={toX(cursor)} y1={pressureTop - 4} y2={bottom} />
      )}
    </svg>
  );
}

/** Empty paths are written so that no renderer complains. */
const within = (d: string): string => d || 'M0 0';

/** Closed shapes between the zero line and what flows the wrong way. */
function reversed(
  trace: CylinderTrace,
  flow: Float32Array,
  toX: (a: number) => number,
  toY: (g: number) => number,
): string {
  let [d, open] = ['', false];
  const zero = toY(0).toFixed(1);
  trace.angle.forEach((angle, k) => {
    const grams = flow[k]! * GRAMS;
    if (grams < 0) {
      const [x, y] = [toX(angle).toFixed(1), toY(grams).toFixed(1)];
      d += open ? `L${x} ${y}` : `M${x} ${zero}L${x} ${y}`;
      open = true;
    } else if (open) {
      d += `L${toX(angle).toFixed(1)} ${zero}Z`;
      open = false;
    }
  });
  return open ? `${d}V${zero}Z` : d;
}

type WordProps = {
  readonly trace: CylinderTrace;
  readonly lift: Float32Array;
  readonly word: string;
  readonly toX: (angle: number) => number;
  readonly y: number;
};

function LiftWord({ trace, lift, word, toX, y }: WordProps) {
  let best = 0;
  lift.forEach((value, k) => {
    if (value > lift[best]!) best = k;
  });
  return (
    <text x={toX(trace.angle[best]!)} y={y}>
      {word}
    </text>
  );
}
