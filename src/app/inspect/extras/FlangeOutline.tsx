/** Where a flange's outline comes from: made to fit, or drawn; from here it is taken from a file, or given up. */
import { setFields } from '../../../../shared/design/edit';
import type { Design } from '../../../../shared/design/types';
import { tellFailure } from '../../notices';
import { openOutline } from '../../tracing/state';
import { applyEdit } from '../applyEdit';

export function FlangeOutline({ design, flange }: { readonly design: Design; readonly flange: string }) {
  const at = design.flanges?.findIndex((f) => f.id === flange) ?? -1;
  const outline = design.flanges?.[at]?.outline;
  const drop = () => {
    const label = `Outline of ${flange}: made to fit`;
    const problem = applyEdit((now) => setFields(now, [[['flanges', at, 'outline'], undefined]]), label);
    if (problem !== null) tellFailure('The outline was not changed', problem);
  };
  return (
    <div className="inspector-section">
      <h3>Outline</h3>
      <p className="note">
        {outline ? `As drawn: ${outline.length} straights and arcs.` : 'Made to fit its ports and fasteners.'}
      </p>
      <div className="inspector-acts">
        <button type="button" className="button small" onClick={() => openOutline(flange)}>
          Outline from a drawing or scan…
        </button>
        {outline && (
          <button type="button" className="button small" onClick={drop}>
            Make it fit
          </button>
        )}
      </div>
    </div>
  );
}
