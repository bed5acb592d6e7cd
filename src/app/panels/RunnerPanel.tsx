/** Every runner's length, how far off it is, and how much bending it takes. */
import { memo } from 'react';
import { useDisplay } from '../actions/display';
import { unrolled } from '../derived';
import { Angle } from '../parts/Angle';
import { Length } from '../parts/Length';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { litClass, pointing, useLit } from '../parts/usePointing';
import type { Strip } from '../rack/strip';
import { useShownEndGroups, useShownHeader } from '../route/shown';
import { Icon } from './Icon';
import { RunnerToggles } from './RunnerToggles';
import { CANNOT_BE_MADE, cannotBeMade } from './TubeNote';

export function RunnerPanel() {
  const header = useShownHeader();
  const groups = useShownEndGroups();
  const display = useDisplay();
  if (!header) return null;
  const ends = new Map(groups.flatMap((g) => g.ends.map((e) => [e.id, e] as const)));
  return (
    <section className="panel" aria-label="Runners">
      <table>
        <caption>Runners</caption>
        <thead>
          <tr>
            <th scope="col">Runner</th>
            <th scope="col" className="right">
              Length <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Off <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Bends
            </th>
            <th scope="col" className="right">
              Turned
            </th>
            <th scope="col">
              <span className="unseen">Locked and hidden</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {header.runners.map((runner) => {
            const { id } = runner.runner;
            const { deviation, outside } = ends.get(id)!;
            return (
              <Row
                key={id}
                strip={unrolled(runner)}
                deviation={deviation}
                outside={outside}
                missing={cannotBeMade(header, runner)}
              />
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

type RowProps = {
  readonly strip: Strip;
  readonly deviation: number | null;
  readonly outside: boolean;
  /** Its tube cannot be made. */
  readonly missing: boolean;
};

/** Drawn anew only where its own numbers change, and not when a neighbour moves. */
const Row = memo(function Row({ strip, deviation, outside, missing }: RowProps) {
  const ref = { kind: 'runner', id: strip.id } as const;
  const lit = useLit(ref);
  const paint = usePaints().get(strip.id);
  const angles = strip.pieces.flatMap((piece) => (piece.kind === 'bend' ? [piece.angle] : []));
  return (
    <tr className={`pick${litClass(lit)}`} tabIndex={0} aria-selected={lit.selected} {...pointing(ref)}>
      <th scope="row">
        {paint && <Swatch paint={paint} />} {strip.id}
        {missing && (
          <span className="fails" title={`${CANNOT_BE_MADE}: see Parts`}>
            {' '}
            <Icon name="warn" />
            <span className="unseen">{CANNOT_BE_MADE}: see Parts</span>
          </span>
        )}
      </th>
      {strip.length === null ? (
        <td colSpan={4} className="quiet">
          not laid yet
        </td>
      ) : (
        <>
          <td className="right">
            <Length mm={strip.length} decimals={3} bare />
          </td>
          <td className={`right${outside ? ' fails' : ''}`}>
            {deviation === null ? '' : <Length mm={deviation} decimals={3} signed bare />}
          </td>
          <td className="right">{angles.length}</td>
          <td className="right">
            <Angle degrees={angles.reduce((sum, angle) => sum + angle, 0)} />
          </td>
        </>
      )}
      <td className="toggles">
        <RunnerToggles id={strip.id} />
      </td>
    </tr>
  );
});
