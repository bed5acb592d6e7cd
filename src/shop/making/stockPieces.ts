/** What is cut from bars and bends: the pieces of welded tubes, whole tubes that are bent, and the tubes of collectors. mm, degrees. */
import type { Header, HeaderPart } from '../../../geometry';
import type { Tube } from '../../../shared/design/types';
import type { BarPiece, BendPiece } from '../nest/stockPlan';
import type { BentTube, WeldedTube } from './report';

export type StockPieces = { readonly bars: readonly BarPiece[]; readonly bends: readonly BendPiece[] };

export function weldedPieces(tubes: readonly WeldedTube[], tubeOf: (runner: string) => Tube): StockPieces {
  const bars: BarPiece[] = [];
  const bends: BendPiece[] = [];
  for (const { runner, pieces } of tubes) {
    const tube = tubeOf(runner);
    for (const { id, kind, angle, radius, sawnIn, sawnOut } of pieces)
      if (kind === 'straight') bars.push({ piece: id, tube, length: sawnIn });
      else bends.push({ piece: id, tube, radius, angle, legs: [sawnIn, sawnOut] });
  }
  return { bars, bends };
}

export const bentPieces = (tubes: readonly BentTube[], tubeOf: (runner: string) => Tube): StockPieces => ({
  bars: tubes.map(({ id, runner, cutLength }) => ({ piece: id, tube: tubeOf(runner), length: cutLength })),
  bends: [],
});

/** Stubs and plain outlets, as long as they are at their longest. */
export function collectorPieces({ merges }: Header, parts: readonly HeaderPart[]): BarPiece[] {
  return parts.flatMap(({ id, kind, of, mesh, material }): BarPiece[] => {
    const merge = merges.get(of.id);
    if (!merge || (kind !== 'stub' && kind !== 'outlet')) return [];
    const outsideDiameter = kind === 'stub' ? merge.inletOutsideDiameter : merge.merge.outletDiameter;
    const tube: Tube = { outsideDiameter, wall: merge.wall, ...(material ? { material } : {}) };
    return [{ piece: id.replace(/^collector /, ''), tube, length: alongOwnAxis(mesh.positions) }];
  });
}

function alongOwnAxis(positions: Float64Array): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 2; i < positions.length; i += 3) {
    low = Math.min(low, positions[i]!);
    high = Math.max(high, positions[i]!);
  }
  return high - low;
}
