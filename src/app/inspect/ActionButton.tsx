/** An action as a small button; it shows whether it can be done for what is picked now. */
import type { Design } from '../../../shared/design/types';
import type { Action } from '../actions/list/action';
import { useSession } from '../session';
import { useViewState } from '../viewState';

type Props = { readonly action: Action; readonly design: Design; readonly name?: string | undefined };

/** @param props.design only so that the button is drawn anew with it */
export function ActionButton({ action, name: short }: Props) {
  useSession((s) => s.selection);
  useViewState((s) => s.hidden);
  if (!(action.ready?.() ?? true)) return null;
  const name = short ?? ('naming' in action ? (action as NamedAction).naming() : action.name);
  return (
    <button type="button" className="button small" onClick={() => void action.run()} title={action.keys?.[0]}>
      {name}
    </button>
  );
}

/** An action whose word on its button says which way it would go. */
export type NamedAction = Action & { naming(): string };
