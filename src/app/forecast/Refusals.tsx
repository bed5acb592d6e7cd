/** Why something cannot be followed: each place with what was found and what is allowed, and the way to it. */
import type { Refusal } from '../../../shared/design/refusal';
import { goTo, wayTo } from './goTo';

export function Refusals({ refusals }: { readonly refusals: readonly Refusal[] }) {
  return (
    <ul className="gain-refusals">
      {refusals.map((refusal) => {
        const way = wayTo(refusal.path);
        return (
          <li key={`${refusal.path} ${refusal.found}`}>
            <span>
              <b>{refusal.path || 'the design'}</b>: found {refusal.found}; allowed: {refusal.allowed}.
            </span>
            {way && (
              <button type="button" className="button small" onClick={() => goTo(way)}>
                {way.name}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
