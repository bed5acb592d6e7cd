/** Which two states of which designs are held against each other, and the version drawn over the view. */
import { create } from 'zustand';
import type { Design } from '../../../shared/design/types';

/** `now`: the open design as it stands; else a version of it, or another design, by id. */
export type Side = 'now' | `version/${string}` | `design/${string}`;

type CompareState = {
  readonly open: boolean;
  readonly before: Side;
  readonly after: Side;
  /** Drawn as thin lines over the open design; null: none. */
  readonly drawn: { readonly id: string; readonly of: string; readonly design: Design } | null;
};

export const useCompare = create<CompareState>()(() => ({ open: false, before: 'now', after: 'now', drawn: null }));

/** @param before what the open design is held against; absent: what was chosen last */
export const openCompare = (before?: Side): void =>
  useCompare.setState((s) => ({ open: true, before: before ?? s.before, after: before ? 'now' : s.after }));

export const closeCompare = (): void => useCompare.setState({ open: false });
