/** Beside the picture, its leaves: numbers, the room round the header, parts, how they are made, what can be typed, what has been done. Messages stay above them all. */
import './side.css';
import { lazy, Suspense } from 'react';
import { EditPanel } from '../inspect/EditPanel';
import { useLeaf } from '../leaf';
import { PartsPanel } from '../made/PartsPanel';
import { LayOffer } from '../route/LayOffer';
import { LayPanel } from '../route/LayPanel';
import { BalanceCard } from './BalanceCard';
import { BendPanel } from './BendPanel';
import { GapPanel } from './GapPanel';
import { GroupPanel } from './GroupPanel';
import { LeafTabs, leafId } from './LeafTabs';
import { NoticeCard } from './NoticeCard';
import { ProblemPanel } from './ProblemPanel';
import { PastPanel } from './past/PastPanel';
import { RunnerPanel } from './RunnerPanel';

const MakePanel = lazy(async () => ({ default: (await import('../making/MakePanel')).MakePanel }));
const RoomPanel = lazy(async () => ({ default: (await import('../room/RoomPanel')).RoomPanel }));

export function SideColumn() {
  const leaf = useLeaf((s) => s.leaf);
  return (
    <aside className="side" aria-label="Beside the picture" data-leaf={leaf}>
      <NoticeCard />
      <BalanceCard />
      <LayOffer />
      <LayPanel />
      <LeafTabs />
      {/* On a phone the problems are a face of their own, whatever leaf lies on top. */}
      <div className="side-problems">
        <ProblemPanel />
      </div>
      <div className="side-tables" role="tabpanel" id={leafId(leaf)} aria-labelledby={`${leafId(leaf)}-tab`}>
        {leaf === 'numbers' && <Tables />}
        {leaf === 'room' && (
          <Suspense fallback={<p className="panel quiet">Loading…</p>}>
            <RoomPanel />
          </Suspense>
        )}
        {leaf === 'parts' && <PartsPanel />}
        {leaf === 'make' && (
          <Suspense fallback={<p className="panel quiet">Loading…</p>}>
            <MakePanel />
          </Suspense>
        )}
        {leaf === 'edit' && <EditPanel />}
        {leaf === 'past' && <PastPanel />}
      </div>
    </aside>
  );
}

const Tables = () => (
  <>
    <RunnerPanel />
    <BendPanel />
    <GroupPanel />
    <GapPanel />
  </>
);
