/** Things of several kinds picked together: named, each a click from being picked alone, and acted on as one. */
import { placeOfThing, type Thing } from '../../../shared/design/edit';
import { useDocument } from '../document';
import { type Ref, useSession } from '../session';
import { ActionButton } from './ActionButton';
import { inspectActions } from './inspectActions';
import { nameOf } from './picked';

export function MixedInspector({ things }: { readonly things: readonly Thing[] }) {
  const design = useDocument((s) => s.design);
  return (
    <section className="panel inspector" aria-label="Edit">
      <div className="inspector-head">
        <h2>{nameOf(things)}</h2>
      </div>
      <div className="outline-things">
        {things.map((thing) => (
          <button
            key={placeOfThing(thing)}
            type="button"
            className="chip"
            onClick={() => useSession.getState().select(thing as Ref)}
          >
            {nameOf([thing])}
          </button>
        ))}
      </div>
      <div className="inspector-acts">
        {design &&
          inspectActions
            .filter(({ id }) => id === 'inspect.lock' || id === 'inspect.remove')
            .map((action) => <ActionButton key={action.id} action={action} design={design} />)}
      </div>
    </section>
  );
}
