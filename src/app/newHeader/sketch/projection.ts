/**
 * Three views of one scale as on a drawing: the engine seen from its ports, from above over that, and along the crankshaft
 * beside it (third-angle). Design frame in mm to pixels; y of the picture runs down.
 */
import type { Vec3 } from '../../../../shared/vec3';

export type Px = readonly [x: number, y: number];
export type ViewName = 'front' | 'plan' | 'end';
/** Design frame → the view's picture. */
export type Project = (p: Vec3) => Px;

export type Sheet = {
  readonly width: number;
  readonly height: number;
  /** Pixels in a millimetre. */
  readonly scale: number;
  readonly views: Readonly<Record<ViewName, Project>>;
  /** Top left corner of each view, for its name. */
  readonly corners: Readonly<Record<ViewName, Px>>;
  /** Bottom right corners. */
  readonly ends: Readonly<Record<ViewName, Px>>;
};

/** Room for names, axes and dimensions around each view, px. */
const MARGIN = 40;

/**
 * @param points what has to be seen. @param side 1: ports seen from +Y, so +X runs to the left; −1: from −Y
 * @param width px that there are. @param most px of height, at most
 */
export function sheetOf(points: readonly Vec3[], side: 1 | -1, width: number, most: number): Sheet {
  // Picture axes in mm: along the crankshaft to the right, outward down or left, up.
  const along = (p: Vec3) => -side * p[0];
  const out = (p: Vec3) => side * p[1];
  const range = (of: (p: Vec3) => number) => {
    const all = points.map(of);
    return { low: Math.min(...all), size: Math.max(...all) - Math.min(...all) };
  };
  const [x, y, z] = [range(along), range(out), range((p) => -p[2])];
  const scale = Math.max(
    0.01,
    Math.min((width - 4 * MARGIN) / (x.size + y.size), (most - 4 * MARGIN) / (y.size + z.size)),
  );
  const left = MARGIN + Math.max(0, (width - 4 * MARGIN - scale * (x.size + y.size)) / 2);
  const endLeft = left + scale * x.size + 2 * MARGIN;
  const frontTop = MARGIN + scale * y.size + 2 * MARGIN;
  return {
    width,
    height: frontTop + scale * z.size + MARGIN,
    scale,
    views: {
      plan: (p) => [left + scale * (along(p) - x.low), MARGIN + scale * (out(p) - y.low)],
      front: (p) => [left + scale * (along(p) - x.low), frontTop + scale * (-p[2] - z.low)],
      // Outward to the left, toward the view from the ports.
      end: (p) => [endLeft + scale * (y.low + y.size - out(p)), frontTop + scale * (-p[2] - z.low)],
    },
    corners: {
      plan: [left, MARGIN],
      front: [left, frontTop],
      end: [endLeft, frontTop],
    },
    ends: {
      plan: [left + scale * x.size, MARGIN + scale * y.size],
      front: [left + scale * x.size, frontTop + scale * z.size],
      end: [endLeft + scale * y.size, frontTop + scale * z.size],
    },
  };
}
