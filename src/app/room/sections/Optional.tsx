/** What a design may do without: a press puts in what is usual; then it stands here, with a press that takes it out again. */
import type { ReactNode } from 'react';

type Props = {
  readonly given: boolean;
  readonly add: string;
  /** What is put in, in words. */
  readonly usual: string;
  readonly onAdd: () => void;
  readonly remove: string;
  readonly onRemove: () => void;
  readonly children: ReactNode;
};

export function Optional({ given, add, usual, onAdd, remove, onRemove, children }: Props) {
  if (!given)
    return (
      <div className="room-add">
        <button type="button" className="button small" onClick={onAdd}>
          {add}
        </button>
        <p className="note">{usual}</p>
      </div>
    );
  return (
    <>
      {children}
      <div className="room-acts">
        <button type="button" className="button small" onClick={onRemove}>
          {remove}
        </button>
      </div>
    </>
  );
}
