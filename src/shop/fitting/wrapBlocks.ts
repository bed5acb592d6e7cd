/** Where each runner's wrap starts and ends, how much of the roll it takes, and what is left bare and why. mm, cm²; in, in². */
import type { AccessReport, Header } from '../../../geometry';
import type { Display, Wrap } from '../../../shared/design/types';
import { formatLength, MM_PER_INCH } from '../../../shared/units';
import type { Item, Point } from '../../formats/drawing/drawing';
import { area as filled, line, rectangle, text } from '../../formats/drawing/items';
import type { Block } from '../sheet/flow';
import { fitted } from '../sheet/sheet';
import { CAPITAL, EDGE, THIN, TYPE } from '../sheet/style';
import { startWords, stretchesOf, tapeLength, wrapWords } from './words';

/** mm²: of the roll where it lies edge to edge, each layer as long round as its own middle. */
export function wrapArea({ runners }: Header, { wrap }: AccessReport, { thickness, layers }: Wrap): number {
  return wrap.reduce((sum, { runner, possible }) => {
    const found = runners.find((r) => r.runner.id === runner);
    if (!found) return sum;
    const length = possible.reduce((s, [from, to]) => s + to - from, 0);
    return sum + Math.PI * (2 * found.tubeRadius + layers * thickness) * layers * length;
  }, 0);
}

export function wrapBlocks(header: Header, access: AccessReport, display: Display): Block[] {
  const { wrap: how } = header.design;
  const { wrap } = access;
  if (!how || wrap.length === 0) return [];
  const figure = (mm: number): string => tapeLength(mm, display).number;
  const rows = wrap.flatMap((plan) =>
    stretchesOf(plan).map(({ from, to, bare }) => [
      plan.runner,
      figure(from),
      figure(to),
      bare === null ? 'wrapped' : `bare: ${bare}`,
    ]),
  );
  const starts = [...new Set(wrap.map(({ runner }) => startWords(header, runner)))];
  return [
    { kind: 'heading', words: `Wrap, ${display}` },
    {
      kind: 'words',
      words: `${wrapWords(how, formatLength(how.thickness, display))}. Figures run along the tube’s middle ${
        starts.length === 1 ? starts[0] : 'from the flange, or from the collector that a tube starts at'
      }. Black is wrapped.`,
    },
    { kind: 'figure', ...wrapFigure(header, access, display) },
    { kind: 'table', columns: COLUMNS, rows },
    { kind: 'words', words: rollWords(header, access, how, display), head: 'Estimate' },
  ];
}

const COLUMNS = [
  { head: 'runner', share: 30, bold: true },
  { head: 'from', share: 26, figure: true },
  { head: 'to', share: 26, figure: true },
  { head: '', share: 108 },
] as const;

const BAR = 4;
const STEP = 8;
const LABEL = 28;
const FIGURE = 24;

/** Every runner as a strip laid straight, to one scale. */
function wrapFigure({ runners }: Header, { wrap }: AccessReport, display: Display) {
  const strips = wrap.flatMap(({ runner, possible }) => {
    const length = runners.find((r) => r.runner.id === runner)?.centerline?.length;
    return length ? [{ runner, possible, length }] : [];
  });
  const longest = Math.max(0, ...strips.map(({ length }) => length));
  return {
    height: strips.length * STEP + 4,
    at: ([left, top]: Point, width: number): Item[] =>
      strips.flatMap(({ runner, possible, length }, i): Item[] => {
        const scale = (width - LABEL - FIGURE) / longest;
        const [x, y] = [left + LABEL, top + 2 + i * STEP];
        const base = y + BAR / 2 + (CAPITAL * TYPE.plain) / 2;
        const end = x + length * scale;
        return [
          text(fitted(runner, LABEL - 3, TYPE.plain, true), [left, base], TYPE.plain, { bold: true }),
          ...possible.map(([from, to]) => {
            const [a, b] = [x + from * scale, x + to * scale];
            return filled([
              [a, y],
              [b, y],
              [b, y + BAR],
              [a, y + BAR],
            ]);
          }),
          rectangle({ left: x, right: end, top: y, bottom: y + BAR }, EDGE),
          line([end, y - 1], [end, y + BAR + 1], THIN),
          text(tapeLength(length, display).number, [end + 2, base], TYPE.plain),
        ];
      }),
  };
}

/** Rolls are sold by their width; these are common ones, mm and inches. */
const COMMON_WIDTH = { mm: 50, in: 2 * MM_PER_INCH } as const;

function rollWords(header: Header, access: AccessReport, how: Wrap, display: Display): string {
  const area = wrapArea(header, access, how);
  const width = COMMON_WIDTH[display];
  const [surface, metres] =
    display === 'in'
      ? [`${(area / MM_PER_INCH ** 2).toFixed(0)} in²`, `${(area / width / MM_PER_INCH / 12).toFixed(1)} ft`]
      : [`${(area / 100).toFixed(0)} cm²`, `${(area / width / 1000).toFixed(1)} m`];
  return `${surface} of wrap, laid edge to edge: the sum of 3.1416 × (OD + layers × thickness) × length × layers. Its length is that over the roll’s width: ${metres} of one ${formatLength(width, display, display === 'in' ? 1 : 0)} wide. Laps take more: where half lies on the turn before, twice as much.`;
}
