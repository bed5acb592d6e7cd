/** What can be added here, each a press away; it is picked at once, to be edited. */
import { addAndPick } from '../../inspect/inspectActions';
import type { Add } from '../../inspect/Outline';

type Props = {
  readonly adds: readonly Add[];
  /** Said before each name to who does not see the section round it. */
  readonly what: string;
};

export function AddChips({ adds, what }: Props) {
  return (
    <div className="room-chips">
      {adds.map(({ name, make }) => (
        <button
          key={name}
          type="button"
          className="chip add"
          aria-label={`${what}: ${name.toLowerCase()}`}
          onClick={() => addAndPick(make, '')}
        >
          + {name}
        </button>
      ))}
    </div>
  );
}
