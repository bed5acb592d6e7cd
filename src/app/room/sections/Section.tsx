/** One section of the Room leaf, which remembers whether it is open and says what could not be found out. */
import type { ReactNode } from 'react';
import type { Header } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { FoldingSection } from '../../parts/FoldingSection';
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

export function Section({ section, known, children, ...shown }: Props) {
  const open = useRoomLook((s) => s.open.has(section));
  const setOpen = useRoomLook((s) => s.setOpen);
  return (
    <FoldingSection {...shown} open={open} onOpen={(now) => setOpen(section, now)} busy={known?.working ?? false}>
      {known?.error && !known.working && <p className="fails">Not found out: {known.error}</p>}
      {children}
    </FoldingSection>
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
