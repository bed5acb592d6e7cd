/** The keys, to read: those of actions, then those that belong to one place. */
import { Icon } from '../../panels/Icon';
import { Caps } from './Caps';
import { closeSheet } from './listState';
import { allActions } from './registry';
import { byGroup } from './search';

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

export function KeySheet() {
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
