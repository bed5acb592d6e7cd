/**
 * A cut round a tube that is not square, as paper wrapped round the tube shows it: how far along the tube the cut lies at
 * each angle round it. mm, radians. The angle is right-handed about the way from the square end toward the cut.
 */
export type WrapCut = {
  /** Good as a file's name: `collector m1 stub 2`. */
  readonly id: string;
  /** As the paper says it: "Collector m1, stub 2, outlet end". */
  readonly title: string;
  readonly outsideDiameter: number;
  readonly wall: number;
  /** The surface that `height` is measured on: paper goes round the outside, whichever it is. */
  readonly measuredOn: 'outside' | 'bore';
  /** From a square line round the tube to the cut, along the tube, at an angle from the seam. */
  readonly height: (angle: number) => number;
  /** Angles at which the curve has a corner, in [0, 2π). */
  readonly corners: readonly number[];
  /** Angle at which the piece stays longest, and at which it is shortest. */
  readonly heel: number;
  readonly crotch: number;
  /** What line of the tube the paper's seam lies on, so that it can be found on the tube. */
  readonly seam: string;
  /** What else has to be known to cut it. */
  readonly notes: readonly string[];
};
