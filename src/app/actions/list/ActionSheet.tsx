/** The two sheets over the page: the list of actions, to search and run from, and the keys, to read. */
import { useModal } from '../../parts/useModal';
import './list.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import { Icon } from '../../panels/Icon';
import type { Action } from './action';
import { keyCaps } from './keys';
import { closeSheet, useSheet } from './listState';
import { allActions, isReady } from './registry';
import { byGroup, searchActions } from './search';

export function ActionSheet() {
  const open = useSheet((s) => s.open);
  const modal = useModal(Boolean(open), closeSheet);
  return (
    <dialog {...modal} className="sheet" aria-label={open === 'keys' ? 'Keys' : 'Actions'}>
      {open === 'actions' && <ActionList />}
      {open === 'keys' && <KeySheet />}
    </dialog>
  );
}

const optionId = (action: Action) => `action ${action.id}`.replace(/[^\w-]+/g, '-');

function ActionList() {
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const found = useMemo(() => searchActions(allActions, typed), [typed]);
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
          aria-label="Find an action"
          aria-expanded="true"
          aria-controls="actions"
          aria-autocomplete="list"
          aria-activedescendant={current && optionId(current)}
          placeholder="What would you like to do?"
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
      <div ref={list} id="actions" role="listbox" aria-label="Actions" className="action-list" tabIndex={-1}>
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
        {found.length === 0 && (
          <p className="note">No action goes by these words. Try fewer letters, or another word.</p>
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
          ? showGroup && <span className="quiet"> {action.group}</span>
          : action.why && <span className="quiet"> {action.why()}</span>}
      </span>
      <Caps keys={action.keys?.[0]} />
    </div>
  );
}

function Caps({ keys }: { readonly keys: string | undefined }) {
  if (!keys) return null;
  return (
    <span className="caps">
      {keyCaps(keys).map((cap) => (
        <kbd key={cap}>{cap}</kbd>
      ))}
    </span>
  );
}

/** Keys that belong to one place and not to an action. */
const PLACES: readonly { readonly group: string; readonly rows: readonly (readonly [string, readonly string[]])[] }[] =
  [
    {
      group: 'In the 3D view',
      rows: [
        ['Turn', ['←', '→', '↑', '↓']],
        ['Move', ['Shift', '←', '→', '↑', '↓']],
        ['Zoom', ['+', '−']],
      ],
    },
    {
      group: 'Anywhere',
      rows: [
        ['Next, previous control', ['Tab']],
        ['Press, or pick a row', ['Enter']],
        ['Let go', ['Esc']],
      ],
    },
  ];

function KeySheet() {
  const keyed = byGroup(allActions.filter((a) => a.keys));
  return (
    <div className="sheet-body">
      <div className="sheet-search">
        <h2>Keys</h2>
        <button type="button" className="button bare icon" aria-label="Close" onClick={closeSheet}>
          <Icon name="close" />
        </button>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section className="key-groups" tabIndex={0} aria-label="All keys">
        {keyed.map(({ group, actions }) => (
          <section key={group}>
            <h3>{group}</h3>
            <dl>
              {actions.map((a) => (
                <div key={a.id}>
                  <dt>{a.name}</dt>
                  <dd>
                    {a.keys!.map((keys) => (
                      <Caps key={keys} keys={keys} />
                    ))}
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
        {PLACES.map(({ group, rows }) => (
          <section key={group}>
            <h3>{group}</h3>
            <dl>
              {rows.map(([name, caps]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>
                    <span className="caps">
                      {caps.map((cap) => (
                        <kbd key={cap}>{cap}</kbd>
                      ))}
                    </span>
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </section>
    </div>
  );
}
