/** Which shape is being drawn in the picture, if any, and the actions that begin it. Small: the drawing itself is loaded then. */
import { create } from 'zustand';
import type { NewShape } from '../../../shared/design/edit';
import type { Action } from '../actions/list/action';
import { needsDesign } from '../actions/list/workActions';
import { whenOpened } from '../document';
import { useRoomLook } from '../room/look';
import { useViewState } from '../viewState';

export const useDrawing = create<{ readonly shape: NewShape | null }>()(() => ({ shape: null }));

/** As said in the middle of a sentence. */
export const SHAPE_WORDS: Readonly<Record<NewShape, string>> = {
  box: 'box',
  capsule: 'bar',
  cylinder: 'cylinder',
  plane: 'plane',
};
export const SHAPES = Object.keys(SHAPE_WORDS) as readonly NewShape[];

/** What is drawn stands where things are at rest: whatever shows them elsewhere ends. */
export function startDrawing(shape: NewShape): void {
  const view = useViewState.getState();
  view.setMeasuring(false);
  view.explode(0);
  useRoomLook.getState().set({ coming: null, posed: null });
  useDrawing.setState({ shape });
}

export const stopDrawing = (): void => useDrawing.setState({ shape: null });

whenOpened(stopDrawing);

export const drawingActions: readonly Action[] = SHAPES.map((shape) => ({
  id: `draw.${shape}`,
  name: `Draw a ${SHAPE_WORDS[shape]} in the picture`,
  group: 'Edit',
  also: 'surrounding keep clear obstacle space room add new sketch',
  ...needsDesign,
  run: () => startDrawing(shape),
}));
