/** One section of the Room leaf: its name opens it, beside it what it comes to in a few words. */
import { type ReactNode, useId } from 'react';
import type { Header } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { Icon } from '../../panels/Icon';
import type { Known } from '../answers';
import { type RoomSection, useRoomLook } from '../look';

export type Of = { readonly design: Design; readonly header: Header };

type Props = {
  readonly section: RoomSection;
  readonly name: string;
  /** In a few words; shown in the colour of what fails where it does. */
  readonly says?: string | undefined;
  readonly fails?: boolean;
  readonly known?: Known<unknown> | undefined;
  readonly children: ReactNode;
};

export function Section({ section, name, says, fails = false, known, children }: Props) {
  const open = useRoomLook((s) => s.open.has(section));
  const setOpen = useRoomLook((s) => s.setOpen);
  const id = useId();
  return (
    <section className="panel room-section" aria-label={name} aria-busy={known?.working ?? false}>
      <h2>
        <button
          type="button"
          aria-expanded={open}
          aria-controls={id}
          className="room-head"
          onClick={() => setOpen(section, !open)}
        >
          <Icon name="down" />
          <span>{name}</span>
          <span className={`room-says${fails ? ' fails' : ''}`}>{says}</span>
        </button>
      </h2>
      <div id={id} hidden={!open}>
        {open && (
          <>
            {known?.error && !known.working && <p className="fails">Not found out: {known.error}</p>}
            {children}
          </>
        )}
      </div>
    </section>
  );
}

/** Where nothing is known yet. */
export function Pending({ known, what }: { readonly known: Known<unknown>; readonly what: string }) {
  if (known.value !== null || known.error !== null) return null;
  return <p className="quiet">{what}…</p>;
}

type SwitchProps = { readonly on: boolean; readonly name: string; readonly onSwitch: (on: boolean) => void };

export function Switch({ on, name, onSwitch }: SwitchProps) {
  return (
    <label className="room-switch">
      <input type="checkbox" checked={on} onChange={(event) => onSwitch(event.target.checked)} />
      {name}
    </label>
  );
}
