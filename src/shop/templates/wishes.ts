/**
 * A template of one's own: a saddle or a segmented bend as it is asked for, what of it cannot be, and the cut that comes of
 * it. mm and degrees, as people give them.
 */
import { mitreCut, type SegmentedBend, saddleCut, segmentedBend, type WrapCut } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { formatAngle, formatLength } from '../../../shared/units';

type Tube = { readonly outsideDiameter: number; readonly wall: number; readonly measuredOn: 'outside' | 'bore' };
export type SaddleWish = Tube & {
  readonly kind: 'saddle';
  /** Outside diameter of the tube it sits on. */
  readonly onto: number;
  readonly angle: number;
  readonly offset: number;
};
export type MitreWish = Tube & {
  readonly kind: 'mitre';
  readonly angle: number;
  readonly joints: number;
  readonly radius: number;
};
export type TemplateWish = SaddleWish | MitreWish;

export type WishField = 'outsideDiameter' | 'wall' | 'onto' | 'angle' | 'offset' | 'joints' | 'radius';
export type WishRefusal = { readonly field: WishField; readonly found: string; readonly allowed: string };

/** Narrower, paper does not wrap; wider is no tube of an exhaust. */
const TUBE = [10, 600] as const;
const ONTO = [10, 2000] as const;
/** A branch that leans more runs along its header for many diameters. */
const SHARPEST = 10;
const MOST_JOINTS = 24;
const FARTHEST = 5000;
/** Of the cut from square, degrees: beyond, a joint turns by more than a right angle. */
const STEEPEST = 45;
/** Above this at a joint, pressure piping wants more than a plain mitre: ASME B31.3, 304.2.3. */
export const CAUTION_ANGLE = 22.5;

const RADIANS = Math.PI / 180;

/** What cannot be, first things first; nothing where the template can be drawn. */
export function wishRefusals(wish: TemplateWish, display: Display): WishRefusal[] {
  const mm = (value: number): string => formatLength(value, display);
  const refusals: WishRefusal[] = [];
  const insist = (holds: boolean, field: WishField, found: string, allowed: string): void => {
    if (!holds && !refusals.some((r) => r.field === field)) refusals.push({ field, found, allowed });
  };
  const { outsideDiameter: od, wall } = wish;
  insist(within(od, TUBE), 'outsideDiameter', mm(od), `${mm(TUBE[0])} to ${mm(TUBE[1])} outside`);
  insist(wall > 0 && wall < od / 2, 'wall', mm(wall), `a wall above 0 and below ${mm(od / 2)}, half the tube`);
  if (refusals.length > 0) return refusals;
  if (wish.kind === 'saddle') {
    const { onto, angle, offset } = wish;
    insist(within(onto, ONTO), 'onto', mm(onto), `${mm(ONTO[0])} to ${mm(ONTO[1])} outside`);
    insist(od <= onto, 'outsideDiameter', mm(od), `at most ${mm(onto)}, the tube that it is set on`);
    const room = onto / 2 - od / 2 + (wish.measuredOn === 'bore' ? wall : 0);
    insist(
      Math.abs(offset) <= room,
      'offset',
      mm(offset),
      `at most ${mm(room)} to either side, so that it sits all round`,
    );
    const acute = angle > 90 && angle <= 180 - SHARPEST ? `; the acute one here is ${formatAngle(180 - angle)}` : '';
    insist(within(angle, [SHARPEST, 90]), 'angle', formatAngle(angle), `${SHARPEST}° to 90° between the axes${acute}`);
  } else {
    const { angle, joints, radius } = wish;
    insist(angle > 0 && angle <= 180, 'angle', formatAngle(angle), 'above 0° to 180°, what the bend turns in all');
    const whole = Number.isInteger(joints) && joints >= 1 && joints <= MOST_JOINTS;
    insist(whole, 'joints', String(joints), `a whole number from 1 to ${MOST_JOINTS}`);
    const least = Math.ceil(angle / (2 * STEEPEST));
    insist(joints >= least, 'joints', String(joints), `at least ${least} for a bend of ${formatAngle(angle)}`);
    const fits = radius > od / 2 && radius <= FARTHEST;
    insist(fits, 'radius', mm(radius), `above ${mm(od / 2)}, half the tube, to ${mm(FARTHEST)}`);
  }
  return refusals;
}

export type WishedTemplate = {
  readonly cut: WrapCut;
  /** Pieces and their lengths, and how the paper lies on them. */
  readonly says: readonly string[];
  readonly cautions: readonly string[];
};

/** @throws RangeError where `wishRefusals` has something to say */
export function wishedTemplate(wish: TemplateWish, display: Display): WishedTemplate {
  return wish.kind === 'saddle' ? saddle(wish, display) : segmented(wish, display);
}

function saddle({ kind, onto, angle, ...tube }: SaddleWish, display: Display): WishedTemplate {
  const mm = (value: number): string => formatLength(value, display);
  const { outsideDiameter, offset } = tube;
  const cut = saddleCut({
    ...tube,
    id: kind,
    title: `Saddle, ${mm(outsideDiameter)} onto ${mm(onto)} at ${formatAngle(angle)}${offset === 0 ? '' : `, ${mm(Math.abs(offset))} off centre`}`,
    headerRadius: onto / 2,
    angle: angle * RADIANS,
  });
  return { cut, says: cut.notes, cautions: [] };
}

/**
 * The square line lies midway between two joints: in the middle of a middle piece, and at the square end of an end piece.
 * So one paper marks every cut.
 */
function segmented({ kind, angle, joints, radius, ...tube }: MitreWish, display: Display): WishedTemplate {
  const { outsideDiameter, wall, measuredOn } = tube;
  const bend = segmentedBend(outsideDiameter, radius, angle * RADIANS, joints);
  const touched = outsideDiameter / 2 - (measuredOn === 'bore' ? wall : 0);
  const says = [
    ...pieceWords(bend, joints, display),
    `The square line is the square end of an end piece${joints > 1 ? ' and the middle of a middle piece: mark one cut, turn the paper end for end on the same line and seam, and mark the other' : ''}.`,
  ];
  const degrees = angle / (2 * joints);
  const enough = Math.ceil(angle / (2 * CAUTION_ANGLE));
  const cautions =
    degrees > CAUTION_ANGLE
      ? [
          `Each cut stands ${formatAngle(degrees)} from square. Pressure piping (ASME B31.3, 304.2.3) sets ${CAUTION_ANGLE}° as the limit for such joints: ${enough} joints keep it.`,
        ]
      : [];
  const cut = mitreCut({
    ...tube,
    id: kind,
    title: `Segmented bend of ${formatAngle(angle)}, ${joints} ${joints === 1 ? 'joint' : 'joints'}, radius ${formatLength(radius, display)}`,
    cutAngle: bend.cutAngle,
    leastHeight: (radius - touched) * Math.tan(bend.cutAngle),
    notes: [...says, ...cautions],
  });
  return { cut, says, cautions };
}

function pieceWords({ middle, end }: SegmentedBend, joints: number, display: Display): string[] {
  const mm = (value: number): string => formatLength(value, display);
  const lengths = (p: SegmentedBend['end']): string =>
    `${mm(p.long)} outside, ${mm(p.centerline)} along the centerline, ${mm(p.short)} inside`;
  const middles = joints - 1;
  return [
    ...(middles > 0 ? [`${middles} middle ${middles === 1 ? 'piece' : 'pieces'}: ${lengths(middle)}.`] : []),
    `2 end pieces: ${lengths(end)}; longer by any straight that is wanted.`,
  ];
}

const within = (value: number, [least, most]: readonly [number, number]): boolean => value >= least && value <= most;
