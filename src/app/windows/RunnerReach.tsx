/** What lengths one runner could have by itself in the space it stands in, the length asked of its group marked. */
import type { Design } from '../../../shared/design/types';
import { useReport } from '../derived';
import { useRunnerWindow, useWindows } from './useWindows';
import { WindowBar, WindowWords } from './WindowBar';

export function RunnerReach({ design, id }: { readonly design: Design; readonly id: string }) {
  const window = useRunnerWindow(id);
  const seeking = useWindows((s) => s.seeking);
  const measured = useReport((s) => s.report?.runners.find((r) => r.id === id)?.length);
  const group = design.runners.find((r) => r.id === id)?.group;
  const asked = group === undefined ? null : (design.groups[group]?.length ?? null);
  if (!window) return null;
  return (
    <div className={`inspector-section reach${seeking ? ' seeking' : ''}`}>
      <h3>Lengths in reach</h3>
      <WindowBar window={window} length={asked ?? measured ?? null} />
      <p className="note">
        {window.shortest === null ? (
          'No way was found, even alone: make room, or allow more or wider bends.'
        ) : window.locked ? (
          'Locked: it keeps the length it has.'
        ) : (
          <>
            Alone in this space: <WindowWords window={window} />.
          </>
        )}
      </p>
    </div>
  );
}
