/**
 * The Make leaf: each tube group made the two ways, every piece and bend of the runners, what is bought and how it is cut, what it
 * comes to, and the workshop that all of it is for.
 */
import '../room/room.css';
import '../room/sections/reach.css';
import './make.css';
import '../inspect/inspect.css';
import { useHeader } from '../derived';
import { useDocument } from '../document';
import { HintLine } from '../inspect/HintLine';
import { useIsPreview } from '../route/shown';
import { openBench } from '../workbench/state';
import { answeredHeader, useMaking } from './answer';
import { useDraw } from './draw/useDraw';
import { StockSection } from './sections/StockSection';
import { SumSection } from './sections/SumSection';
import { TubesSection } from './sections/TubesSection';
import { WaysSection } from './sections/WaysSection';
import { WorkshopSection } from './sections/WorkshopSection';

export function MakePanel() {
  const design = useDocument((s) => s.design);
  const header = useHeader();
  const isPreview = useIsPreview();
  const { making, of, working, error } = useMaking();
  useDraw();
  if (!design || !header) return <p className="panel quiet">Nothing is open: open a design, or start a new header.</p>;
  const found = making && of ? { making, header: answeredHeader(of), busy: working } : null;
  return (
    <div className="room make" aria-busy={working}>
      {isPreview && (
        <p className="panel quiet">A layout is being looked at; what stands here is of the design as it was kept.</p>
      )}
      <div className="panel make-top">
        <button type="button" className="button strong" disabled={!found} onClick={openBench}>
          At the workbench…
        </button>
        <span className="quiet">{working ? (found ? 'Working it out again…' : 'Working it out…') : ''}</span>
      </div>
      {error !== null && !working && <p className="panel fails">Not found out: {error}</p>}
      {found && (
        <div className={working || error !== null ? 'stale' : undefined}>
          <WaysSection {...found} />
          <TubesSection {...found} />
          <StockSection {...found} />
          <SumSection {...found} />
        </div>
      )}
      <WorkshopSection design={design} header={header} />
      <HintLine />
    </div>
  );
}
