/** Which sizes would do better: a study over lengths and bores of the primaries, drawn as a map; a size on it can be taken into the design. */
import { useEffect, useMemo, useState } from 'react';
import { DesignError, type Refusal } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';
import type { Team } from '../../../pulse/forecast/job';
import { sizesIn } from '../../../pulse/forecast/study';
import { speedsError } from '../../../pulse/forecast/studyDoubt';
import { gridError } from '../../../pulse/forecast/studyRank';
import { keyOf } from '../../../pulse/forecast/studySizes';
import { engineOf } from '../../../pulse/forecast/subject';
import { documents, useDocument } from '../../document';
import { applyEdit } from '../../inspect/applyEdit';
import { MapFace } from '../map/MapFace';
import type { MapNow } from '../map/types';
import { numberText } from '../quantities';
import { Refusals } from '../Refusals';
import { choose, comparePair, ownCrew, turnTo } from '../shown';
import { ChoiceForm } from './ChoiceForm';
import { choiceOf, useChoice } from './choice';
import { endIfOther, goOn, timeLeft } from './goingOn';
import { keeping } from './keeping';
import { mapOf, nowOf } from './mapOf';
import { type Ahead, outlook } from './outlook';
import { planOf, recallStudy, stopStudy, useStudy } from './study';
import { takeSize } from './takeSize';
import { wishOf } from './wish';

/** A worker each follows. */
const CORES = globalThis.navigator?.hardwareConcurrency || 1;

/** Asked for last, it comes before curves that are still refined. */
const first: Team = { follow: (jobs, tell, stopped) => ownCrew().ahead(jobs, tell, stopped) };

export function SizesFace() {
  const design = useDocument((s) => s.settled);
  const id = useDocument((s) => s.id);
  const study = useStudy();
  const [agreed, setAgreed] = useState<string | null>(null);
  const [choosing, setChoosing] = useState(false);
  // What is laid out is balanced to a size that is taken before that is a step: until then the design is the one before.
  const balancing = useDocument((s) => s.gesture !== null);
  const choice = useChoice((s) => choiceOf(s, id));
  const wish = useMemo(() => {
    if (!design) return null;
    try {
      return wishOf(id, design, choice);
    } catch (error) {
      if (!(error instanceof DesignError)) throw error;
      return error.problems;
    }
  }, [id, design, choice]);
  const asked = wish && 'sizes' in wish ? wish : null;
  const refusals: readonly Refusal[] = wish && !('sizes' in wish) ? wish : [];
  // Another engine or another way of gas is another study.
  useEffect(() => {
    endIfOther(id, design);
    if (asked && !useStudy.getState().running) void recallStudy(asked, keeping);
  }, [asked, id, design]);
  const arrangements = useMemo(
    () => (study.found && asked ? mapOf(study.found, asked.design, asked.engine) : []),
    [study.found, asked],
  );
  const error = useMemo(() => study.found && gridError(study.found), [study.found]);
  const bySpeeds = useMemo(() => study.found && speedsError(study.found), [study.found]);
  if (!asked) {
    // What was chosen may be why: it can be chosen otherwise here.
    const engine =
      design && Object.keys(choice).length + refusals.filter(isOfChoice).length > 0 ? engineIn(design) : null;
    return (
      <section className="gain-none" aria-label="Sizes">
        <p>No sizes can be tried yet:</p>
        <Refusals refusals={refusals} />
        {design && engine && <ChoiceForm id={id} design={design} engine={engine} choice={choice} sizes={[]} />}
      </section>
    );
  }
  // Where the band is narrow there may be fewer than asked for.
  const speeds = planOf(asked).speeds.length;
  const ahead = outlook(asked.sizes.length, speeds, study.done, asked.engine.cylinders.length, CORES);
  const tried = new Set(asked.sizes.map(keyOf));
  const keptBeside = sizesIn(study.found?.answers ?? {}).filter((key) => !tried.has(key)).length;
  const left = study.running && !study.checking ? timeLeft(study.done, study.all) : null;
  const take = ({ length, bore, arrangement, outlet }: MapNow) => {
    const near = (a: number, b: number) => Math.abs(a - b) < 1e-6;
    const size = asked.sizes.find(
      (s) =>
        s.arrangement === arrangement &&
        near(s.length / 1000, length) &&
        near((s.outsideDiameter - 2 * s.wall) / 1000, bore) &&
        near((s.outlet ?? 0) / 1000, outlet ?? 0),
    );
    if (!size) return;
    let said = '';
    const refused = applyEdit((d) => {
      const taken = takeSize(d, asked.engine, size);
      said = taken.said;
      return taken.edited;
    }, 'Take a size from the map');
    setAgreed(refused ?? said);
    const { settled } = documents.store.getState();
    if (refused === null && settled) choose('sketch', true, settled);
  };
  return (
    <section className="gain-sizes" aria-label="Sizes">
      <div className="gain-sizes-bar">
        <p>
          <b>{asked.sizes.length}</b> sizes at {speeds} speeds each, on coarse cells, for ranking them.{' '}
          {!study.running && <AheadWords ahead={ahead} kept={keptBeside} />}{' '}
          <span className="quiet">A sketch stands for each: bends and places are not in it.</span>
        </p>
        <div className="gain-run-state">
          {(study.running || (study.done > 0 && study.done < study.all)) && (
            <>
              <progress aria-label="Sizes followed so far" max={Math.max(1, study.all)} value={study.done} />
              <span className="gain-count">
                {study.done} <span className="quiet">of {study.all}</span>
                {left && <span className="quiet">, {left} left</span>}
              </span>
            </>
          )}
          <button type="button" className="button" aria-expanded={choosing} onClick={() => setChoosing(!choosing)}>
            What to try
          </button>
          <button
            type="button"
            className={`button${study.running || (study.done > 0 && study.done === study.all) ? '' : ' strong'}`}
            onClick={() => (study.running ? stopStudy() : void goOn(asked, first, keeping))}
          >
            {study.running
              ? 'Stop'
              : study.done === 0
                ? 'Try the sizes'
                : study.done < study.all
                  ? 'Go on'
                  : 'Check again'}
          </button>
        </div>
      </div>
      {choosing && (
        <ChoiceForm id={id} design={asked.design} engine={asked.engine} choice={choice} sizes={asked.sizes} />
      )}
      <div className="gain-sizes-notes" role="status">
        {study.trouble && <p className="fails">{study.trouble}</p>}
        {study.checking && <p>The best, the middle and the worst size are followed again on fine cells…</p>}
        {error && (
          <p>
            Fine cells move the checked sizes apart by up to {numberText(error.spread, 1)} N m
            {error.keepsOrder ? ' and keep their order' : ' and change their order'}.
            {bySpeeds && (
              <>
                {' '}
                Over every second speed alone, sizes move {numberText(bySpeeds.spread, 1)} N m from each other: few
                speeds may put that much wrong, mostly less.
              </>
            )}
          </p>
        )}
        {agreed && (
          <p>
            {agreed} {balancing && <b>Balancing the header… </b>}
            <button type="button" className="button small" onClick={seeCurve}>
              See its curve
            </button>
          </p>
        )}
      </div>
      {study.found && study.done > 0 ? (
        <div className="gain-map">
          <MapFace
            arrangements={arrangements}
            band={study.found.band}
            coarseError={error?.spread ?? null}
            speedsError={bySpeeds?.spread ?? null}
            now={nowOf(asked.design)}
            onChoose={take}
          />
        </div>
      ) : (
        <p className="gain-none quiet">
          {study.running ? 'The first sizes come in a moment…' : 'No sizes were tried yet for this engine.'}
        </p>
      )}
    </section>
  );
}

/** Beside what it is to do better than. */
function seeCurve(): void {
  comparePair('sketch', 'header');
  turnTo('curve');
}

const isOfChoice = ({ path }: Refusal): boolean => path.startsWith('study/');

function engineIn(design: Design) {
  try {
    return engineOf(design).engine;
  } catch (error) {
    if (error instanceof DesignError) return null;
    throw error;
  }
}

/** What is to be followed and about how long that takes, and what of earlier studies is used again or kept. */
function AheadWords({ ahead, kept }: { readonly ahead: Ahead; readonly kept: number }) {
  const { coarse, fine, known, time, isGuess } = ahead;
  return (
    <>
      {coarse === 0 ? (
        'All of them have been followed.'
      ) : (
        <>
          {known > 0 && `${known} of ${known + coarse} runs are known from before. `}
          {coarse} runs{known > 0 && ' more'}, then {fine} on fine cells: {time}
          {isGuess && ', a guess until some were followed here'}.
        </>
      )}
      {kept > 0 && ` What was found of ${kept} other ${kept === 1 ? 'size' : 'sizes'} is kept.`}
    </>
  );
}
