/**
 * The area schedule laid out as a plot: what is drawn where, in plot units with y downward. The opening's area leads in and
 * the tube's leads out, so that a step without a transition is seen as one. mm, mm². No React.
 */
import type { AreaSchedule } from '../../../../geometry';
import type { Display } from '../../../../shared/design/types';
import { MM_PER_INCH } from '../../../../shared/units';
import { roundUp } from '../../rack/ends';

export const PLOT = { width: 300, height: 148, left: 44, right: 8, top: 20, bottom: 34 } as const;

export type Mark = { readonly at: number; readonly label: string };

export type AreaPlot = {
  /** Corners of the line, as an SVG `points` attribute has them. */
  readonly line: string;
  readonly stations: readonly (readonly [x: number, y: number])[];
  /** Where the transition begins and the tube does; the same without a transition. */
  readonly flange: number;
  readonly tube: number;
  readonly xMarks: readonly Mark[];
  readonly yMarks: readonly Mark[];
};

/** Without a transition, the length shown on either side of the step, mm. */
const STEP_SHOWN = 10;
/** The part of a transition's length that leads in and out. */
const LEAD = 0.18;
/** So that a difference of nothing does not look like one of much, the axis spans at least this part of the mean. */
const LEAST_SPAN = 0.2;
const MOST_MARKS = 5;
/** A mark at the very end of the axis must not be lost to a last digit. */
const ROUNDING = 1e-9;

export function areaPlot({ stations, length, openingArea, boreArea }: AreaSchedule, display: Display): AreaPlot {
  const lead = length > 0 ? LEAD * length : STEP_SHOWN;
  const areas = stations.map(({ area }) => area);
  const [least, most] = [Math.min(...areas), Math.max(...areas)];
  const mean = (least + most) / 2;
  const span = Math.max(1.25 * (most - least), LEAST_SPAN * mean);
  const x = (z: number) => PLOT.left + ((z + lead) / (length + 2 * lead)) * (PLOT.width - PLOT.left - PLOT.right);
  const y = (area: number) => PLOT.top + (0.5 - (area - mean) / span) * (PLOT.height - PLOT.top - PLOT.bottom);
  const placed = stations.map(({ z, area }) => [x(z), y(area)] as const);
  const line = [[x(-lead), y(openingArea)], ...placed, [x(length + lead), y(boreArea)]];
  const inch = display === 'in' ? MM_PER_INCH : 1;
  const marks = (from: number, to: number, unit: number, place: (mm: number) => number): Mark[] =>
    roundNumbers(from / unit, to / unit).map(({ value, label }) => ({ at: place(value * unit), label }));
  return {
    line: line.map((p) => p.map((c) => c!.toFixed(2)).join(',')).join(' '),
    stations: placed,
    flange: x(0),
    tube: x(length),
    xMarks: marks(-lead, length + lead, inch, x),
    yMarks: marks(mean - span / 2, mean + span / 2, inch ** 2, y),
  };
}

/** Round numbers within the range, as many as there is room for. */
function roundNumbers(from: number, to: number): { value: number; label: string }[] {
  const step = roundUp((to - from) / MOST_MARKS);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + ROUNDING));
  const first = Math.ceil(from / step - ROUNDING);
  return Array.from({ length: Math.floor(to / step + ROUNDING) - first + 1 }, (_, k) => {
    const value = (first + k) * step;
    return { value, label: (value === 0 ? 0 : value).toFixed(decimals).replace('-', '−') };
  });
}
