/** A copy of the open design, beside it on the shelf; also of one that another tab works on. */
import { documents } from '../document';
import { linesOf, tellFailure } from '../notices';
import { shelf } from './browserShelf';

export const copyOpenDesign = (): Promise<void> =>
  shelf.duplicate(documents.store.getState().id).catch((error) => tellFailure('There is no copy', ...linesOf(error)));
