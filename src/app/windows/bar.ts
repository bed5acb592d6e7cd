/** Where a window and the length asked lie on a bar, as parts of its width from the left. */
import { isOutside, type Window } from '../../../geometry';

export type Bar = {
  readonly from: number;
  /** 1 where the window has no upper end. */
  readonly to: number;
  /** Null where no length is asked or drawn. */
  readonly mark: number | null;
  readonly isOutside: boolean;
};

/** Room on either side of what is shown, as a part of it, and how far a window without an upper end is drawn. */
const MARGIN = 0.12;
const ONWARD = 1.6;

/** @param length asked, or measured where none is asked */
export function barOf(window: Window, length: number | null): Bar | null {
  const { shortest, longest } = window;
  // A group whose members have no length in common has no stretch to draw.
  if (shortest === null || (longest !== null && longest < shortest)) return null;
  const low = Math.min(shortest, length ?? shortest);
  const high = Math.max(longest ?? ONWARD * shortest, length ?? 0);
  const margin = Math.max(MARGIN * (high - low), 1);
  const place = (mm: number): number => (mm - low + margin) / (high - low + 2 * margin);
  return {
    from: place(shortest),
    to: longest === null ? 1 : place(longest),
    mark: length === null ? null : place(length),
    isOutside: length !== null && isOutside(length, window),
  };
}
