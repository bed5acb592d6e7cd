/** Where a cut lies, typed: a sum or a fraction, in either unit. What is no length is said in place and changes nothing. */
import { useState } from 'react';
import type { Display } from '../../../../shared/design/types';
import { parseLength } from '../../../../shared/units';
import { lengthNumber } from '../../format';

type Props = {
  readonly name: string;
  readonly at: number;
  readonly display: Display;
  readonly onPlace: (mm: number) => void;
};

export function PlaceField({ name, at, display, onPlace }: Props) {
  const [draft, setDraft] = useState<string | null>(null);
  const answer = draft === null ? null : parseLength(draft, display);
  const wrong = answer && !answer.ok ? answer.problem : null;
  const take = () => {
    if (answer?.ok) onPlace(answer.mm);
    if (!wrong) setDraft(null);
  };
  return (
    <input
      type="text"
      inputMode="decimal"
      className="cut-place"
      aria-label={`Cut square to ${name}, place in ${display}`}
      aria-invalid={wrong !== null}
      title={wrong ?? `In ${display}; sums and fractions too`}
      value={draft ?? lengthNumber(at, display, 1)}
      onChange={(e) => setDraft(e.target.value)}
      onBlur={take}
      onKeyDown={(e) => {
        if (e.key === 'Enter') take();
        if (e.key === 'Escape') setDraft(null);
      }}
    />
  );
}
