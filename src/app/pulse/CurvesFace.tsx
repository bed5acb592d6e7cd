/** Each probe's values over time in one plot, told apart by dash and by the temper colours; the crosshair's instant is drawn in it. */
import { type CSSProperties, type PointerEvent, useMemo } from 'react';
import { type Paint, paintOf, useTheme } from '../colours';
import { Swatch } from '../parts/Swatch';
import { curvePath } from './curves';
import { gaugeOf, lengthUnit, type Quantity, timeUnit, valueText, withUnit, wordsFor } from './quantities';
import { between } from './sample';
import { roundRange, ticksIn, tickText } from './scale';
import { pointAt, type Seen, useShown } from './shown';
import { useSize } from './useSize';

const LEFT = 54;
const RIGHT = 12;
const TOP = 24;
const BOTTOM = 36;

export function CurvesFace({ seen }: { readonly seen: Seen }) {
  const { quantity, cursor } = useShown();
  const theme = useTheme();
  const [box, size] = useSize<HTMLDivElement>();
  const paints = useMemo(() => seen.run.probes.map((_, k) => paintOf(k, theme)), [seen, theme]);
  const none = whyNone(seen);
  return (
    <section className="waves-curves" aria-label="Probes over time">
      {none ? (
        <p className="quiet waves-none">{none}</p>
      ) : (
        <>
          <ul className="waves-probes" style={columnsFor(seen)}>
            {seen.run.probes.map((probe, k) => (
              <li key={`${probe.pipe} ${probe.x}`}>
                <Swatch paint={paints[k]!} />
                <span className="waves-probe" title={probe.pipe}>
                  {probe.pipe}
                </span>
                <span>
                  <span className="quiet">at</span> {probe.x.toFixed(3)}{' '}
                  <span className="unit">{lengthUnit(seen.rig).unit}</span>
                </span>
                {cursor && <ProbeValue seen={seen} probe={k} quantity={quantity} time={cursor.time} />}
              </li>
            ))}
          </ul>
          <div className="waves-plot" ref={box}>
            {size.width > 0 && size.height > 0 && (
              <Plot
                seen={seen}
                quantity={quantity}
                paints={paints}
                width={size.width}
                height={size.height}
                time={cursor?.time ?? null}
              />
            )}
          </div>
        </>
      )}
    </section>
  );
}

/** px of a line of its own beside the name: swatch, place, value. */
const BESIDE = 190;

/** As many columns as leave the longest name whole; where not even one does, it is cut short. */
function columnsFor({ run }: Seen): CSSProperties {
  const longest = Math.max(...run.probes.map(({ pipe }) => pipe.length));
  return { gridTemplateColumns: `repeat(auto-fill, minmax(min(100%, calc(${longest}ch + ${BESIDE}px)), 1fr))` };
}

function whyNone({ rig, run }: Seen): string | null {
  if (rig.probes.length === 0)
    return 'This rig names no probes. Add places to "probes" in its file, such as { "pipe": "a", "x": 0.5 }, and their values over time stand here.';
  if (rig.sample <= 0)
    return 'This rig takes no samples: give "sample" in its file a time above 0, such as 1e-5 s, and the probes’ values over time stand here.';
  return run.times.length === 0 ? 'No samples yet.' : null;
}

type ProbeValueProps = {
  readonly seen: Seen;
  readonly probe: number;
  readonly quantity: Quantity;
  readonly time: number;
};

function ProbeValue({ seen: { rig, run }, probe, quantity, time }: ProbeValueProps) {
  const { factor, unit } = wordsFor(quantity, rig);
  const { low, high, share } = between(run.times, time);
  const values = run.probes[probe]![quantity];
  if (values.length === 0) return null;
  const value = values[low]! + (values[high]! - values[low]!) * share;
  return (
    <span className="waves-value">
      {valueText(quantity, value * factor, gaugeOf(quantity, rig).decimals)} <span className="unit">{unit}</span>
    </span>
  );
}

type PlotProps = {
  readonly seen: Seen;
  readonly quantity: Quantity;
  readonly paints: readonly Paint[];
  readonly width: number;
  readonly height: number;
  readonly time: number | null;
};

function Plot({ seen: { rig, run, until }, quantity, paints, width, height, time }: PlotProps) {
  const { name, unit, factor, middle: middleWord } = wordsFor(quantity, rig);
  const { middle, least, decimals } = gaugeOf(quantity, rig);
  const [low, high] = useMemo(() => {
    let [least0, most] = [middle, middle];
    for (const probe of run.probes)
      for (const value of probe[quantity]) {
        if (value * factor < least0) least0 = value * factor;
        if (value * factor > most) most = value * factor;
      }
    return roundRange(least0, most, least);
  }, [run, quantity, factor, middle, least]);
  const clock = timeUnit(rig);
  const [inner, tall] = [width - LEFT - RIGHT, height - TOP - BOTTOM];
  const toX = (t: number) => LEFT + (t / until) * inner;
  const toY = (screen: number) => TOP + (1 - (screen - low) / (high - low)) * tall;
  const paths = useMemo(
    () =>
      run.probes.map((probe) =>
        curvePath(
          run.times,
          probe[quantity],
          (t) => LEFT + (t / until) * inner,
          (value) => TOP + (1 - (value * factor - low) / (high - low)) * tall,
        ),
      ),
    [run, quantity, until, factor, low, high, inner, tall],
  );
  const across = ticksIn(0, until * clock.factor, Math.max(2, Math.floor(inner / 64)));
  const up = ticksIn(low, high, Math.max(2, Math.floor(tall / 44)));
  const point = ({ currentTarget, clientX }: PointerEvent<SVGElement>) => {
    const { left } = currentTarget.getBoundingClientRect();
    const asked = Math.min(1, Math.max(0, (clientX - left - LEFT) / inner)) * until;
    const was = useShown.getState().cursor;
    const [probe] = run.probes;
    const pipe = Math.max(
      0,
      rig.pipes.findIndex(({ id }) => id === probe?.pipe),
    );
    const at = Math.min(asked, run.time);
    pointAt(was ? { ...was, time: at } : { pipe, x: probe?.x ?? 0, time: at });
  };
  return (
    <svg
      width={width}
      height={height}
      role="img"
      aria-label={`${name} of ${run.probes.length === 1 ? 'the probe' : `${run.probes.length} probes`} over time`}
      onPointerDown={point}
      onPointerMove={point}
    >
      {up.at.map((value) => (
        <g key={value}>
          <line className="waves-rule" x1={LEFT} x2={LEFT + inner} y1={toY(value)} y2={toY(value)} />
          <text x={LEFT - 7} y={toY(value)} className="waves-up">
            {valueText(quantity, value, up.decimals)}
          </text>
        </g>
      ))}
      {across.at.map((at) => (
        <g key={at}>
          <line
            className="waves-tick"
            x1={toX(at / clock.factor)}
            x2={toX(at / clock.factor)}
            y1={TOP + tall}
            y2={TOP + tall + 4}
          />
          <text x={toX(at / clock.factor)} y={TOP + tall + 13} className="waves-across">
            {tickText(at, across.decimals)}
          </text>
        </g>
      ))}
      <line className="waves-axis" x1={LEFT} x2={LEFT + inner} y1={TOP + tall} y2={TOP + tall} />
      <line className="waves-middle" x1={LEFT} x2={LEFT + inner} y1={toY(middle)} y2={toY(middle)} />
      <text x={0} y={9} className="waves-name">
        {withUnit(name, unit)}
      </text>
      <text x={LEFT + inner} y={9} className="waves-middle-word">
        dotted: {middleWord}
        {middle === 0 ? '' : ` ${valueText(quantity, middle, Math.max(0, decimals - 1))}`}
      </text>
      <text x={LEFT + inner / 2} y={height - 6} className="waves-across">
        {withUnit('time', clock.unit)}
      </text>
      {paths.map((d, k) => (
        <path
          key={`${run.probes[k]!.pipe} ${run.probes[k]!.x}`}
          d={d}
          fill="none"
          stroke={paints[k]!.colour}
          strokeWidth={1.8}
          strokeDasharray={paints[k]!.dash.map((part) => part * 1.8).join(' ')}
          strokeLinejoin="round"
        />
      ))}
      {time !== null && <line className="waves-now" x1={toX(time)} x2={toX(time)} y1={TOP} y2={TOP + tall} />}
    </svg>
  );
}
