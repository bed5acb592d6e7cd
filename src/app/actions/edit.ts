/**
 * An edit of the design by a typed value or a choice, as one step of history. The header follows as near as every rule
 * allows; where it cannot, the edit stands as it was asked for and the problems say what fails.
 */
import type { Design } from '../../../shared/design/types';
import { documents } from '../document';

/** @param label names the step in history, such as "Move port p1" */
export function edit(next: Design, label: string): void {
  documents.apply(next, label);
}
