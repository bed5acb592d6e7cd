/** Which tools there are to reach with; all that the tables know, unless some are taken out. */
import { useState } from 'react';
import { TOOL_KINDS } from '../../../../shared/stock/tools';
import { setAccess } from '../edits';
import { EXTENSIONS } from '../specs';
import { Fields } from './Fields';
import { type Of, Switch } from './Section';

const nameOf = (kind: string): string => {
  const words = kind.replaceAll('-', ' ');
  return words[0]!.toUpperCase() + words.slice(1);
};

export function ToolsAtHand(of: Of) {
  const [open, setOpen] = useState(false);
  const given = of.design.access?.tools;
  const has = (kind: string) => given === undefined || given.includes(kind);
  const put = (kind: string, on: boolean) => {
    const next = TOOL_KINDS.filter((k) => (k === kind ? on : has(k)));
    const words = `${nameOf(kind)}: ${on ? 'at hand' : 'not at hand'}`;
    setAccess({ tools: next.length === TOOL_KINDS.length ? undefined : next }, words);
  };
  return (
    <details className="room-details" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Tools at hand{' '}
        <span className="quiet">{given === undefined ? 'all' : `${given.length} of ${TOOL_KINDS.length}`}</span>
      </summary>
      <div className="room-tools">
        {TOOL_KINDS.map((kind) => (
          <Switch key={kind} on={has(kind)} name={nameOf(kind)} onSwitch={(on) => put(kind, on)} />
        ))}
      </div>
      <Fields {...of} specs={EXTENSIONS} />
    </details>
  );
}
