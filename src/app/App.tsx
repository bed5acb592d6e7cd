/** The page: the header in 3D, its runners on the rack below, its numbers beside them. */
import './app.css';
import { lazy, Suspense, useEffect, useState } from 'react';
import { ActionSheet } from './actions/list/ActionSheet';
import { listExamples, openExample } from './actions/open';
import { useChecking } from './derived';
import { documents } from './document';
import { useDrawing } from './drawing/state';
import { ForecastDialog } from './forecast/ForecastDialog';
import { useReadyHand } from './hand/useReadyHand';
import { type Leaf, useLeaf } from './leaf';
import { useMaking } from './made/state';
import { ImportDialog } from './meshes/importing/ImportDialog';
import { ReadingLine } from './meshes/ReadingLine';
import { MirrorSheet } from './mirror/MirrorSheet';
import { NewHeader } from './newHeader/NewHeader';
import { linesOf, tellFailure } from './notices';
import { DropZone } from './panels/DropZone';
import { type Face, FaceSwitch } from './panels/FaceSwitch';
import { SideColumn } from './panels/SideColumn';
import { Toolbar } from './panels/Toolbar';
import { WavesDialog } from './pulse/WavesDialog';
import { Rack } from './rack/Rack';
import { RoomWatch } from './room/RoomWatch';
import { useLay } from './route/state';
import { useSession } from './session';
import { shelf, startShelf, wouldLose } from './shelf/browserShelf';
import { KeepingLine } from './shelf/KeepingLine';
import { TemplateDialog } from './template/TemplateDialog';
import { OutlineDialog } from './tracing/OutlineDialog';
import { useKeys } from './useKeys';
import { CompareSheet } from './versions/CompareSheet';
import { useSeeking } from './windows/useWindows';
import { Bench } from './workbench/Bench';

/** Three quarters of the code, and none of the numbers: the rack and the tables do not wait for it. */
const Viewport = lazy(async () => ({ default: (await import('./viewport')).Viewport }));

export function App() {
  const [face, setFace] = useState<Face>('view');
  useChecking();
  useSeeking();
  useMaking();
  useReadyHand();
  // On a phone the picture is a face of its own: whoever asks to look at a place is taken there.
  useEffect(
    () =>
      useSession.subscribe((now, before) => {
        if (now.wish !== before.wish && now.wish.kind === 'look') setFace('view');
      }),
    [],
  );
  useEffect(
    () =>
      useLeaf.subscribe((now, before) => {
        if (now.asked !== before.asked) setFace(now.leaf === 'numbers' ? 'tables' : now.leaf);
      }),
    [],
  );
  useEffect(
    () =>
      useLay.subscribe((now, before) => {
        if (now.open && !before.open) setFace('view');
      }),
    [],
  );
  useEffect(
    () =>
      useDrawing.subscribe((now, before) => {
        if (now.shape && !before.shape) setFace('view');
      }),
    [],
  );
  useKeys();
  useStart();
  useWarningOnLeave();
  return (
    <div className="page" data-face={face}>
      <Toolbar />
      <KeepingLine />
      <ReadingLine />
      <main className="work">
        <div className="hero">
          <Suspense>
            <Viewport />
          </Suspense>
        </div>
        <Rack />
        <SideColumn />
      </main>
      <FaceSwitch
        face={face}
        onFace={(next) => {
          setFace(next);
          const leaf = LEAF_OF[next];
          if (leaf) useLeaf.getState().turnTo(leaf);
        }}
      />
      <NewHeader />
      <MirrorSheet />
      <OutlineDialog />
      <TemplateDialog />
      <ImportDialog />
      <ActionSheet />
      <CompareSheet />
      <RoomWatch />
      <Bench />
      <ForecastDialog />
      <WavesDialog />
      <DropZone />
    </div>
  );
}

/** The leaf of the side column that a phone's face is made of. */
const LEAF_OF: Readonly<Partial<Record<Face, Leaf>>> = {
  tables: 'numbers',
  room: 'room',
  parts: 'parts',
  make: 'make',
  edit: 'edit',
  past: 'past',
};

/** What was worked on last; the first time, something to look at. */
function useStart(): void {
  useEffect(() => {
    if (documents.store.getState().design) return;
    const openFirst = async () => {
      if (await startShelf()) return;
      const [first] = await listExamples();
      if (first && !documents.store.getState().design) await openExample(first.file, true);
    };
    openFirst().catch((error) => tellFailure('The first example did not open', ...linesOf(error)));
  }, []);
}

/** Keeps what waits when the page is put aside, and has the browser ask before edits are closed that nothing holds. */
function useWarningOnLeave(): void {
  useEffect(() => {
    const warn = (event: BeforeUnloadEvent) => {
      if (wouldLose()) event.preventDefault();
    };
    const keep = () => void shelf.flush();
    addEventListener('beforeunload', warn);
    addEventListener('pagehide', keep);
    document.addEventListener('visibilitychange', keep);
    return () => {
      removeEventListener('beforeunload', warn);
      removeEventListener('pagehide', keep);
      document.removeEventListener('visibilitychange', keep);
    };
  }, []);
}
