/** A runner that is bent: the machine's numbers from either end, which end can be clamped, where a split would help. */
import type { Header } from '../../../../geometry';
import { bendNumbers } from '../../../shop/making/bent/numbers';
import type { BentTube, MachineRow, Thinned } from '../../../shop/making/report';
import { useDisplay } from '../../actions/display';
import { lengthNumber } from '../../format';
import { Angle } from '../../parts/Angle';
import { Length } from '../../parts/Length';
import { splitRunner } from '../edits';
import { useMakeLook } from '../look';
import { roundingWords } from '../words';
import { Remarks } from './Remarks';

type Props = { readonly runner: string; readonly tubes: readonly BentTube[]; readonly header: Header };

export function BentView({ runner, tubes, header }: Props) {
  const fromEnd = useMakeLook((s) => s.fromEnd);
  const set = useMakeLook((s) => s.set);
  return (
    <>
      <Splits runner={runner} tubes={tubes} header={header} />
      <div className="make-ends" role="toolbar" aria-label="Bent from">
        <span className="quiet">Bent from its</span>
        {[false, true].map((end) => (
          <button
            key={String(end)}
            type="button"
            className="chip"
            aria-pressed={fromEnd === end}
            onClick={() => set({ fromEnd: end })}
          >
            {end ? 'end' : 'start'}
          </button>
        ))}
      </div>
      {tubes.map((tube) => (
        <Tube key={tube.id} tube={tube} fromEnd={fromEnd} />
      ))}
    </>
  );
}

function Splits({ runner, tubes, header }: Props) {
  const taken = header.design.runners.find(({ id }) => id === runner)?.splits ?? [];
  const offered = [...new Set(tubes.flatMap((tube) => tube.offered))].filter((bend) => !taken.includes(bend));
  if (taken.length === 0 && offered.length === 0) return null;
  return (
    <div className="make-splits">
      {offered.map((bend) => (
        <button key={bend} type="button" className="button small" onClick={() => splitRunner(runner, [...taken, bend])}>
          Split before bend {bend}
        </button>
      ))}
      {taken.map((bend) => (
        <button
          key={bend}
          type="button"
          className="button small"
          onClick={() =>
            splitRunner(
              runner,
              taken.filter((other) => other !== bend),
            )
          }
        >
          Join again at bend {bend}
        </button>
      ))}
      {offered.length > 0 && (
        <p className="note">Made of two tubes that are welded together there, every bend can be clamped.</p>
      )}
    </div>
  );
}

function Tube({ tube, fromEnd }: { readonly tube: BentTube; readonly fromEnd: boolean }) {
  const display = useDisplay();
  const rows = fromEnd ? tube.fromEnd : tube.fromStart;
  const numbers = bendNumbers(tube, fromEnd ? 'end' : 'start');
  const clamps = fromEnd ? tube.clampable.fromEnd : tube.clampable.fromStart;
  const other = fromEnd ? tube.clampable.fromStart : tube.clampable.fromEnd;
  const say = (mm: number) => `${lengthNumber(mm, display, 1)} ${display}`;
  return (
    <div className="make-bent">
      <h3>
        Tube {tube.id} <span className="quiet">saw {say(tube.cutLength)}</span>
      </h3>
      <p className={clamps ? 'quiet' : 'fails'}>
        {clamps
          ? 'Every bend can be clamped from this end.'
          : other
            ? 'Not every bend can be clamped from this end; from the other they can.'
            : 'Not every bend can be clamped, from this end or the other.'}
        {tube.trimStart > 0 && ` Trim ${say(tube.trimStart)} off its start.`}
        {tube.trimEnd > 0 && ` Trim ${say(tube.trimEnd)} off its end.`}
      </p>
      <Remarks remarks={tube.remarks} label={`About ${tube.id}`} />
      <table className="make-machine" aria-label={`Machine rows of ${tube.id}`}>
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="right">
              Mark <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Feed <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Dial
            </th>
            <th scope="col" className="right" title="With what springs back">
              Set
            </th>
            <th scope="col" className="right" title="Straight there is ahead of the bend for the clamp">
              Grip <span className="unit">{display}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a bend is its place in the list
            <Row key={i} row={row} number={numbers[i]} />
          ))}
        </tbody>
      </table>
      {tube.thinned.length > 0 && <Thinning thinned={tube.thinned} />}
      <p className="note">{roundingWords(tube.rounded, say)}</p>
    </div>
  );
}

function Row({ row, number }: { readonly row: MachineRow; readonly number: number | undefined }) {
  if (row.angle === 0)
    return (
      <tr className="make-turn">
        <th scope="row">
          <span className="quiet">then</span>
        </th>
        <td colSpan={5}>
          <Length mm={row.length} decimals={1} /> straight
        </td>
      </tr>
    );
  return (
    <tr>
      <th scope="row">{number}</th>
      <td className="right">
        <Length mm={row.mark} decimals={1} bare />
      </td>
      <td className="right">
        <Length mm={row.feed} decimals={1} bare />
      </td>
      <td className="right">
        <Angle degrees={row.dial} />
      </td>
      <td className="right">
        <Angle degrees={row.set} />
      </td>
      <td className={`right${row.clamps ? '' : ' fails'}`}>
        <Length mm={row.grip} decimals={1} bare />
      </td>
    </tr>
  );
}

function Thinning({ thinned }: { readonly thinned: readonly Thinned[] }) {
  const display = useDisplay();
  return (
    <details className="room-details">
      <summary>
        Wall on the outside of bends{' '}
        <span className="quiet">
          least {lengthNumber(Math.min(...thinned.map(({ wall }) => wall)), display, 2)} {display}
        </span>
      </summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="right">
              Left <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Thinner <span className="unit">%</span>
            </th>
            <th scope="col" className="right">
              Out of round <span className="unit">{display}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {thinned.map((t) => (
            <tr key={t.bend}>
              <th scope="row">{t.bend}</th>
              <td className="right">
                <Length mm={t.wall} bare />
              </td>
              <td className="right number">{t.percent.toFixed(1)}</td>
              <td className="right">
                <Length mm={t.outOfRound} bare />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
