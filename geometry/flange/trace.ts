/**
 * From a scanned picture to closed curves at true size: the largest region of one shade and the gaps in it, as straights and
 * arcs. Two points of the picture with their true distance set the scale. mm, y up, from the picture's bottom left; a
 * scanner's own error of scale along and across its bed is not known here.
 */

import type { Circle } from '../plane/fitCircle';
import { fitLoop } from '../plane/fitLoop';
import type { Loop, Point2 } from '../plane/loop';
import { isInPolygon } from '../plane/within';
import { type Contour, contours, lightRim } from '../trace/contours';
import { type Raster, TraceError, usualThreshold } from '../trace/raster';

export type Shade = 'dark' | 'light';

export type RegionOptions = {
  /** 0 to 255. Default: half-way between what is usual in the picture's dark and light. */
  readonly threshold?: number;
  /** Of the gasket. Default: not that of the picture's rim. */
  readonly shade?: Shade;
  /** Contours round less are dropped, px². */
  readonly speck: number;
};

export type Region = {
  readonly threshold: number;
  readonly shade: Shade;
  /** The region's edge, then the edges of the gaps in it, largest first; px from the top left, y down. */
  readonly edges: readonly Contour[];
  readonly specks: number;
};

/** More gaps than any gasket has. */
const MOST_GAPS = 200;

/** The largest region of one shade, and what is missing in it. */
export function largestRegion(raster: Raster, options: RegionOptions): Region {
  const threshold = options.threshold ?? usualThreshold(raster);
  const shade = options.shade ?? (lightRim(raster, threshold) ? 'dark' : 'light');
  const { kept, specks } = contours(raster, { level: threshold, dark: shade === 'dark', speck: options.speck });
  const byArea = [...kept].sort((a, b) => Math.abs(b.area) - Math.abs(a.area));
  const outer = byArea.find(({ area }) => area > 0);
  if (!outer)
    throw new TraceError(
      `nothing ${shade === 'dark' ? 'darker' : 'lighter'} than ${round(threshold)} of 255 was found${specks > 0 ? ', but specks; change the threshold, or check the distance that sets the scale' : '; change the threshold'}`,
    );
  if (outer.cut)
    throw new TraceError(
      `what is traced runs off the picture's ${sideOf(outer, raster)}: scan it whole, with a rim of paper all round, or change the threshold`,
    );
  const islands = byArea.filter((c) => c.area > 0 && c !== outer && isInPolygon(c.points[0]!, outer.points));
  const gaps = byArea.filter(
    (c) =>
      c.area < 0 &&
      isInPolygon(c.points[0]!, outer.points) &&
      !islands.some((island) => isInPolygon(c.points[0]!, island.points)),
  );
  const [widest] = gaps;
  if (
    widest &&
    -widest.area > LINE_DRAWING * outer.area &&
    islands.some((i) => isInPolygon(i.points[0]!, widest.points))
  )
    throw new TraceError(
      'it looks drawn in lines, which have two edges each: fill the metal in, or scan the gasket itself',
    );
  if (gaps.length > MOST_GAPS)
    throw new TraceError(
      `${gaps.length} gaps were found in it, at most ${MOST_GAPS} are taken: it is grainy; change the threshold, or scan it flat and clean`,
    );
  return { threshold, shade, edges: [outer, ...gaps], specks: specks + kept.length - 1 - gaps.length };
}

/** A gap that takes up this share of its region, with islands in it, is the inside of a drawn line. */
const LINE_DRAWING = 0.6;

function sideOf({ points }: Contour, { width, height }: Raster): string {
  const sides = [
    ['left edge', points.some(([x]) => x < 0.5)],
    ['right edge', points.some(([x]) => x > width - 0.5)],
    ['top', points.some(([, y]) => y < 0.5)],
    ['bottom', points.some(([, y]) => y > height - 0.5)],
  ] as const;
  return sides.find(([, touched]) => touched)?.[0] ?? 'edge';
}

export type Scale = {
  /** Two points of the picture, px from its top left. */
  readonly between: readonly [Point2, Point2];
  /** Between them in truth, mm. */
  readonly distance: number;
};

export type TraceOptions = Omit<RegionOptions, 'speck'> & {
  /** How far the curves may stray from the edge in the picture, mm. Default 0.1, or three quarters of a pixel. */
  readonly tolerance?: number;
};

export type Traced = {
  /** The outline first. */
  readonly loops: readonly { readonly loop: Loop; readonly circle: Circle | null }[];
  readonly mmPerPixel: number;
  readonly threshold: number;
  readonly shade: Shade;
  readonly specks: number;
  /** Greatest distance of the picture's edge from the curves, mm. */
  readonly stray: number;
};

export const DEFAULT_TRACE_TOLERANCE = 0.1;
/** Narrower than this, mm, nothing in a gasket is meant: dust, and dents in its edge. */
const LEAST_HOLE = 3;
/** Nearer points than this, px, set no scale. */
const LEAST_SPAN = 20;
/** mm; coarser pictures show no bolt hole to its size. */
const COARSEST = 0.6;
/** mm; finer than any flatbed scanner resolves (2400 dpi, from memory): a distance that is too short. */
const FINEST = 0.01;

/** @throws TraceError */
export function scaleOf({ between: [a, b], distance }: Scale): number {
  if (!(distance > 0)) throw new TraceError(`the two points are ${round(distance)} mm apart: give a distance above 0`);
  const span = Math.hypot(a[0] - b[0], a[1] - b[1]);
  if (!(span >= LEAST_SPAN))
    throw new TraceError(
      `the two points are ${round(span)} px apart: take two that are far apart, ${LEAST_SPAN} px at least`,
    );
  const mmPerPixel = distance / span;
  if (mmPerPixel < FINEST)
    throw new TraceError(
      `a pixel would be ${Number(mmPerPixel.toPrecision(2))} mm, ${Math.round(25.4 / mmPerPixel)} dots an inch, finer than scanners see: check the two points and their distance`,
    );
  if (!(mmPerPixel <= COARSEST))
    throw new TraceError(
      `a pixel would be ${round(mmPerPixel)} mm: at most ${COARSEST} are of use; scan it at 150 dpi or more, and check the points and their distance`,
    );
  return mmPerPixel;
}

/** Contours round less are specks, px². */
export const speckOf = (mmPerPixel: number): number => (Math.PI / 4) * (LEAST_HOLE / mmPerPixel) ** 2;

/** @throws TraceError */
export function traceRaster(raster: Raster, scale: Scale, options: TraceOptions = {}): Traced {
  const mmPerPixel = scaleOf(scale);
  const region = largestRegion(raster, { ...options, speck: speckOf(mmPerPixel) });
  const tolerance = Math.max(options.tolerance ?? DEFAULT_TRACE_TOLERANCE, 0.75 * mmPerPixel);
  const fitted = region.edges.map(({ points, area }) => {
    // Turned over to y up, the region's edge runs clockwise, the gaps' counter-clockwise.
    const flipped = points.map(([x, y]): Point2 => [x * mmPerPixel, (raster.height - y) * mmPerPixel]);
    const turned = area > 0 ? flipped.reverse() : flipped;
    return fitLoop(turned, { tolerance, noise: 0.15 * mmPerPixel, step: 0.5 / mmPerPixel });
  });
  return {
    loops: fitted.map(({ loop, circle }) => ({ loop, circle })),
    mmPerPixel,
    threshold: region.threshold,
    shade: region.shade,
    specks: region.specks,
    stray: Math.max(...fitted.map(({ stray }) => stray)),
  };
}

const round = (value: number): number => Math.round(value * 100) / 100;
