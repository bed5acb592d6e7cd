/** Fasteners and service points: whether a tool reaches each, which, and what is in the way. */
import './reach.css';
import { useEffect } from 'react';
import type { AccessEntry } from '../../../../geometry';
import { REACH_WORDS, reachSummary, unreadWords } from '../../../shop/fitting/words';
import { SERVICE_ADDS } from '../../inspect/Outline';
import { useAnswers } from '../answers';
import { setAccess } from '../edits';
import { goTo, light, unlight } from '../go';
import { useRoomLook } from '../look';
import { refOf, refOfEntry } from '../refOf';
import { byUrgency, reachDetail, tryWords } from '../words';
import { AddChips } from './AddChips';
import { ReachMark } from './ReachMark';
import { type Of, Pending, Section, Switch } from './Section';
import { ToolsAtHand } from './ToolsAtHand';

const LOOK_RADIUS = 130;

export function ToolSection(of: Of) {
  const { design, header } = of;
  const known = useAnswers((s) => s.access);
  const entries = known.value?.entries ?? [];
  const not = entries.filter(({ reach }) => reach === 'blocked' || reach === 'before-wrapping').length;
  const required = design.access?.required ?? false;
  return (
    <Section
      section="tools"
      name="Tools"
      says={known.value && entries.length > 0 ? reachSummary(entries) : undefined}
      fails={not > 0 && required}
      known={known}
    >
      <Switch
        on={required}
        name="Everything must stay reachable"
        onSwitch={(on) =>
          setAccess({ required: on || undefined }, on ? 'Keep everything reachable' : 'Let tools be without room')
        }
      />
      <p className="note room-note">
        {required
          ? 'The check fails where something is not, and laying the header keeps room for tools.'
          : 'Told here only; the check and the laying of the header leave it alone.'}
      </p>
      <Pending known={known} what="Trying the tools" />
      {known.value && entries.length === 0 && (
        <p className="quiet">No flange here has a fastener, and no service point is given.</p>
      )}
      {known.value?.unread && <p className="fails">{unreadWords(known.value.unread)}</p>}
      <ul className="room-list" aria-label="To be reached">
        {byUrgency(entries).map((entry) => (
          <Entry key={entry.id} entry={entry} header={header} isWrapped={design.wrap !== undefined} />
        ))}
      </ul>
      <AddChips adds={SERVICE_ADDS} what="Add to reach" />
      <ToolsAtHand {...of} />
    </Section>
  );
}

type EntryProps = { readonly entry: AccessEntry; readonly header: Of['header']; readonly isWrapped: boolean };

function Entry({ entry, header, isWrapped }: EntryProps) {
  const chosen = useRoomLook((s) => s.entry === entry.id);
  const own = refOfEntry(entry);
  const inWay = entry.by[0] === undefined ? null : refOf(header, entry.by[0]);
  const pick = () => {
    const { showTool } = useRoomLook.getState();
    if (chosen) {
      showTool(null);
      return;
    }
    goTo(entry.at, [own, inWay], LOOK_RADIUS, false);
    showTool(entry.id);
  };
  return (
    <li className={chosen ? 'chosen' : undefined} onPointerEnter={() => light(own, inWay)} onPointerLeave={unlight}>
      <button type="button" className="room-entry" aria-expanded={chosen} onClick={pick}>
        <ReachMark reach={entry.reach} />
        <span className="room-entry-name">{entry.id}</span>
        <span className="room-entry-state">{REACH_WORDS[entry.reach]}</span>
        <span className="room-entry-detail">{reachDetail(entry)}</span>
      </button>
      {chosen && <Tries entry={entry} isWrapped={isWrapped} />}
    </li>
  );
}

/** Every tool that was tried there; each a click from its picture. */
function Tries({ entry, isWrapped }: { readonly entry: AccessEntry; readonly isWrapped: boolean }) {
  const tool = useRoomLook((s) => s.tool);
  const showTool = useRoomLook((s) => s.showTool);
  // Another answer may have other tools.
  useEffect(() => {
    if (tool !== null && !entry.tries[tool]) showTool(entry.id);
  }, [entry, tool, showTool]);
  return (
    <div className="room-tries">
      <p>{entry.message}</p>
      {entry.tries.length > 0 && (
        <ul aria-label="Tools tried">
          {entry.tries.map((one, i) => {
            const drawn = tool === null ? one.name === entry.best?.name : tool === i;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: two tries may have one name; the list is replaced as a whole
              <li key={i}>
                <button type="button" aria-pressed={drawn} onClick={() => showTool(entry.id, i)}>
                  <span>{one.name}</span> <span className="quiet">{tryWords(one, isWrapped)}</span>
                </button>
              </li>
            );
          })}
        </ul>
      )}
    </div>
  );
}
