/** Kept measurements as dimension lines on the picture: a line with arrows from one surface to the other. */
import { useMemo } from 'react';
import { addScaled, anySquareTo, cross, distance, lerp, type Span, sub, unit } from '../../../../geometry';
import type { Display } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import type { Measured } from '../../measure/useMeasured';
import { mainSpan, mainWords } from '../../measure/words';
import { Lines } from '../gl/Lines';
import type { Palette } from '../palette';

/** Length and half width of an arrow, mm; on a short line no longer than a third of it. */
const ARROW = 8;
const SLENDER = 0.24;

export type MeasureNote = {
  readonly key: string;
  readonly text: string;
  readonly at: Vec3;
  readonly fails: boolean;
  readonly span: Span;
};

export function measureNotes(measured: readonly Measured[], display: Display): MeasureNote[] {
  return measured.flatMap(({ key, a, b, answer }) => {
    const span = 'missing' in answer ? null : mainSpan(answer);
    if ('missing' in answer || !span) return [];
    const text = mainWords(answer, a, b, display);
    return [{ key: `measured ${key}`, text, at: lerp(span.from, span.to, 0.5), fails: span.value < 0, span }];
  });
}

export function MeasureMark({ note, palette }: { readonly note: MeasureNote; readonly palette: Palette }) {
  const { span, fails } = note;
  const pairs = useMemo(() => dimensionLine(span.from, span.to), [span]);
  return <Lines pairs={pairs} colour={fails ? palette.fail : palette.dimension} width={1.6} onTop />;
}

/** Pairs of points: the line, and at each end four strokes back from its tip. A point, for no length, is a small cross. */
export function dimensionLine(from: Vec3, to: Vec3): number[] {
  const length = distance(from, to);
  const way: Vec3 = length > 0 ? unit(sub(to, from)) : [0, 0, 1];
  const across = anySquareTo(way);
  const sides = [across, cross(way, across)] as const;
  const arrow = length > 0 ? Math.min(ARROW, length / 3) : ARROW;
  const pairs: number[] = [...from, ...to];
  for (const [tip, back] of [
    [from, arrow],
    [to, -arrow],
  ] as const)
    for (const side of sides)
      for (const sign of [1, -1])
        pairs.push(...tip, ...addScaled(addScaled(tip, way, length > 0 ? back : 0), side, sign * arrow * SLENDER));
  return pairs;
}
