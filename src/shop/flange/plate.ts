/** A flange's plate as lines on paper, at any scale: its edge, openings, steps and holes with their numbers. mm. */
import { type Loop, loopBounds, type Point2 } from '../../../geometry';
import type { OutlineVertex } from '../../../shared/design/types';
import type { Box, Item, Point } from '../../formats/drawing/drawing';
import { arrowHead, circle, cover, group, line, outline, text } from '../../formats/drawing/items';
import type { FlangeHole, FlangeSheetPlan } from '../flangeSheet';
import { AXIS, CAPITAL, CUT, DASHED, EDGE, THIN, TYPE } from '../sheet/style';

/** From the plate's frame (y up) to paper (y down). */
export type Place = { readonly at: (p: Point2) => Point; readonly scale: number };

/** The plate's own extents, y up: top is its highest y. */
export function plateBox({ outline: edge }: FlangeSheetPlan): Box {
  const { min, max } = loopBounds(edge);
  // As paper has it: top is the smaller number.
  return { left: min[0], right: max[0], top: -max[1], bottom: -min[1] };
}

/** @param corner of the paper that the plate's upper left comes to. @param scale how many times smaller than true */
export const onPaper = ([x, y]: Point, box: Box, scale: number): Place => ({
  at: ([u, v]) => [x + (u - box.left) / scale, y + (-v - box.top) / scale],
  scale,
});

/** Turned over with y, every arc turns the other way. */
const placed = (loop: Loop, { at }: Place): OutlineVertex[] =>
  loop.map(([x, y, bulge]) => [...at([x, y]), bulge === 0 ? 0 : -bulge]);

export const middleOf = (loop: Loop): Point2 => {
  const { min, max } = loopBounds(loop);
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
};

/** With their numbers: their fasteners', or from left to right, then from below. As the table lists them. */
export function inOrder(holes: readonly FlangeHole[]): (FlangeHole & { readonly number: number })[] {
  const across = fromLeft(holes).map((hole, i) => ({ ...hole, number: hole.number ?? i + 1 }));
  return across.sort((a, b) => a.number - b.number);
}

const fromLeft = (holes: readonly FlangeHole[]): FlangeHole[] =>
  [...holes].sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1]);

/** An opening narrower than this on paper has room for its letter alone. */
const ROOMY = 12;

/** Openings are lettered A, B … Z, A2 … */
export const letter = (i: number): string =>
  String.fromCharCode(65 + (i % 26)) + (i >= 26 ? String(Math.floor(i / 26) + 1) : '');

export function plateItems(plan: FlangeSheetPlan, place: Place): Item[] {
  const { at, scale } = place;
  const heart = at(middleOf(plan.outline));
  return [
    outline(placed(plan.outline, place), CUT, { name: 'outline' }),
    ...plan.steps.map(({ loop }) => outline(placed(loop, place), DASHED, { name: 'step' })),
    ...plan.openings.flatMap(({ loop }, i): Item[] => {
      const [x, y] = at(middleOf(loop));
      const { min, max } = loopBounds(loop);
      const roomy = Math.min(max[0] - min[0], max[1] - min[1]) / scale > ROOMY;
      return [
        outline(placed(loop, place), EDGE, { name: 'opening' }),
        ...(roomy ? centreMark([x, y], 3) : []),
        roomy
          ? text(letter(i), [x + 1.4, y - 1.4], TYPE.label, { bold: true })
          : text(letter(i), [x, y + 1.6], TYPE.label, { bold: true, anchor: 'middle' }),
      ];
    }),
    ...inOrder(plan.holes).flatMap(({ at: middle, diameter, number, half }): Item[] => {
      const [x, y] = at(middle);
      const radius = diameter / 2 / scale;
      const away: Point = [Math.sign(heart[0] - x) || 1, Math.sign(heart[1] - y) || 1];
      return [
        // A half hole's edge is the outline's.
        ...(half ? [] : [circle([x, y], radius, EDGE, { name: 'hole' })]),
        ...centreMark([x, y], radius + 2),
        text(String(number), numberPlace([x, y], radius, away), TYPE.number, { bold: true, anchor: 'middle' }),
      ];
    }),
  ];
}

const centreMark = ([x, y]: Point, reach: number): Item[] => [
  line([x - reach, y], [x + reach, y], THIN),
  line([x, y - reach], [x, y + reach], THIN),
];

/** Toward the plate's middle, where there is metal and no edge, clear of the hole's centre lines. */
const numberPlace = ([x, y]: Point, radius: number, [right, down]: Point): Point => [
  x + right * (radius * Math.SQRT1_2 + 2.4),
  y + down * (radius * Math.SQRT1_2 + 1.2) + (down > 0 ? CAPITAL * TYPE.number : 0),
];

/** The leftmost whole hole, on which one can measure; none where there are only openings. */
const datumHole = ({ holes }: FlangeSheetPlan) => {
  const [leftmost] = fromLeft(holes.filter(({ half }) => !half));
  return leftmost && inOrder(holes).find(({ at }) => at === leftmost.at);
};

/** Where the table counts from: the leftmost hole, or the first opening where there is none. */
export const datumOf = (plan: FlangeSheetPlan): Point2 =>
  datumHole(plan)?.at ?? (plan.openings[0] ? middleOf(plan.openings[0].loop) : [0, 0]);

export function datumWords(plan: FlangeSheetPlan): string {
  const hole = datumHole(plan);
  if (hole) return `the middle of hole ${hole.number}, the leftmost`;
  return plan.openings[0] ? `the middle of opening ${letter(0)}` : 'the plate’s own origin';
}

export function datumMark(plan: FlangeSheetPlan, { at }: Place): Item[] {
  const [x, y] = at(datumOf(plan));
  const reach = 12;
  return [
    line([x, y], [x + reach, y], AXIS),
    arrowHead([x + reach, y], 0, 3),
    line([x, y], [x, y - reach], AXIS),
    arrowHead([x, y - reach], -Math.PI / 2, 3),
    axisName('X', [x + reach + 2.2, y + (CAPITAL * TYPE.plain) / 2]),
    axisName('Y', [x, y - reach - 1]),
  ];
}

/** Breaks the lines that it stands on. */
function axisName(name: string, [x, y]: Point): Item {
  const box = { left: x - 1.5, right: x + 1.5, top: y - 2.9, bottom: y + 0.4 };
  return group([0, 0], [cover(box), text(name, [x, y], TYPE.plain, { bold: true, anchor: 'middle' })]);
}

/** Which way is up on the head, for a plate that looks alike turned over or end for end. */
export function upMark([x, y]: Point): Item[] {
  const reach = 6;
  return [
    line([x, y + reach], [x, y - reach], EDGE),
    arrowHead([x, y - reach], -Math.PI / 2, 3),
    text('UP', [x, y - reach - 1.5], TYPE.plain, { bold: true, anchor: 'middle' }),
  ];
}

/** At true size there is no margin for it: in what falls out of each opening that has the room, so that every sheet has one. */
export const upInOpenings = ({ openings }: FlangeSheetPlan, { at }: Place): Item[] =>
  openings.flatMap(({ loop }) => {
    const { min, max } = loopBounds(loop);
    if (Math.min(max[0] - min[0], max[1] - min[1]) < UP_ROOM) return [];
    const [x, y] = at(middleOf(loop));
    return upMark([x - 7, y + 1]);
  });

/** Beside the opening's centre mark and letter. */
const UP_ROOM = 32;
