/**
 * DXF → closed curves in mm, with their layers: polylines, circles, full ellipses, and lines and arcs that join end to end.
 * What could be read in two ways (its unit, an open path, a spline) is refused with the place and what to do, never guessed.
 * Source: the DXF reference, ENTITIES and $INSUNITS.
 */
import { fitLoop, type Loop, type Point2 } from '../../../geometry';
import { MM_PER_INCH } from '../../../shared/units';
import { DxfError, DxfUnitError } from './dxfError';
import { joinCurves } from './joinCurves';
import { type Curve, type Ellipse, readCurves } from './readCurves';
import { readGroups } from './readGroups';

export type DxfUnit = 'mm' | 'in';

export type DxfDrawing = {
  /** mm, y up. */
  readonly loops: readonly { readonly loop: Loop; readonly layer: string }[];
  /** What someone should know, a sentence each. */
  readonly notes: readonly string[];
};

/** A flange's drawing has some ten thousand bytes. */
export const MAX_DXF_BYTES = 20_000_000;
/** Ends nearer than this meet, mm. */
const JOINT = 0.01;
/** How far arcs may stray from an ellipse, mm. */
const ELLIPSE_STRAY = 0.01;

/** mm in one of $INSUNITS' units, where a drawing of a flange may be in it. */
const UNITS: Readonly<Record<number, number>> = { 1: MM_PER_INCH, 4: 1, 5: 10, 6: 1000, 14: 100 };

/** @param unit of the file's numbers, whatever it says itself; needed where it says nothing, or inches @throws DxfError */
export function readDxf(bytes: Uint8Array, unit?: DxfUnit): DxfDrawing {
  if (bytes.length > MAX_DXF_BYTES)
    throw new DxfError(`it has ${bytes.length} bytes, at most ${MAX_DXF_BYTES} are read: save the flange alone`);
  const { unitCode, entities } = readGroups(bytes);
  const mm = scaleOf(unitCode, unit);
  const { curves, ellipses, leftOut } = readCurves(entities);
  const isWhole = (curve: Curve) => curve.closed || meetsItself(curve, JOINT / mm);
  const loops = [
    ...curves.filter(isWhole).map(({ vertices, layer }) => ({ loop: vertices, layer })),
    ...joinCurves(
      curves.filter((curve) => !isWhole(curve)),
      JOINT / mm,
    ),
  ].map(({ loop, layer }) => ({ loop: withoutDoubles(loop.map(([x, y, b]) => [x * mm, y * mm, b])), layer }));
  const all = [
    ...loops.filter(({ loop }) => loop.length >= 2),
    ...ellipses.map((e) => ({ loop: arcsOf(e, mm), layer: e.layer })),
  ];
  if (all.length === 0)
    throw new DxfError(
      'it holds no closed curve: draw the outline as a closed polyline, or as lines and arcs that meet',
    );
  const left = [...leftOut].map(([type, count]) => `${count} ${type}`).join(', ');
  const other = unit !== undefined && unitCode !== null && UNITS[unitCode] !== undefined && UNITS[unitCode] !== mm;
  return {
    loops: all,
    notes: [
      ...(left ? [`Left out, as no cuts: ${left}.`] : []),
      ...(other ? [`The file says another unit than ${unit === 'in' ? 'inches' : 'mm'}, which was asked for.`] : []),
    ],
  };
}

function scaleOf(code: number | null, unit: DxfUnit | undefined): number {
  if (unit !== undefined) return unit === 'in' ? MM_PER_INCH : 1;
  if (code === null || code === 0) throw new DxfUnitError(null);
  if (code === 1) throw new DxfUnitError('in');
  const mm = UNITS[code];
  if (mm === undefined)
    throw new DxfError(`its unit ($INSUNITS ${code}) is none that flanges are drawn in: save it in mm`);
  return mm;
}

function meetsItself({ vertices }: Curve, tolerance: number): boolean {
  const [first, last] = [vertices[0]!, vertices.at(-1)!];
  return vertices.length > 2 && Math.hypot(first[0] - last[0], first[1] - last[1]) <= tolerance;
}

/** Corners on top of the next are dropped, as the edge between them is none; the last may lie on the first. */
const withoutDoubles = (loop: Loop): Loop =>
  loop.filter(([x, y], k) => {
    const [u, v] = loop[(k + 1) % loop.length]!;
    return Math.hypot(u - x, v - y) > JOINT;
  });

const ELLIPSE_POINTS = 3600;

function arcsOf({ centre, major, ratio, place }: Ellipse, mm: number): Loop {
  const points = Array.from({ length: ELLIPSE_POINTS }, (_, k): Point2 => {
    const t = (2 * Math.PI * k) / ELLIPSE_POINTS;
    const [c, s] = [Math.cos(t), ratio * Math.sin(t)];
    return [mm * (centre[0] + c * major[0] - s * major[1]), mm * (centre[1] + c * major[1] + s * major[0])];
  });
  if (!(Math.hypot(...major) * mm > JOINT)) throw new DxfError(`${place}: it is an ellipse of no size: delete it`);
  const { loop, stray } = fitLoop(points, { tolerance: ELLIPSE_STRAY / 2, step: 6 });
  if (stray > ELLIPSE_STRAY)
    throw new DxfError(`${place}: arcs stray ${stray.toFixed(3)} mm from this ellipse: draw it as arcs`);
  return loop;
}
