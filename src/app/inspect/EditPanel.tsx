/** The Edit leaf: what is picked, field by field; where nothing is, the design and all there is in it. */
import './inspect.css';
import { useHeader } from '../derived';
import { useDocument } from '../document';
import { useSession } from '../session';
import { HintLine } from './HintLine';
import { Inspector } from './Inspector';
import { MixedInspector } from './MixedInspector';
import { Outline } from './Outline';
import { pickedOf } from './picked';

export function EditPanel() {
  const design = useDocument((s) => s.design);
  const header = useHeader();
  const selection = useSession((s) => s.selection);
  if (!design || !header) return <p className="panel quiet">Nothing is open: open a design, or start a new header.</p>;
  const picked = pickedOf(selection, design);
  return (
    <>
      {picked.kind === 'one kind' && <Inspector design={design} header={header} things={picked.things} />}
      {picked.kind === 'mixed' && <MixedInspector things={picked.things} />}
      {picked.kind === 'nothing' && (
        <>
          <Inspector design={design} header={header} things={[{ kind: 'design', id: '' }]} />
          <Outline design={design} />
        </>
      )}
      <HintLine />
    </>
  );
}
