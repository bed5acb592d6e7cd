/** What a picture of curves names: every run that has something in it, and what was measured. */
import type { Paint } from '../../colours';
import type { PanelWish } from './frame';

/** `paint` null: the mark of what was measured. */
export type Legend = { readonly title: string; readonly paint: Paint | null };

export const MEASURED_TITLE = 'Measured on the engine, brought to the crank';

export function legendOf(panels: readonly PanelWish[]): readonly Legend[] {
  const [first] = panels;
  const drawn = (first?.series ?? []).filter(({ points, failed }) => points.length > 0 || failed.length > 0);
  const measured = panels.some((panel) => panel.measured.length > 0);
  return [
    ...drawn.map(({ title, paint }) => ({ title, paint })),
    ...(measured ? [{ title: MEASURED_TITLE, paint: null }] : []),
  ];
}
