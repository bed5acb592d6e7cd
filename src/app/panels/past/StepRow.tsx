/** One step of history, to be jumped to. Drawn anew only when it changes: there may be thousands. */
import { memo } from 'react';
import { clock } from '../../format';

export type Place = 'behind' | 'here' | 'ahead';

type Props = {
  /** How many steps have been made once this one has. */
  readonly k: number;
  readonly label: string;
  /** Null for the state that history begins with. */
  readonly at: number | null;
  readonly changes: string;
  readonly place: Place;
  onPick(k: number): void;
};

const PLACE_WORDS = { behind: '', here: ' (now)', ahead: ' (taken back)' } as const;

export const StepRow = memo(function StepRow({ k, label, at, changes, place, onPick }: Props) {
  return (
    <li className={`past-step ${place}`}>
      <button
        type="button"
        aria-current={place === 'here' ? 'step' : undefined}
        tabIndex={place === 'here' ? 0 : -1}
        onClick={() => onPick(k)}
      >
        <span className="past-label">
          {label}
          <span className="unseen">{PLACE_WORDS[place]}</span>
        </span>
        {at !== null && <time dateTime={new Date(at).toISOString()}>{clock(at)}</time>}
        {changes && <span className="past-changes">{changes}</span>}
      </button>
    </li>
  );
});
