/** Lengths in reach, drawn: the stretch that can be built, and the length asked as a mark on it. */
import './windows.css';
import type { Window } from '../../../geometry';
import { useDisplay } from '../actions/display';
import { lengthNumber } from '../format';
import { Length } from '../parts/Length';
import { barOf } from './bar';
import { useWindows } from './useWindows';

type Props = {
  readonly window: Window;
  /** Asked, or measured where none is asked; null for neither. */
  readonly length: number | null;
};

export function WindowBar({ window, length }: Props) {
  const display = useDisplay();
  const seeking = useWindows((s) => s.seeking);
  const bar = barOf(window, length);
  if (!bar) return null;
  const say = (mm: number) => `${lengthNumber(mm, display)} ${display}`;
  const upTo = window.longest === null ? 'or longer' : `to ${say(window.longest)}`;
  const at = length === null ? '' : `, ${say(length)} ${bar.isOutside ? 'is out of reach' : 'is in reach'}`;
  const percent = (part: number) => `${(100 * part).toFixed(2)}%`;
  return (
    <div
      className={`window-bar${seeking ? ' seeking' : ''}`}
      role="img"
      aria-label={`${say(window.shortest!)} ${upTo}${at}`}
    >
      <div
        className={`window-range${window.longest === null ? ' open' : ''}`}
        style={{ left: percent(bar.from), right: percent(1 - bar.to) }}
      />
      {bar.mark !== null && (
        <div className={`window-mark${bar.isOutside ? ' outside' : ''}`} style={{ left: percent(bar.mark) }} />
      )}
    </div>
  );
}

export function WindowWords({ window }: { readonly window: Window }) {
  if (window.shortest === null) return <>no way found</>;
  return (
    <>
      <Length mm={window.shortest} decimals={1} />
      {window.longest === null ? (
        ' or longer'
      ) : (
        <>
          {' to '}
          <Length mm={window.longest} decimals={1} />
        </>
      )}
    </>
  );
}
