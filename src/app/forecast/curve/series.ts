/** Runs as lines to be drawn: values in screen units over rpm, with what is not to be trusted told apart. */
import type { Baseline, Display } from '../../../../shared/design/types';
import { type Paint, paintOf, type Theme } from '../../colours';
import { isAnswer, type Quantity, readOff, wordsFor } from '../quantities';
import type { Run, RunKind } from '../runs';

export type Point = {
  readonly rpm: number;
  readonly value: number;
  readonly settled: boolean /** On fine cells. */;
  readonly final: boolean;
};

export type Series = {
  readonly kind: RunKind;
  readonly title: string;
  readonly paint: Paint;
  /** Rising in rpm; those that are followed already. */
  readonly points: readonly Point[];
  /** rpm of speeds that could not be followed. */
  readonly failed: readonly number[];
};

/** Temper colour and dash of each kind, the same whichever others are shown. */
const LOOKS: Readonly<Record<string, readonly [colour: number, dash: readonly number[]]>> = {
  header: [3, []],
  cast: [1, [4, 4]],
  sketch: [2, [8, 2, 2, 2]],
  equal: [5, [2, 2]],
  uneven: [7, [3, 2]],
  arrangement: [6, [6, 2]],
};

/** Of other designs: two colours that no kind has, and so many dashes that a pair comes again after 16. */
const OTHER_COLOURS = [4, 0] as const;
const OTHER_DASHES: readonly (readonly number[])[] = [
  [8, 2, 2, 2, 2, 2],
  [10, 4],
  [1, 1],
  [12, 2],
  [5, 2, 1, 2],
  [3, 3, 1, 3],
  [2, 5],
  [7, 3, 3, 3],
];
/** In the order they were first shown: what is left out and chosen again looks as before. */
const others = new Map<RunKind, number>();

function lookOf(kind: RunKind): readonly [colour: number, dash: readonly number[]] {
  const own = LOOKS[kind];
  if (own) return own;
  const k = others.get(kind) ?? others.size;
  others.set(kind, k);
  return [OTHER_COLOURS[k % OTHER_COLOURS.length]!, OTHER_DASHES[k % OTHER_DASHES.length]!];
}

export function paintFor(kind: RunKind, theme: Theme): Paint {
  const [colour, dash] = lookOf(kind);
  return { ...paintOf(colour, theme), dash };
}

export const seriesOf = (runs: readonly Run[], quantity: Quantity, display: Display, theme: Theme): readonly Series[] =>
  runs.map(({ subject, speeds, told, final }) => ({
    kind: subject.kind,
    title: subject.title,
    paint: paintFor(subject.kind, theme),
    points: told.flatMap((answer, k) =>
      isAnswer(answer)
        ? [{ rpm: speeds[k]!, value: readOff(quantity, answer, display), settled: answer.settled, final: final[k]! }]
        : [],
    ),
    failed: told.flatMap((answer, k) => (answer && 'failed' in answer ? [speeds[k]!] : [])),
  }));

/**
 * What was measured on the engine, brought to the crank; torque and power alone can be shown of it.
 * @param part of the engine's cylinders that the runs beside it have, where one bank is drawn alone
 */
export function measuredPoints(
  baseline: Baseline | undefined,
  quantity: Quantity,
  display: Display,
  part = 1,
): readonly { readonly rpm: number; readonly value: number }[] {
  if (!baseline || (quantity !== 'torque' && quantity !== 'power')) return [];
  const { factor } = wordsFor(quantity, display);
  const kept = 1 - (baseline.loss ?? 0) / 100;
  return baseline.points.map(([rpm, torque]) => {
    const crank = (part * torque) / kept;
    return { rpm, value: factor * (quantity === 'torque' ? crank : (crank * rpm * Math.PI) / 30) };
  });
}
