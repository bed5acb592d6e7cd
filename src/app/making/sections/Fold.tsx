/** One section of the Make leaf: its name opens it, beside it what it comes to in a few words. */
import { type ReactNode, useId } from 'react';
import { Icon } from '../../panels/Icon';
import { type MakeSection, useMakeLook } from '../look';

type Props = {
  readonly section: MakeSection;
  readonly name: string;
  readonly says?: string | undefined;
  readonly fails?: boolean;
  readonly busy?: boolean;
  readonly children: ReactNode;
};

export function Fold({ section, name, says, fails = false, busy = false, children }: Props) {
  const open = useMakeLook((s) => s.open.has(section));
  const setOpen = useMakeLook((s) => s.setOpen);
  const id = useId();
  return (
    <section className="panel room-section" aria-label={name} aria-busy={busy} data-section={section}>
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
        {open && children}
      </div>
    </section>
  );
}
