/** What comes of a chosen file and what was said of it: the curves in it, where they lie, or why not. mm. No React. */
import { type Loop, type PlacedDrawing, type Point2, placeDrawing, TraceError, traceRaster } from '../../../geometry';
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { DxfError, DxfUnitError } from '../../formats/dxf/dxfError';
import { type DxfUnit, readDxf } from '../../formats/dxf/read';
import type { Source } from './readSource';

export type Side = 'either' | 'as drawn' | 'turned over';

export type Wish = {
  readonly unit: DxfUnit | null;
  /** Two places in the picture, px from its top left; those not shown yet are null. */
  readonly points: readonly [Point2 | null, Point2 | null];
  readonly distance: number | null;
  /** Null: half-way between ink and paper. */
  readonly threshold: number | null;
  readonly side: Side;
  readonly turned: boolean;
  readonly fasteners: boolean;
  readonly openings: boolean;
};

export const FIRST_WISH: Wish = {
  unit: null,
  points: [null, null],
  distance: null,
  threshold: null,
  side: 'either',
  turned: false,
  fasteners: true,
  openings: false,
};

export type Found =
  | {
      readonly ok: true;
      readonly loops: readonly Loop[];
      readonly notes: readonly string[];
      readonly dpi: number | null;
    }
  /** `wants` the unit or the scale where that is all that is missing. */
  | { readonly ok: false; readonly problem: string; readonly wants: 'unit' | 'scale' | null };

/** The curves in the file. */
export function foundIn(source: Source, { unit, points: [a, b], distance, threshold }: Wish): Found {
  try {
    if (source.kind === 'dxf') {
      const { loops, notes } = readDxf(source.bytes, unit ?? undefined);
      return { ok: true, loops: loops.map(({ loop }) => loop), notes, dpi: null };
    }
    if (!a || !b || distance === null) return { ok: false, problem: missing(a, b), wants: 'scale' };
    const scale = { between: [a, b] as const, distance };
    const traced = traceRaster(source.raster, scale, threshold === null ? {} : { threshold });
    const stray = `The curves stray at most ${traced.stray.toFixed(2)} mm from the picture’s edges.`;
    return { ok: true, loops: traced.loops.map(({ loop }) => loop), notes: [stray], dpi: 25.4 / traced.mmPerPixel };
  } catch (error) {
    if (error instanceof DxfUnitError) return { ok: false, problem: unitWords(error.says), wants: 'unit' };
    if (error instanceof DxfError || error instanceof TraceError)
      return { ok: false, problem: sentence(error.message), wants: null };
    throw error;
  }
}

const missing = (a: Point2 | null, b: Point2 | null): string =>
  a && b
    ? 'Type how far apart the two points truly are.'
    : `Show two points whose distance you know, such as marks of a rule: tap the ${a ? 'second' : 'first'}.`;

const unitWords = (says: 'in' | null): string =>
  says === 'in'
    ? 'The file says that it is in inches: choose the unit that is right.'
    : 'The file does not say its unit: choose it.';

export type Placed =
  | { readonly ok: true; readonly drawing: PlacedDrawing }
  | { readonly ok: false; readonly problem: string };

export function placedOn(design: Design, flange: string, loops: readonly Loop[], { side, turned }: Wish): Placed {
  try {
    const mirrored = side === 'either' ? {} : { mirrored: side === 'turned over' };
    return { ok: true, drawing: placeDrawing(design, flange, loops, { ...mirrored, turned }) };
  } catch (error) {
    if (!(error instanceof DesignError)) throw error;
    return {
      ok: false,
      problem: `${sentence(error.path)} found ${error.found}; allowed: ${error.allowed}.`.replace('. found', ': found'),
    };
  }
}

const sentence = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1).replace(/\.$/, '')}.`;

/** An SVG path, y turned down. */
export function pathOfLoop(loop: Loop): string {
  const n = (x: number): string => String(Math.round(x * 1e4) / 1e4);
  const [start] = loop;
  const steps = loop.map(([x, y, bulge], k) => {
    const [u, v] = loop[(k + 1) % loop.length]!;
    if (bulge === 0) return `L${n(u)} ${n(-v)}`;
    const radius = n((Math.hypot(u - x, v - y) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
    return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${n(u)} ${n(-v)}`;
  });
  return `M${n(start![0])} ${n(-start![1])}${steps.join('')}Z`;
}
