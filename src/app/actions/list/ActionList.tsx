/** A list of actions to search by words and run from, by keys or pointer. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { Icon } from '../../panels/Icon';
import type { Action } from './action';
import { Caps } from './Caps';
import { type Choice, closeSheet } from './listState';
import { isReady } from './registry';
import { byGroup, searchActions } from './search';

/** Steps of history may be thousands; what one looks for further on is found by typing. */
const MOST_DRAWN = 200;

const optionId = (action: Action) => `action ${action.id}`.replace(/[^\w-]+/g, '-');

export function ActionList({ title, ask, hint, none, actions: all }: Choice) {
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const fits = useMemo(() => searchActions(all, typed), [all, typed]);
  const found = fits.slice(0, MOST_DRAWN);
  // Under headings while nothing is typed; then the best come first, whatever their heading.
  const groups = typed.trim() === '' ? byGroup(found) : [{ group: '', actions: found }];
  const current = found[at];

  useEffect(() => {
    list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  });
  const run = (action: Action | undefined) => {
    if (!action || !isReady(action)) return;
    closeSheet();
    // After the sheet has given the focus back: what runs may move it, or open a sheet of its own.
    setTimeout(() => void action.run());
  };
  const step = (by: number) => setAt((i) => (found.length === 0 ? 0 : (i + by + found.length) % found.length));
  return (
    <div className="sheet-body">
      <div className="sheet-search">
        <input
          type="text"
          role="combobox"
          aria-label={ask}
          aria-expanded="true"
          aria-controls="actions"
          aria-autocomplete="list"
          aria-activedescendant={current && optionId(current)}
          placeholder={hint}
          autoComplete="off"
          spellCheck={false}
          // biome-ignore lint/a11y/noAutofocus: the sheet was opened to type into it
          autoFocus
          value={typed}
          onChange={(event) => {
            setTyped(event.target.value);
            setAt(0);
          }}
          onKeyDown={(event) => {
            const steps: Record<string, number> = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 };
            const by = steps[event.key];
            if (by !== undefined) step(by);
            else if (event.key === 'Enter') run(current);
            else return;
            event.preventDefault();
          }}
        />
        <button type="button" className="button bare icon" aria-label="Close" onClick={closeSheet}>
          <Icon name="close" />
        </button>
      </div>
      <div ref={list} id="actions" role="listbox" aria-label={title} className="action-list" tabIndex={-1}>
        {groups.map(({ group, actions }) => (
          // biome-ignore lint/a11y/useSemanticElements: options in a listbox are grouped so
          <div key={group} role="group" aria-label={group || 'Found'}>
            {group && <div className="action-group">{group}</div>}
            {actions.map((action) => (
              <Option
                key={action.id}
                action={action}
                isAt={action === current}
                showGroup={group === ''}
                onPoint={() => setAt(found.indexOf(action))}
                onRun={() => run(action)}
              />
            ))}
          </div>
        ))}
        {found.length === 0 && <p className="note">{none}</p>}
        {fits.length > found.length && (
          <p className="note">And {fits.length - found.length} more: type what to look for.</p>
        )}
      </div>
    </div>
  );
}

type OptionProps = {
  readonly action: Action;
  readonly isAt: boolean;
  readonly showGroup: boolean;
  readonly onPoint: () => void;
  readonly onRun: () => void;
};

function Option({ action, isAt, showGroup, onPoint, onRun }: OptionProps) {
  const ready = isReady(action);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: keys are read where the focus stays, in the field above
    <div
      id={optionId(action)}
      role="option"
      tabIndex={-1}
      aria-selected={isAt}
      aria-disabled={!ready}
      className="action"
      onPointerMove={onPoint}
      onClick={onRun}
    >
      <span className="action-name">
        {action.name}
        {ready
          ? (action.detail ?? (showGroup && action.group)) && (
              <span className="quiet"> {action.detail ?? action.group}</span>
            )
          : action.why && <span className="quiet"> {action.why()}</span>}
      </span>
      <Caps keys={action.keys?.[0]} />
    </div>
  );
}
