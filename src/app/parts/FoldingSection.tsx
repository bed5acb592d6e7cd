/** One section of a leaf: its name opens it, beside it what it comes to in a few words. What is folded away is not drawn. */
import { type ReactNode, useId } from 'react';
import { Icon } from '../panels/Icon';

type Props = {
  readonly name: string;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  /** In a few words; shown in the colour of what fails where it does. */
  readonly says?: string | undefined;
  readonly fails?: boolean;
  readonly busy?: boolean;
  /** What the leaf knows it by. */
  readonly mark?: string;
  readonly children: ReactNode;
};

export function FoldingSection({ name, open, onOpen, says, fails = false, busy = false, mark, children }: Props) {
  const id = useId();
  return (
    <section className="panel room-section" aria-label={name} aria-busy={busy} data-section={mark}>
      <h2>
        <button
          type="button"
          aria-expanded={open}
          aria-controls={id}
          className="room-head"
          onClick={() => onOpen(!open)}
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
