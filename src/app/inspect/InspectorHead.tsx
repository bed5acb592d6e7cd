/** What is being edited, its name (to be changed in place), and what can be done with it as a whole. */
import { rename, type Thing } from '../../../shared/design/edit';
import type { Design } from '../../../shared/design/types';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { type Ref, useSession } from '../session';
import { viewActions } from '../viewport/viewActions';
import { ActionButton } from './ActionButton';
import { applyEdit } from './applyEdit';
import { inspectActions } from './inspectActions';
import { kindName, nameOf } from './picked';
import { TextField } from './TextField';

const HEAD = ['inspect.lock', 'view.hide', 'view.isolate', 'inspect.duplicate', 'inspect.remove'];
/** Shorter than in the list of actions: what is picked stands above. */
const SHORT: Readonly<Record<string, string>> = { 'view.hide': 'Hide', 'view.isolate': 'Show alone' };

export function InspectorHead({ design, things }: { readonly design: Design; readonly things: readonly Thing[] }) {
  const [thing] = things;
  const paints = usePaints();
  if (!thing) return null;
  const paint = thing.kind === 'runner' && things.length === 1 ? paints.get(thing.id) : undefined;
  const named = things.length === 1 && !['engine', 'design', 'fastener'].includes(thing.kind);
  return (
    <>
      <div className="inspector-head">
        <h2>
          {things.length > 1
            ? nameOf(things)
            : thing.kind === 'fastener'
              ? capital(nameOf(things))
              : kindName(thing.kind)}
          {paint && <Swatch paint={paint} />}
        </h2>
        {thing.kind !== 'design' && (
          <button type="button" className="link" onClick={() => useSession.getState().select(null)}>
            whole design
          </button>
        )}
      </div>
      {things.length > 1 && <p className="note">Typed values go to all of them, as one step.</p>}
      {named && (
        <TextField
          label="Name"
          value={thing.id}
          meaning="letters, digits, - and _; all that names it follows"
          onCommit={(to) => {
            const problem = applyEdit((now) => rename(now, thing, to), `Rename ${nameOf([thing])} → ${to}`);
            if (problem === null) useSession.getState().select({ ...thing, id: to } as Ref);
            return problem;
          }}
        />
      )}
      {thing.kind !== 'design' && (
        <div className="inspector-acts">
          {HEAD.flatMap((id) => [...inspectActions, ...viewActions].filter((action) => action.id === id)).map(
            (action) => (
              <ActionButton key={action.id} action={action} design={design} name={SHORT[action.id]} />
            ),
          )}
        </div>
      )}
    </>
  );
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1);
