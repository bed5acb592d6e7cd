/** A flange's own edge, as drawn or traced: how many corners it has, and the way back to one that is made to fit. */
import { segmentsOf, setFields } from '../../../../shared/design/edit';
import type { Design } from '../../../../shared/design/types';
import { tellFailure } from '../../notices';
import { applyEdit } from '../applyEdit';

export function OwnOutline({ design, flange }: { readonly design: Design; readonly flange: string }) {
  const outline = design.flanges?.find(({ id }) => id === flange)?.outline;
  const drop = () => {
    const thing = { kind: 'flange', id: flange } as const;
    const label = `Edge of flange ${flange}: made to fit`;
    const problem = applyEdit((now) => setFields(now, [[[...segmentsOf(now, thing)!, 'outline'], undefined]]), label);
    if (problem !== null) tellFailure('The edge was not changed', problem);
  };
  return (
    <div className="inspector-section">
      <h3>Edge</h3>
      <p className="quiet">
        {outline ? `Its own, of ${outline.length} corners.` : 'Made to fit round ports, tubes and holes.'}
      </p>
      {outline && (
        <button type="button" className="button small" onClick={drop}>
          Make it to fit
        </button>
      )}
    </div>
  );
}
