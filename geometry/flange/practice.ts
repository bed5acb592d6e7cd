/**
 * What is usual where a design leaves it open, and what is asked of a flange that will be welded and bolted on: common practice,
 * from memory where no source is named, and said so where a remark rests on it. mm.
 */
import type { Flange } from '../../shared/design/types';

/** Steel header flanges are 8 to 12 mm thick, 10 being usual; thinner ones warp when welded. */
export const LEAST_THICKNESS = 8;

/** Metal round openings and holes: eight tenths of the thickness, so that heat and clamping are carried off evenly. */
export const borderOf = ({ border, thickness }: Pick<Flange, 'border' | 'thickness'>): number =>
  border ?? Math.max(LEAST_BORDER, 0.8 * thickness);
const LEAST_BORDER = 6;

/** A fillet as strong as the tube's wall is as thick in the throat, so its leg is √2 walls; thin walls get no less than 2 mm. */
export const weldLeg = (wall: number): number => Math.max(2, Math.SQRT2 * wall);

/** From what is welded on to the plate's edge: the leg, and metal beyond it so that the edge does not melt back. */
export const weldRoom = (wall: number): number => Math.max(3, 2 * wall);

/** Of the height at the ports, so much is kept between them, or the flange bends there and its gasket leaks. */
export const WEB_SHARE = 0.4;

/** Left under a step, so that it does not burn through and still locates the gasket's edge. */
export const LEAST_LAND = 3;

/** A tube stands on at least so much of a step's floor all round. */
export const LEAST_LEDGE = 0.5;

export const STEP_GAP = 0.2;
export const stepDepthOf = ({ stepDepth, thickness }: Flange): number => stepDepth ?? thickness / 2;

/** A nut's washer stands on so much more than its own width. */
export const WASHER_LAND = 1;

/** Separate plates are parted by so much, so that each can grow with heat. */
export const PARTING = 1;
/** Where they are parted, their corners are rounded, for the hands that fit them. */
export const CORNER = 2;

/** Ports of one plate are parallel and in one plane, within what a file can true up; beyond that much no one plate fits, and a fastener is misplaced. */
export const SQUARE_DEG = 0.1;
export const MOST_LEAN_DEG = 10;
export const FLAT = 0.05;
export const MOST_OFF_PLANE = 1;

/** From a port's edge, in border widths: a fastener farther off (64 mm at a plate of 10) presses on no gasket. */
export const FARTHEST_BORDERS = 8;

/** A fastener serves each port that is at most so much farther than its nearest one. */
export const SERVES = 1.25;
