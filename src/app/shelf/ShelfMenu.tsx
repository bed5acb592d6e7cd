/** The designs kept in this browser: open, rename, copy and delete them. Closes on a choice, Escape or a click elsewhere. */
import './shelf.css';
import { useEffect, useRef, useState } from 'react';
import { listExamples, openExample } from '../actions/open';
import { useDocument } from '../document';
import { attempt, tellFailure } from '../notices';
import { Icon } from '../panels/Icon';
import type { KeptDesign } from '../storage/keptDesign';
import { shelf, useShelf } from './browserShelf';
import { titleOf } from './names';

const openFirstExample = async () => {
  const [first] = await listExamples();
  if (first) await openExample(first.file, true);
};

export function ShelfMenu() {
  const [open, setOpen] = useState(false);
  const root = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!open) return;
    const leave = (event: Event) => {
      if (!root.current?.contains(event.target as Node)) setOpen(false);
    };
    const close = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      setOpen(false);
      button.current?.focus();
    };
    const menu = root.current;
    document.addEventListener('pointerdown', leave);
    document.addEventListener('focusin', leave);
    menu?.addEventListener('keydown', close);
    return () => {
      document.removeEventListener('pointerdown', leave);
      document.removeEventListener('focusin', leave);
      menu?.removeEventListener('keydown', close);
    };
  }, [open]);
  return (
    <div className="menu" ref={root}>
      <button ref={button} type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        Designs <Icon name="down" />
      </button>
      {open && <Shelf onDone={() => setOpen(false)} />}
    </div>
  );
}

function Shelf({ onDone }: { onDone(): void }) {
  const designs = useShelf((s) => s.designs);
  const removed = useShelf((s) => s.removed);
  return (
    <section className="menu-list shelf" aria-label="Designs kept in this browser">
      {removed && (
        <div className="shelf-removed" role="status">
          <span>“{titleOf(removed.design)}” deleted</span>
          <button type="button" className="button" onClick={() => attempt('Putting it back', shelf.restore)}>
            Put back
          </button>
        </div>
      )}
      <ul aria-label="Designs">
        {designs.map((design) => (
          <Row key={design.id} design={design} onDone={onDone} />
        ))}
      </ul>
      <p className="note">Kept in this browser as you work.</p>
    </section>
  );
}

function Row({ design, onDone }: { readonly design: KeptDesign; onDone(): void }) {
  const here = useDocument((s) => s.id === design.id);
  const [naming, setNaming] = useState(false);
  const title = titleOf(design);
  if (naming)
    return (
      <li className="shelf-row">
        <form
          className="shelf-name"
          onSubmit={(event) => {
            event.preventDefault();
            const name = String(new FormData(event.currentTarget).get('name')).trim();
            setNaming(false);
            if (name && name !== title) void attempt('Renaming', () => shelf.rename(design.id, name));
          }}
        >
          {/* biome-ignore lint/a11y/noAutofocus: it was asked for by the button that this replaces */}
          <input className="filling" name="name" defaultValue={title} aria-label="Name" autoFocus maxLength={200} />
          <button type="submit" className="button">
            Rename
          </button>
        </form>
      </li>
    );
  const act = (label: string, run: () => void) => (
    <button type="button" className="button" aria-label={`${label} ${title}`} onClick={run}>
      {label}
    </button>
  );
  return (
    <li className={`shelf-row${here ? ' here' : ''}`}>
      <button
        type="button"
        className="shelf-open"
        aria-current={here || undefined}
        onClick={() => {
          onDone();
          void attempt('Opening', () => returnTo(design.id));
        }}
      >
        <strong>{title}</strong>
        <span className="quiet">
          {when(design.changed)}
          {!design.inFile && ' · in no file yet'}
        </span>
      </button>
      <span className="shelf-acts">
        {act('Rename', () => setNaming(true))}
        {act('Copy', () => {
          onDone();
          void attempt('Copying', () => shelf.duplicate(design.id));
        })}
        {act('Delete', () => attempt('Deleting', () => shelf.remove(design.id, openFirstExample)))}
      </span>
    </li>
  );
}

async function returnTo(id: string): Promise<void> {
  const missing = await shelf.returnTo(id);
  if (missing.length > 0)
    tellFailure(`${missing.join(', ')} not found`, 'Open it again, or clearances to it stay unmeasured.');
}

const when = (at: number) => new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
