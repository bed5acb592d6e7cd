/** The nearest design in which every rule holds and each group's lengths are equal. */
import type { Design } from '../../shared/design/types';
import type { Meshes } from '../check/meshes';
import type { CheckReport } from '../check/report';

export type BalanceResult = {
  /** The design given, with new `points` (and inlets, where they were left out). */
  readonly design: Design;
  /** `check` of that design: `ok`, or which rules stop it and by how much. */
  readonly report: CheckReport;
  readonly iterations: number;
  /** How far each runner's points moved at most, mm. */
  readonly moved: readonly { readonly id: string; readonly distance: number }[];
};

export function balance(_design: Design, _meshes: Meshes = new Map()): BalanceResult {
  throw new Error('not built yet');
}
