/**
 * The engine on the header: what torque it gives over its speeds, beside the cast manifold or whatever else it could breathe
 * through; what the waves do at the valves and in the pipes; which sizes would do better; and the engine itself.
 */
import './forecast.css';
import './forecastFaces.css';
import './forecastPhone.css';
import { useEffect, useState } from 'react';
import { documents, useDocument } from '../document';
import { Icon } from '../panels/Icon';
import { calibrationShort, calibrationWords } from './calibration';
import { CurveFace } from './curve/CurveFace';
import { DetailFace } from './detail/DetailFace';
import { EngineFace } from './engine/EngineFace';
import { stopFit, useFit } from './engine/fit';
import { browserGround } from './ground';
import { countFinal, countTold, isWhole } from './runs';
import { type Face, followMissing, halt, leave, lookAt, standOn, turnTo, useShown } from './shown';
import { useStudyGoingOn } from './sizes/goingOn';
import { SizesFace } from './sizes/SizesFace';
import { useStudy } from './sizes/study';
import { closeForecast } from './state';
import { TrustSheet } from './TrustSheet';
import { useUndoKeys } from './useUndoKeys';
import { ValveFace } from './waves/ValveFace';
import { WaveFace } from './waves/WaveFace';

const FACES: readonly { readonly key: Face; readonly label: string }[] = [
  { key: 'curve', label: 'Curves' },
  { key: 'valves', label: 'At the valves' },
  { key: 'waves', label: 'In the pipes' },
  { key: 'sizes', label: 'Sizes' },
  { key: 'engine', label: 'Engine' },
];

/** Follows what is missing once the design rests: never in the middle of a gesture. */
function useFollowing(): void {
  const settled = useDocument((s) => s.settled);
  useEffect(() => {
    standOn(browserGround);
    if (!settled) return;
    lookAt(settled);
    if (!useShown.getState().halted) followMissing();
  }, [settled]);
  // What is not looked at needs no core.
  useEffect(
    () => () => {
      stopFit();
      leave();
    },
    [],
  );
}

export function ForecastPage() {
  useFollowing();
  useUndoKeys();
  useStudyGoingOn();
  const face = useShown((s) => s.face);
  const [trust, setTrust] = useState(false);
  const title = useDocument((s) => s.design?.title || s.fileName);
  const last = useFit((s) => s.last);
  const calibrated = useDocument((s) => calibrationShort(s.settled?.engine));
  const calibration = useDocument((s) => calibrationWords(s.settled?.engine, last));
  return (
    <div className="gain-page" data-face={face}>
      <header className="gain-top">
        <button type="button" className="button" onClick={closeForecast}>
          <Icon name="close" /> Close
        </button>
        <div className="gain-title">
          <h1>What the header gains</h1>
          <span className="quiet">{title}</span>
        </div>
        <nav className="gain-faces" aria-label="Face">
          {FACES.map(({ key, label }) => (
            <button key={key} type="button" aria-pressed={face === key} onClick={() => turnTo(key)}>
              {label}
            </button>
          ))}
        </nav>
        <RunState />
        <button
          type="button"
          className="button gain-trust-button"
          aria-expanded={trust}
          title={`${calibration}. What of this is to be trusted, and what is not`}
          onClick={() => setTrust(!trust)}
        >
          <span className="gain-calibrated">{calibrated}</span>
          <span>What to trust</span>
        </button>
      </header>
      <div className="gain-body">
        <main className="gain-face">
          {face === 'curve' && <CurveFace />}
          {face === 'valves' && <DetailFace label="At the valves">{(props) => <ValveFace {...props} />}</DetailFace>}
          {face === 'waves' && <DetailFace label="In the pipes">{(props) => <WaveFace {...props} />}</DetailFace>}
          {face === 'sizes' && <SizesFace />}
          {face === 'engine' && <EngineFace />}
        </main>
        {trust && <TrustSheet onClose={() => setTrust(false)} />}
      </div>
    </div>
  );
}

/** Of the work of a speed, what its coarse cells take. */
const COARSE_SHARE = 0.2;

/** How far it is and the way to end it; or what is missing and the way to go on. One button throughout, so that the keyboard keeps its place. */
function RunState() {
  const { runs, chosen, waiting, face } = useShown();
  const study = useStudy();
  const there = chosen.flatMap((kind) => runs.get(kind) ?? []);
  const all = there.reduce((sum, { speeds }) => sum + speeds.length, 0);
  // One progress and one way to end it at a time: the study comes before the curves, which wait for it.
  if (study.running)
    return face === 'sizes' ? null : (
      <button type="button" className="button" onClick={() => turnTo('sizes')}>
        Sizes: {study.done} <span className="quiet">of {study.all}</span>
      </button>
    );
  if (all === 0 || (there.every(isWhole) && waiting === 0)) return null;
  const [told, final] = [countTold(there), countFinal(there)];
  const press = () => {
    const { settled } = documents.store.getState();
    if (waiting > 0) halt();
    else if (settled) {
      lookAt(settled);
      followMissing();
    }
  };
  return (
    <div className="gain-run-state">
      <progress
        aria-label="Speeds followed so far"
        max={all}
        value={COARSE_SHARE * told + (1 - COARSE_SHARE) * final}
      />
      <span className="gain-count" title="Every speed is followed on coarse cells first, then again on fine ones">
        {told < all ? `${told} ` : `refined ${final} `}
        <span className="quiet">of {all}</span>
      </span>
      <button type="button" className="button" onClick={press}>
        {waiting > 0 ? 'Stop' : 'Go on'}
      </button>
    </div>
  );
}
