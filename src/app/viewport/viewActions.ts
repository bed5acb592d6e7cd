/** Looking, as actions: fit, the named views, perspective, what is hidden, where the picture is cut, and parts apart. */

import type { Action } from '../actions/list/action';
import { needsDesign } from '../actions/list/workActions';
import { headerOf } from '../derived';
import { documents } from '../document';
import { useSession, type ViewPreset } from '../session';
import { AXES, type HideKey, hideKey, useViewState } from '../viewState';
import { FIT_KEY, PARALLEL_KEY, VIEWS } from './camera/keys';
import { countHidden } from './hideable';

const FROM: Readonly<Record<ViewPreset, string>> = {
  corner: 'from above a corner',
  front: 'from the front of the engine',
  back: 'from the back of the engine',
  left: "from the engine's left",
  right: "from the engine's right",
  top: 'from above',
  bottom: 'from below',
};

/** What is picked, as far as it can be hidden. */
const pickedKeys = (): HideKey[] => [
  ...new Set(
    useSession
      .getState()
      .selection.map(hideKey)
      .filter((k) => k !== null),
  ),
];
const hasPicked = () => pickedKeys().length > 0;
const WHY_PICK = 'Pick a runner, collector, flange or surrounding first';

const hiddenCount = (): number => {
  const { design } = documents.store.getState();
  return design ? countHidden(headerOf(design), useViewState.getState()) : 0;
};

export const viewActions: readonly Action[] = [
  {
    id: 'view.fit',
    name: 'Fit the header in the view',
    group: 'View',
    keys: [FIT_KEY],
    also: 'zoom all home',
    ...needsDesign,
    run: () => useSession.getState().ask({ kind: 'fit' }),
  },
  ...VIEWS.map(
    ({ preset, word, key }): Action => ({
      id: `view.${preset}`,
      name: `${word} view`,
      group: 'View',
      keys: [key],
      also: `look ${FROM[preset]}`,
      ...needsDesign,
      run: () => useSession.getState().ask({ kind: 'preset', preset }),
    }),
  ),
  {
    id: 'view.parallel',
    name: 'Switch between parallel and perspective',
    group: 'View',
    keys: [PARALLEL_KEY],
    also: 'projection drawing camera',
    ...needsDesign,
    run: () => useViewState.getState().setParallel(!useViewState.getState().parallel),
  },
  {
    id: 'view.hide',
    name: 'Hide what is picked',
    group: 'Show and hide',
    keys: ['H'],
    ready: hasPicked,
    why: () => WHY_PICK,
    run: () => {
      useViewState.getState().setHidden(pickedKeys(), true);
      useSession.getState().select(null);
    },
  },
  {
    id: 'view.isolate',
    name: 'Show only what is picked',
    group: 'Show and hide',
    keys: ['I'],
    also: 'isolate alone',
    ready: hasPicked,
    why: () => WHY_PICK,
    run: () => useViewState.getState().isolate(pickedKeys()),
  },
  {
    id: 'view.show-all',
    name: 'Show all that is hidden',
    group: 'Show and hide',
    keys: ['Shift+H'],
    also: 'unhide reveal',
    ready: () => hiddenCount() > 0,
    why: () => 'Nothing is hidden',
    run: () => useViewState.getState().isolate(null),
  },
  {
    id: 'view.explode',
    name: 'Show the parts apart, or together',
    group: 'View',
    keys: ['X'],
    also: 'explode exploded assembly disassemble',
    ...needsDesign,
    run: () => {
      const { exploded, explode } = useViewState.getState();
      explode(exploded > 0 ? 0 : 1);
    },
  },
  ...AXES.map(
    (axis): Action => ({
      id: `view.cut-${axis}`,
      name: `Cut the view square to ${axis.toUpperCase()}`,
      group: 'Cut',
      keys: [`Shift+${axis.toUpperCase()}`],
      also: 'section plane inside open',
      ...needsDesign,
      run: () => {
        const { cuts, setCut } = useViewState.getState();
        setCut(axis, { on: !cuts[axis].on });
      },
    }),
  ),
  {
    id: 'view.uncut',
    name: 'Undo all cuts of the view',
    group: 'Cut',
    also: 'section whole',
    ready: () => AXES.some((a) => useViewState.getState().cuts[a].on),
    why: () => 'The view is not cut',
    run: () => {
      for (const axis of AXES) useViewState.getState().setCut(axis, { on: false });
    },
  },
];
