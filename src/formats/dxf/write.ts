/**
 * Drawings of closed curves as DXF, for a laser or a mill: polylines with bulges and circles, a layer each kind, in mm. Two
 * dialects, because shops disagree: R2000 (light polylines) and R12 (what the oldest machines read). Same drawing, same bytes.
 */
import { type Loop, loopBounds, type Point2 } from '../../../geometry';
import { r12 } from './r12';
import { r2000 } from './r2000';

export type DxfLayer = {
  readonly name: string;
  /** By the format's colour index: 7 is black on white. */
  readonly colour: number;
};
export type DxfCurve = { readonly layer: string; readonly loop: Loop };
export type DxfDrawing = { readonly layers: readonly DxfLayer[]; readonly curves: readonly DxfCurve[] };

/** A curve as both dialects write it. */
export type Entity =
  | { readonly layer: string; readonly circle: { readonly centre: Point2; readonly radius: number } }
  | { readonly layer: string; readonly loop: Loop };

export type Extents = { readonly min: Point2; readonly max: Point2 };

export const DXF_VERSIONS = ['R2000', 'R12'] as const;
export type DxfVersion = (typeof DXF_VERSIONS)[number];

/** @throws RangeError on a curve that is none, a layer that is not listed, or a number that is not finite */
export function writeDxf({ layers, curves }: DxfDrawing, version: DxfVersion): string {
  for (const { layer, loop } of curves) {
    if (!layers.some(({ name }) => name === layer)) throw new RangeError(`The drawing has no layer ${layer}`);
    if (loop.length < 2) throw new RangeError(`A closed curve on layer ${layer} has ${loop.length} corners`);
  }
  const entities = curves.map(entityOf);
  return (version === 'R12' ? r12 : r2000)(layers, entities, extentsOf(curves));
}

/** Two half circles are a circle: drills and probes look for those. */
function entityOf({ layer, loop }: DxfCurve): Entity {
  const [a, b] = loop;
  if (loop.length !== 2 || Math.abs(a![2]) !== 1 || a![2] !== b![2]) return { layer, loop };
  const centre: Point2 = [(a![0] + b![0]) / 2, (a![1] + b![1]) / 2];
  return { layer, circle: { centre, radius: Math.hypot(a![0] - b![0], a![1] - b![1]) / 2 } };
}

function extentsOf(curves: readonly DxfCurve[]): Extents {
  if (curves.length === 0) return { min: [0, 0], max: [0, 0] };
  const all = curves.map(({ loop }) => loopBounds(loop));
  const least = (k: 0 | 1) => Math.min(...all.map(({ min }) => min[k]));
  const most = (k: 0 | 1) => Math.max(...all.map(({ max }) => max[k]));
  return { min: [least(0), least(1)], max: [most(0), most(1)] };
}
