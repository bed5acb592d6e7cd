/** Layouts beside each other, one to a row, and the header as it is now for comparison; the row chosen is drawn. */
import { useMemo } from 'react';
import { type CheckReport, massOfAll } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { useDisplay } from '../actions/display';
import { useReport } from '../derived';
import { angleNumber } from '../format';
import { Length } from '../parts/Length';
import { choose, point, type Search, useLay } from './state';
import { inletWords } from './words';

type Numbers = {
  readonly bends: number;
  readonly angle: number;
  readonly margin: number;
  readonly mass: number | null;
};

export function LayTable({ search }: { readonly search: Search }) {
  const display = useDisplay();
  const chosen = useLay((s) => s.chosen);
  const { layouts } = search.harvest;
  const words = useMemo(() => inletWords(layouts.map((l) => l.design)), [layouts]);
  const now = useNow(search.from);
  return (
    <>
      <table className="lay-table">
        <caption className="unseen">Layouts</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Layout</span>
            </th>
            <th scope="col" className="right">
              Bends
            </th>
            <th scope="col" className="right">
              Turned
            </th>
            <th scope="col" className="right" title="What the tightest place has beyond what the rules ask">
              Least room <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Mass <span className="unit">kg</span>
            </th>
          </tr>
        </thead>
        {layouts.map((layout, i) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: by keys the row's own button is pressed
          <tbody
            // biome-ignore lint/suspicious/noArrayIndexKey: a layout is known by its place among the others
            key={i}
            className={i === chosen ? 'selected' : undefined}
            // Moved, and not entered: a table that comes up under a pointer at rest is not pointed at.
            onPointerMove={() => point(i)}
            onPointerLeave={() => point(null)}
            onClick={() => choose(i)}
          >
            <tr className={`pick${i === chosen ? ' selected' : ''}`}>
              <th scope="row">
                <label>
                  <input
                    type="radio"
                    name="layout"
                    checked={i === chosen}
                    onChange={() => choose(i)}
                    data-first={layouts.length > 1 && i === chosen ? true : undefined}
                  />
                  <span className="unseen">Layout </span>
                  {i + 1}
                </label>
              </th>
              <Cells {...layout} mass={massOfAll(layout.design, layout.report.runners)} />
            </tr>
            {words.each[i] && (
              <tr className={`lay-inlets${i === chosen ? ' selected' : ''}`}>
                <td colSpan={5}>Inlets {words.each[i]}</td>
              </tr>
            )}
          </tbody>
        ))}
        {now && (
          <tbody className="lay-now">
            <tr>
              <th scope="row">Now</th>
              <Cells {...now} />
            </tr>
          </tbody>
        )}
      </table>
      {words.alike && (
        <p className="quiet">
          Inlets in order{layouts.length > 1 ? ', alike in all' : ''}: {words.alike}.
        </p>
      )}
    </>
  );
}

function Cells({ bends, angle, margin, mass }: Numbers) {
  return (
    <>
      <td className="right">{bends}</td>
      <td className="right">
        {angleNumber(angle)}
        <span className="unit">°</span>
      </td>
      <td className="right">{Number.isFinite(margin) ? <Length mm={margin} bare /> : '–'}</td>
      <td className="right">{mass === null ? '–' : angleNumber(mass, 3)}</td>
    </>
  );
}

/** The header as it is, where every runner of it is laid. */
function useNow(from: Design): Numbers | null {
  const report = useReport((s) => (s.of === from ? s.report : null));
  return useMemo(() => report && numbersOf(from, report), [from, report]);
}

function numbersOf(design: Design, { runners, clearance }: CheckReport): Numbers | null {
  if (runners.length < design.runners.length) return null;
  const margins = Object.values(clearance).map((m) => m?.margin ?? Number.POSITIVE_INFINITY);
  return {
    bends: runners.reduce((sum, r) => sum + r.bends, 0),
    angle: runners.reduce((sum, r) => sum + r.angles.reduce((a, b) => a + b, 0), 0),
    margin: Math.min(...margins),
    mass: massOfAll(design, runners),
  };
}
