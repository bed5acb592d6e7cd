/** The play's controls over the picture: what plays, play and pause, where in the cycle, how fast, which colours mean what. */
import './motion.css';
import { useEffect, useLayoutEffect, useRef } from 'react';
import { useTheme } from '../../colours';
import { Icon } from '../../panels/Icon';
import { QUANTITIES, QUANTITY_KEYS, type Quantity } from '../../pulse/quantities';
import { angleText } from '../waves/angles';
import { WaveLegend } from '../waves/WaveLegend';
import { happeningAt } from './happening';
import { PACES, scrubTo, setPace, setPlaying, setQuantity, stopOnHeader, useMotion } from './state';
import { useWaved } from './useWaved';

/** Whoever has the keys on the bar when it goes, by Stop or by an edit, keeps them on the view that it lay over. */
function useKeysHandedOn(bar: { readonly current: HTMLElement | null }): void {
  useLayoutEffect(
    () => () => {
      if (bar.current?.contains(document.activeElement))
        bar.current.closest<HTMLElement>('.viewport')?.focus({ preventScroll: true });
    },
    [bar],
  );
}

/** Between the bar and what stands over it, px. */
const GAP = 8;

/** The picture, what stands at its foot, and the notices on a phone keep clear of the bar, however high its words make it. */
function useRoomMade(bar: { readonly current: HTMLElement | null }): void {
  useLayoutEffect(() => {
    const { style } = document.documentElement;
    const tell = (hidden: number) => {
      style.setProperty('--play-bar', `${hidden}px`);
      useMotion.setState({ hidden });
    };
    const observer = new ResizeObserver(() => bar.current && tell(bar.current.offsetHeight + GAP));
    if (bar.current) observer.observe(bar.current);
    return () => {
      observer.disconnect();
      tell(0);
    };
  }, [bar]);
}

export function MotionBar() {
  const { run, angle, playing, pace, quantity } = useMotion();
  const theme = useTheme();
  const waved = useWaved();
  const bar = useRef<HTMLElement>(null);
  const play = useRef<HTMLButtonElement>(null);
  useRoomMade(bar);
  useKeysHandedOn(bar);
  // The page that asked for it has closed: the keys go on here.
  useEffect(() => play.current?.focus(), []);
  if (!run || !waved) return null;
  const { fired, exhausting, overlapping } = happeningAt(run.engine, angle);
  const slower = (degrees: number) => Math.round((6 * run.answer.rpm) / degrees);
  return (
    <section ref={bar} className="motion-bar" aria-label="Waves in the tubes">
      <div className="motion-row">
        <div className="motion-head">
          <b className="motion-name">
            {run.name}, {run.answer.rpm.toFixed(0)} <span className="unit">rpm</span>
          </b>
          <span className="motion-now">
            <span className="motion-spare">cylinder </span>
            {fired} fired last · exhaust open: {exhausting.join(', ') || 'none'}
            {overlapping.length > 0 && ` · overlap: ${overlapping.join(', ')}`}
          </span>
        </div>
        <button type="button" className="button icon" aria-label="Stop" title="Stop" onClick={stopOnHeader}>
          <Icon name="close" />
        </button>
      </div>
      <div className="motion-row">
        <button ref={play} type="button" className="button" aria-pressed={playing} onClick={() => setPlaying(!playing)}>
          {playing ? 'Pause' : 'Play'}
        </button>
        <input
          type="range"
          aria-label="Crank angle"
          aria-valuetext={`${angleText(angle)} after cylinder ${run.engine.firingOrder[0]}’s exhaust top dead centre`}
          min={-360}
          max={360}
          step={1}
          value={Math.round(angle)}
          onChange={({ target }) => scrubTo(Number(target.value))}
        />
        <span className="motion-angle">
          {angleText(Math.round(angle))} <span className="unit">of cylinder {run.engine.firingOrder[0]}</span>
        </span>
      </div>
      <div className="motion-row motion-looks">
        <label>
          <span className="unseen">Shown</span>
          <select value={quantity} onChange={({ target }) => setQuantity(target.value as Quantity)}>
            {QUANTITY_KEYS.map((key) => (
              <option key={key} value={key}>
                {QUANTITIES[key].name}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span className="unseen">Pace</span>
          <select value={pace} onChange={({ target }) => setPace(Number(target.value))}>
            {PACES.map((degrees) => (
              <option key={degrees} value={degrees}>
                1/{slower(degrees)} of real speed
              </option>
            ))}
          </select>
        </label>
        <WaveLegend spread={waved.spread} theme={theme} quantity={quantity} on="view" />
      </div>
    </section>
  );
}
