/** What every distance search answers, and the bookkeeping of the least one. */
import type { Vec3 } from '../../shared/vec3';

export type Gap = {
  /** Surface to surface, mm; negative where the two overlap. */
  readonly gap: number;
  /** A place to look at: between the two, on the first one's centerline or end. */
  readonly at: Vec3;
  /** Station of `at` on the first tube, where it has one. */
  readonly station: number;
};

/** Gaps this near to each other are not worth a further search, mm. */
export const GAP_RESOLUTION = 0.001;

export const lesser = (a: Gap | null, b: Gap | null): Gap | null => (!a ? b : !b ? a : b.gap < a.gap ? b : a);
