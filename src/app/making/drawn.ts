/** What the Make leaf has drawn into the picture, for as long as it lies on top. Small, because the picture waits for it. */
import { create } from 'zustand';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

export type MakeDrawn = {
  /** The design that it is of: nothing of it is drawn over another. */
  readonly of: Design;
  /** Rings at welds within tubes, and round the ends of the piece that is meant: pairs of points, three numbers each. */
  readonly welds: readonly number[];
  readonly ends: readonly number[];
  /** Texts that must be read. */
  readonly notes: readonly { readonly key: string; readonly text: string; readonly at: Vec3; readonly fails: false }[];
};

export const useMakeDrawn = create<{ readonly drawn: MakeDrawn | null }>()(() => ({ drawn: null }));
