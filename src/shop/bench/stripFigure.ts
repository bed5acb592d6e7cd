/**
 * A tube unrolled to a straight strip, to scale along its middle: straights plain, bends shaded with their angle, cuts and marks
 * with their distance, the plane of each bend on a small dial. mm; degrees clockwise from the top of a dial.
 */
import type { Item, Point } from '../../formats/drawing/drawing';
import { circle, line, rectangle, text } from '../../formats/drawing/items';
import { textWidth } from '../../formats/drawing/textWidth';
import { CUT, EDGE, HATCH, THIN, TYPE } from '../sheet/style';
import { spread } from './spread';

export type StripPlan = {
  readonly length: number;
  readonly bends: readonly { readonly from: number; readonly to: number; readonly words: string }[];
  /** Sawn through. */
  readonly cuts: readonly number[];
  /** Named above, at their middles. */
  readonly names: readonly { readonly at: number; readonly words: string }[];
  /** Distances, beneath. */
  readonly marks: readonly { readonly at: number; readonly words: string }[];
  readonly dials: readonly { readonly at: number; readonly degrees: number }[];
  /** Trimmed off once bent. */
  readonly waste: readonly (readonly [from: number, to: number])[];
  readonly left: string;
  readonly right: string;
};

const ROWS = { names: 4.5, angles: 10.5, top: 13, bottom: 23, marks: 30, dials: 38, ends: 43.8 } as const;
const DIAL = 4.2;
const HEIGHT = 47;
const SHADING = 1.6;

export const stripFigure = (plan: StripPlan) => ({
  height: HEIGHT,
  at: ([left, top]: Point, width: number): Item[] => {
    const scale = width / plan.length;
    const x = (at: number): number => left + at * scale;
    const y = (row: keyof typeof ROWS): number => top + ROWS[row];
    const row = (
      labels: readonly { readonly at: number; readonly words: string }[],
      baseline: number,
      size: number,
      bold: boolean,
      leader: (from: number, to: number) => Item[] = () => [],
    ): Item[] => {
      const places = spread(
        labels.map((l) => ({ at: x(l.at), width: textWidth(l.words, size, bold) })),
        left,
        left + width,
      );
      return labels.flatMap((l, i) => [
        text(l.words, [places[i]!, baseline], size, { anchor: 'middle', bold }),
        ...leader(x(l.at), places[i]!),
      ]);
    };
    const dials = spread(
      plan.dials.map((d) => ({ at: x(d.at), width: 2 * DIAL })),
      left,
      left + width,
    );
    return [
      ...plan.bends.flatMap(({ from, to }) => shading(x(from), x(to), y('top'), y('bottom'))),
      ...plan.waste.flatMap(([from, to]) => crossed(x(from), x(to), y('top'), y('bottom'))),
      rectangle({ left, top: y('top'), right: left + width, bottom: y('bottom') }, EDGE),
      ...plan.cuts.map((at) => line([x(at), y('top') - 1.5], [x(at), y('bottom') + 1.5], CUT)),
      ...row(plan.names, y('names'), TYPE.plain, true),
      ...row(
        plan.bends.map((b) => ({ at: (b.from + b.to) / 2, words: b.words })),
        y('angles'),
        TYPE.plain,
        false,
      ),
      ...row(plan.marks, y('marks'), TYPE.plain, true, (from, to) => [
        line([from, y('bottom')], [from, y('bottom') + 1.8], THIN),
        line([from, y('bottom') + 1.8], [to, y('marks') - 3], THIN),
      ]),
      ...plan.dials.flatMap(({ degrees }, i) => dial([dials[i]!, y('dials')], degrees)),
      text(plan.left, [left, y('ends') + 2], TYPE.plain),
      text(plan.right, [left + width, y('ends') + 2], TYPE.plain, { anchor: 'end' }),
    ];
  },
});

/** A hand on a face whose top is marked. */
function dial([x, y]: Point, degrees: number): Item[] {
  const a = (degrees * Math.PI) / 180;
  return [
    circle([x, y], DIAL, THIN),
    line([x, y - DIAL], [x, y - DIAL + 1.2], THIN),
    line([x, y], [x + DIAL * Math.sin(a), y - DIAL * Math.cos(a)], CUT),
  ];
}

function shading(from: number, to: number, top: number, bottom: number): Item[] {
  const count = Math.max(1, Math.round((to - from) / SHADING));
  const at = (k: number): number => from + (k * (to - from)) / count;
  return Array.from({ length: count + 1 }, (_, k) =>
    line([at(k), top], [at(k), bottom], k === 0 || k === count ? THIN : HATCH),
  );
}

const crossed = (from: number, to: number, top: number, bottom: number): Item[] =>
  to - from < 0.3
    ? []
    : [
        line([from, top], [to, bottom], THIN),
        line([from, bottom], [to, top], THIN),
        line([from, top], [from, bottom], THIN),
        line([to, top], [to, bottom], THIN),
      ];
