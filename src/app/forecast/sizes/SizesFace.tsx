/** Which sizes would do better: a study over lengths and bores of the primaries, drawn as a map; a size on it can be taken into the design. */
import { useEffect, useMemo, useState } from 'react';
import { DesignError, type Refusal } from '../../../../shared/design/refusal';
import type { Team } from '../../../pulse/forecast/job';
import { gridError } from '../../../pulse/forecast/studyRank';
import { documents, useDocument } from '../../document';
import { applyEdit } from '../../inspect/applyEdit';
import { MapFace } from '../map/MapFace';
import { numberText } from '../quantities';
import { Refusals } from '../Refusals';
import { choose, ownCrew, turnTo } from '../shown';
import { endIfOther, goOn, timeLeft } from './goingOn';
import { keeping } from './keeping';
import { mapOf, nowOf } from './mapOf';
import { recallStudy, stopStudy, useStudy } from './study';
import { takeSize } from './takeSize';
import { wishOf } from './wish';

/** Asked for last, it comes before curves that are still refined. */
const ahead: Team = { follow: (jobs, tell, stopped) => ownCrew().ahead(jobs, tell, stopped) };

export function SizesFace() {
  const design = useDocument((s) => s.settled);
  const id = useDocument((s) => s.id);
  const study = useStudy();
  const [agreed, setAgreed] = useState<string | null>(null);
  const wish = useMemo(() => {
    if (!design) return null;
    try {
      return wishOf(id, design);
    } catch (error) {
      if (!(error instanceof DesignError)) throw error;
      return error.problems;
    }
  }, [id, design]);
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
  if (!asked)
    return (
      <section className="gain-none" aria-label="Sizes">
        <p>No sizes can be tried yet:</p>
        <Refusals refusals={refusals} />
      </section>
    );
  const left = study.running && !study.checking ? timeLeft(study.done, study.all) : null;
  const take = ({ length, bore, arrangement }: { length: number; bore: number; arrangement: string }) => {
    const near = (a: number, b: number) => Math.abs(a - b) < 1e-6;
    const size = asked.sizes.find(
      (s) =>
        s.arrangement === arrangement &&
        near(s.length / 1000, length) &&
        near((s.outsideDiameter - 2 * s.wall) / 1000, bore),
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
          {asked.sizes.length} sizes of primaries at {asked.speeds} speeds each, on coarse cells, for ranking them. A
          sketch stands for each: bends and places are not in it.
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
          <button
            type="button"
            className={`button${study.running ? '' : ' strong'}`}
            onClick={() => (study.running ? stopStudy() : void goOn(asked, ahead, keeping))}
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
      <div className="gain-sizes-notes" role="status">
        {study.trouble && <p className="fails">{study.trouble}</p>}
        {study.checking && <p>The best, the middle and the worst size are followed again on fine cells…</p>}
        {error && (
          <p>
            Fine cells move the checked sizes apart by up to {numberText(error.spread, 1)} N m
            {error.keepsOrder ? ' and keep their order' : ' and change their order'}: sizes nearer than that are alike.
          </p>
        )}
        {agreed && (
          <p>
            {agreed}{' '}
            <button type="button" className="button small" onClick={() => turnTo('curve')}>
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
            now={nowOf(asked.design)}
            onChoose={take}
          />
        </div>
      ) : (
        <p className="gain-none quiet">
          {study.running ? 'The first sizes come in a moment…' : 'Nothing was tried yet for this engine.'}
        </p>
      )}
    </section>
  );
}
