/** The lengths that runners and groups could have, as last found for the design that the user has settled on. */
import { useEffect } from 'react';
import { create } from 'zustand';
import type { GroupWindow, RunnerWindow, Windows } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { type DocumentState, documents } from '../document';
import { sameSpace } from './sameSpace';
import { createSeeker } from './seeker';

export type WindowsState = {
  readonly windows: Windows | null;
  /** The design that `windows` is of. */
  readonly of: Design | null;
  /** True while a newer design is being looked at: what is shown may be outdated. */
  readonly seeking: boolean;
};

export const useWindows = create<WindowsState>()(() => ({ windows: null, of: null, seeking: false }));

export const useGroupWindow = (id: string): GroupWindow | undefined =>
  useWindows((s) => s.windows?.groups.find((g) => g.id === id));

export const useRunnerWindow = (id: string): RunnerWindow | undefined =>
  useWindows((s) => s.windows?.runners.find((r) => r.id === id));

/** Keeps the windows up to date with the document; mounted once by the app. */
export function useSeeking(): void {
  useEffect(() => {
    const seeker = createSeeker((answer) => {
      if ('windows' in answer) useWindows.setState({ windows: answer.windows, of: answer.design, seeking: false });
      else useWindows.setState({ seeking: false });
    });
    const look = (now: DocumentState, before?: DocumentState) => {
      if (!now.settled || (before && now.settled === before.settled && now.meshes === before.meshes)) return;
      const { of, seeking } = useWindows.getState();
      if (now.cause.kind === 'open' && now.settled !== before?.settled)
        useWindows.setState({ windows: null, of: null });
      else if (of && !seeking && now.meshes === before?.meshes && sameSpace(of, now.settled)) return;
      useWindows.setState({ seeking: true });
      seeker.seek(now.settled, now.meshes);
    };
    look(documents.store.getState());
    const end = documents.store.subscribe(look);
    return () => {
      end();
      seeker.stop();
    };
  }, []);
}
