/**
 * The Room leaf: what is near the header, how it moves, whether tools reach what they must, how it is wrapped, how it comes
 * off, its sensors. Sections open one by one; what a closed one would say stands beside its name.
 */
import './room.css';
import { useHeader } from '../derived';
import { useDocument } from '../document';
import { useIsPreview } from '../route/shown';
import { GapSection } from './sections/GapSection';
import { MotionSection } from './sections/MotionSection';
import { RemovalSection } from './sections/RemovalSection';
import { SensorSection } from './sections/SensorSection';
import { ToolSection } from './sections/ToolSection';
import { WrapSection } from './sections/WrapSection';

export function RoomPanel() {
  const design = useDocument((s) => s.design);
  const header = useHeader();
  const isPreview = useIsPreview();
  if (!design || !header) return <p className="panel quiet">Nothing is open: open a design, or start a new header.</p>;
  const of = { design, header };
  return (
    <div className="room">
      {isPreview && (
        <p className="panel quiet">A layout is being looked at; what stands here is of the design as it was kept.</p>
      )}
      <GapSection {...of} />
      <MotionSection {...of} />
      <ToolSection {...of} />
      <WrapSection {...of} />
      <RemovalSection {...of} />
      <SensorSection {...of} />
    </div>
  );
}
