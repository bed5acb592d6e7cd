/** The least gaps as a list, tightest first, each a click from its place; and the switch that colours tubes by them. */
import './gaps.css';
import { useState } from 'react';
import { useDisplay } from '../../actions/display';
import { lengthNumber } from '../../format';
import { Length } from '../../parts/Length';
import { useAnswers } from '../answers';
import { type GapRow, gapRows } from '../gapRows';
import { goTo, light, unlight } from '../go';
import { useRoomLook } from '../look';
import { poseWords } from '../poseWords';
import { refOf } from '../refOf';
import { Legend } from './Legend';
import { MarginBar } from './MarginBar';
import { type Of, Pending, Section, Switch } from './Section';

/** What a glance takes in; the rest is a click away. */
const FIRST = 8;

export function GapSection({ header }: Of) {
  const known = useAnswers((s) => s.gaps);
  const tinted = useRoomLook((s) => s.tinted);
  const set = useRoomLook((s) => s.set);
  const display = useDisplay();
  const rows = known.value ? gapRows(known.value) : [];
  const clashes = rows.filter(({ gap }) => gap.margin < 0).length;
  const [least] = rows;
  const says = !least
    ? undefined
    : clashes > 0
      ? `${clashes} too close`
      : `${lengthNumber(least.gap.margin, display)} ${display} to spare`;
  return (
    <Section section="gaps" name="Gaps" says={says} fails={clashes > 0} known={known}>
      <Switch on={tinted} name="Colour tubes by room" onSwitch={(on) => set({ tinted: on })} />
      {tinted && <Legend />}
      <Pending known={known} what="Measuring" />
      {known.value && rows.length === 0 && <p className="quiet">Nothing is near the header.</p>}
      {rows.length > 0 && <GapTable rows={rows} header={header} />}
    </Section>
  );
}

function GapTable({ rows, header }: { readonly rows: readonly GapRow[]; readonly header: Of['header'] }) {
  const [all, setAll] = useState(false);
  const display = useDisplay();
  const shown = all ? rows : rows.slice(0, FIRST);
  return (
    <>
      <table className="room-gaps">
        <thead>
          <tr>
            <th scope="col">Between</th>
            <th scope="col" className="right">
              Gap <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Needs <span className="unit">{display}</span>
            </th>
            <th scope="col">
              <span className="unseen">To spare</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <Row key={row.key} row={row} header={header} />
          ))}
        </tbody>
      </table>
      {rows.length > FIRST && (
        <button type="button" className="link" onClick={() => setAll(!all)}>
          {all ? 'Only the least' : `All ${rows.length}`}
        </button>
      )}
    </>
  );
}

function Row({ row: { key, gap }, header }: { readonly row: GapRow; readonly header: Of['header'] }) {
  const [first, second] = gap.between;
  const refs = [refOf(header, first), refOf(header, second)] as const;
  const pose = poseWords(gap.pose);
  // Its dimension line stands there; the mark is for what fails.
  const go = () => goTo(gap.at, refs, undefined, gap.margin < 0);
  const point = () => {
    useRoomLook.getState().set({ pointedGap: key });
    light(refs[0], refs[1]);
  };
  const leave = () => {
    if (useRoomLook.getState().pointedGap === key) useRoomLook.getState().set({ pointedGap: null });
    unlight();
  };
  return (
    <tr className="pick" onPointerEnter={point} onPointerLeave={leave} onClick={go}>
      <th scope="row">
        <button
          type="button"
          className="room-go"
          title="Look at it"
          onFocus={point}
          onBlur={leave}
          onClick={(event) => {
            event.stopPropagation();
            go();
          }}
        >
          {first} <span className="quiet">to</span> {second}
        </button>
        {pose !== '' && <span className="room-pose">at {pose}</span>}
      </th>
      <td className={`right${gap.margin < 0 ? ' fails' : ''}`}>
        <Length mm={gap.gap} bare />
      </td>
      <td className="right">
        <Length mm={gap.required} bare />
      </td>
      <td>
        <MarginBar margin={gap.margin} />
      </td>
    </tr>
  );
}
