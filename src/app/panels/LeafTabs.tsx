/** The tabs of the side column. Arrow keys go along them, as in any row of tabs. */
import type { KeyboardEvent } from 'react';
import { partsNamed } from '../../../geometry';
import { LEAVES, type Leaf, useLeaf } from '../leaf';
import { useMade } from '../made/state';
import { useShownReport } from '../route/shown';

export const leafId = (leaf: Leaf): string => `leaf-${leaf}`;

export function LeafTabs() {
  const { leaf, turnTo } = useLeaf();
  const problems = useShownReport()?.problems.length ?? 0;
  const missing = useMade((s) => partsNamed(s.notMade).length);
  const walk = (event: KeyboardEvent<HTMLButtonElement>) => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    event.stopPropagation();
    const at = LEAVES.findIndex(({ key }) => key === leaf);
    const next = LEAVES[(at + step + LEAVES.length) % LEAVES.length]!.key;
    turnTo(next);
    document.getElementById(`${leafId(next)}-tab`)?.focus();
  };
  return (
    <div className="leaves" role="tablist" aria-label="Beside the picture">
      {LEAVES.map(({ key, name }) => (
        <button
          key={key}
          type="button"
          role="tab"
          id={`${leafId(key)}-tab`}
          aria-selected={leaf === key}
          aria-controls={leafId(key)}
          tabIndex={leaf === key ? 0 : -1}
          onClick={() => turnTo(key)}
          onKeyDown={walk}
        >
          {name}
          {key === 'parts' && missing > 0 && (
            <span className="badge" title={`${missing} cannot be made`}>
              {missing}
            </span>
          )}
          {key === 'numbers' && problems > 0 && (
            <span className="badge" title={`${problems} problems`}>
              {problems}
            </span>
          )}
        </button>
      ))}
    </div>
  );
}
