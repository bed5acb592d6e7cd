/** Every action there is, gathered from the modules that offer them; headings come in this order. */
import { drawingActions } from '../../drawing/state';
import { forecastActions } from '../../forecast/state';
import { inspectActions } from '../../inspect/inspectActions';
import { makingActions } from '../../making/actions';
import { measureActions } from '../../measure/measureActions';
import { importActions } from '../../meshes/importing/state';
import { mirrorActions } from '../../mirror/state';
import { newHeaderActions } from '../../newHeader/actions';
import { paperActions } from '../../paperChoice';
import { waveActions } from '../../pulse/state';
import { roomActions } from '../../room/actions';
import { routeActions } from '../../route/actions';
import { shapeActions } from '../../shape/actions';
import { templateActions } from '../../template/state';
import { tracingActions } from '../../tracing/state';
import { pictureActions } from '../../viewport/picture/pictureActions';
import { viewActions } from '../../viewport/viewActions';
import type { Action } from './action';
import { fileActions } from './fileActions';
import { matches, type Pressed, parseKeys } from './keys';
import { listActions } from './listState';
import { pickActions } from './pickActions';
import { workActions } from './workActions';

export const allActions: readonly Action[] = [
  ...workActions,
  ...templateActions,
  ...forecastActions,
  ...waveActions,
  ...paperActions,
  ...fileActions,
  ...newHeaderActions,
  ...mirrorActions,
  ...routeActions,
  ...pickActions,
  ...inspectActions,
  ...tracingActions,
  ...drawingActions,
  ...importActions,
  ...shapeActions,
  ...viewActions,
  ...roomActions,
  ...makingActions,
  ...measureActions,
  ...pictureActions,
  ...listActions,
];

export const isReady = (action: Action): boolean => action.ready?.() ?? true;

/** The action that a pressed key asks for, whether or not it can be done now. */
export function actionFor(pressed: Pressed, actions: readonly Action[] = allActions): Action | null {
  const meant = actions.filter((a) => a.keys?.some((keys) => matches(parseKeys(keys), pressed)));
  return meant.find(isReady) ?? meant[0] ?? null;
}

export const actionById = (id: string): Action => {
  const action = allActions.find((a) => a.id === id);
  if (!action) throw new RangeError(`There is no action ${id}`);
  return action;
};
