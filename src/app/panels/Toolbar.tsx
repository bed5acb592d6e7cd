/** What can be done with the design, in the order of the work: open, balance, step back and forth, save, take to the shop. */
import './toolbar.css';
import { useState } from 'react';
import { balanceDesign } from '../actions/balance';
import { setDisplay } from '../actions/display';
import { exportShop } from '../actions/exportShop';
import { ariaKeys, withKeys } from '../actions/list/keys';
import { openSheet } from '../actions/list/listState';
import { saveDesign } from '../actions/save';
import { isDirty, useDocument } from '../document';
import { history, useHistory } from '../history';
import { useJobs } from '../jobs';
import { openNewHeader } from '../newHeader/state';
import { UnitSwitch } from '../parts/UnitSwitch';
import { openLay } from '../route/state';
import { toLay } from '../route/wish';
import { ShelfMenu } from '../shelf/ShelfMenu';
import { ExampleMenu } from './ExampleMenu';
import { Icon } from './Icon';
import { Mark } from './Mark';
import { OpenButton } from './OpenButton';
import { ThemeButton } from './ThemeButton';

export function Toolbar() {
  const none = useDocument((s) => s.design === null);
  const running = useJobs((s) => s.running);
  // Once there are runners without a way, laying them is the next thing to do.
  const unlaid = useDocument((s) => s.settled !== null && toLay(s.settled).unlaid > 0);
  const [more, setMore] = useState(false);
  return (
    <header className="toolbar">
      <Mark />
      <Title />
      <div className="tools" role="toolbar" aria-label="Work on the design">
        <button
          type="button"
          className="button icon"
          aria-label="Find an action"
          aria-keyshortcuts={ariaKeys(['Mod+K'])}
          title={withKeys('Find an action', ['Mod+K'])}
          onClick={() => openSheet('actions')}
        >
          <Icon name="find" />
        </button>
        <Steps />
        <button
          type="button"
          className={`button${unlaid ? ' strong' : ''}`}
          disabled={none || (running !== null && running !== 'lay')}
          title={withKeys('Lay the header', ['Shift+L'])}
          onClick={() => openLay()}
        >
          Lay…
        </button>
        <button
          type="button"
          className={`button${unlaid ? '' : ' strong'}`}
          disabled={none || running !== null}
          onClick={balanceDesign}
        >
          Balance
        </button>
        <button
          type="button"
          className="button icon more"
          aria-expanded={more}
          aria-label="Files and settings"
          onClick={() => setMore(!more)}
        >
          <Icon name={more ? 'close' : 'more'} />
        </button>
      </div>
      <div className={`tools files${more ? ' shown' : ''}`} role="toolbar" aria-label="Files and settings">
        <ShelfMenu />
        <button type="button" className="button" onClick={openNewHeader}>
          New…
        </button>
        <OpenButton />
        <ExampleMenu />
        <button type="button" className="button" disabled={none} onClick={saveDesign}>
          Save
        </button>
        <button type="button" className="button" disabled={none || running !== null} onClick={exportShop}>
          Shop folder
        </button>
        <UnitSwitch onChoose={setDisplay} />
        <ThemeButton />
      </div>
    </header>
  );
}

function Title() {
  const title = useDocument((s) => s.design?.title || s.fileName);
  const file = useDocument((s) => s.fileName);
  const dirty = useDocument(isDirty);
  return (
    <div className="title">
      <h1 title={file}>{title}</h1>
      {dirty && <span className="quiet">edited</span>}
    </div>
  );
}

function Steps() {
  const last = useHistory((s) => s.past.at(-1)?.label);
  const next = useHistory((s) => s.future[0]?.label);
  return (
    <>
      <button
        type="button"
        className="button icon"
        disabled={last === undefined}
        onClick={() => history.undo()}
        aria-label={last === undefined ? 'Undo' : `Undo: ${last}`}
        title={last === undefined ? 'Nothing to undo' : `Undo: ${last}`}
      >
        <Icon name="undo" />
      </button>
      <button
        type="button"
        className="button icon"
        disabled={next === undefined}
        onClick={() => history.redo()}
        aria-label={next === undefined ? 'Redo' : `Redo: ${next}`}
        title={next === undefined ? 'Nothing to redo' : `Redo: ${next}`}
      >
        <Icon name="redo" />
      </button>
    </>
  );
}
