/**
 * Laying the header, beside the picture: what is asked for, then the search as it goes, then the layouts to choose from.
 * Nothing here changes the document until one of them is kept.
 */
import './lay.css';
import { type KeyboardEvent, type ReactNode, useEffect, useRef } from 'react';
import { useDocument } from '../document';
import { Icon } from '../panels/Icon';
import { LayChoice } from './LayChoice';
import { LayProgress } from './LayProgress';
import { LayWishes } from './LayWishes';
import { cancelSearch, closeLay, useLay } from './state';

export function LayPanel() {
  const open = useLay((s) => s.open);
  return open ? <Panel /> : null;
}

function Panel() {
  const settled = useDocument((s) => s.settled);
  const search = useLay((s) => s.search);
  const panel = useRef<HTMLElement>(null);
  const phase = !search ? 'wishes' : search.running ? 'search' : 'choice';
  useFocusWithin(panel, phase);
  useFocusBack();
  if (!settled) return null;
  const leave = (event: KeyboardEvent) => {
    // Layouts that were found are not thrown away by a slip.
    if (event.key !== 'Escape' || event.defaultPrevented || phase === 'choice') return;
    event.preventDefault();
    if (phase === 'search') cancelSearch();
    else closeLay();
  };
  const body: Record<typeof phase, () => ReactNode> = {
    wishes: () => <LayWishes design={settled} />,
    search: () => <LayProgress search={search!} />,
    choice: () => <LayChoice search={search!} />,
  };
  return (
    <section ref={panel} className="card lay" aria-label="Lay the header" onKeyDown={leave}>
      <div className="card-head">
        <h2 className="card-title">Lay the header</h2>
        <button type="button" className="button icon bare" aria-label="Close" onClick={closeLay}>
          <Icon name="close" />
        </button>
      </div>
      {body[phase]()}
    </section>
  );
}

/** What had the focus is gone with the phase before: it goes to what comes next, unless it is elsewhere on the page. */
function useFocusWithin(panel: { readonly current: HTMLElement | null }, phase: string): void {
  useEffect(() => {
    const { activeElement } = document;
    const elsewhere = activeElement && activeElement !== document.body && !panel.current?.contains(activeElement);
    // A press of the button that opened it leaves the focus there.
    if (elsewhere && phase !== 'wishes') return;
    panel.current?.querySelector<HTMLElement>('[data-first]')?.focus({ preventScroll: true });
  }, [phase, panel]);
}

function useFocusBack(): void {
  const from = useRef(document.activeElement);
  useEffect(
    () => () => {
      const { current } = from;
      if (document.activeElement === document.body && current instanceof HTMLElement && current.isConnected)
        current.focus({ preventScroll: true });
    },
    [],
  );
}
