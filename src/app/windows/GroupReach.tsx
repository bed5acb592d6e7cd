/** What lengths a group could have and which runner sets the limit; where what is asked is out of reach, it says so. */
import { outOfReach } from '../../../geometry';
import { useDocument } from '../document';
import { useWindows } from './useWindows';
import { WindowBar, WindowWords } from './WindowBar';

/** @param length asked, or measured where none is asked */
export function GroupReach({ id, length }: { readonly id: string; readonly length: number | null }) {
  const { windows, seeking } = useWindows();
  const design = useDocument((s) => s.design);
  const window = windows?.groups.find((g) => g.id === id);
  if (!windows || !design || !window)
    return seeking ? <p className="reach quiet">looking for lengths in reach…</p> : null;
  const [refusal] = outOfReach({ ...windows, groups: [window] }, design);
  const { shortest, shortestBy, longestBy } = window;
  return (
    <div className={`reach${seeking ? ' seeking' : ''}`}>
      <WindowBar window={window} length={length} />
      {refusal ? (
        <p className="fails">{refusal}</p>
      ) : (
        shortest !== null && (
          <p className="quiet">
            In reach: <WindowWords window={window} />
            {longestBy === null || longestBy === shortestBy
              ? `, set by ${shortestBy}`
              : `, set by ${shortestBy} and ${longestBy}`}
          </p>
        )
      )}
    </div>
  );
}
