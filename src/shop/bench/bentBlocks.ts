/**
 * A tube for the bender: its strip with the marks, the rows as designed beside what the machine is set to, from the end that every
 * bend can be clamped from, and from the other where that serves too; thinning; where to split what cannot be clamped.
 */

import { settingsOf } from '../../../shared/stock/workshop';
import { bendNumbers } from '../making/bent/numbers';
import type { ThinningRule } from '../making/bent/thinning';
import type { BentTube, MachineRow } from '../making/report';
import type { Block, FlowColumn } from '../sheet/flow';
import { type Bench, endName, partOf, startName, upWords } from './bench';
import { angleFigure, dialFigure, lengthFigure, type Steps, tapeFigure } from './figures';
import { stripFigure } from './stripFigure';

export function bentBlocks(bench: Bench, tube: BentTube, steps: Steps): Block[] {
  const part = partOf(bench, tube.runner);
  if (!part) return [];
  const settings = settingsOf(bench.header.design.workshop);
  const { clampable } = tube;
  const tubes = bench.making.bent.filter(({ runner }) => runner === tube.runner);
  const ends = {
    start: tube === tubes[0] ? startName(part.resolved) : 'the split, toward the start',
    end: tube === tubes.at(-1) ? endName(part.resolved) : 'the split, toward the collector',
  };
  // Where both ends serve, both are printed; where none does, as it would be from the start.
  const serves = { a: clampable.fromStart || !clampable.fromEnd, b: clampable.fromEnd };
  const none = !clampable.fromStart && !clampable.fromEnd;
  return [
    { kind: 'words', head: 'Saw off', words: sawWords(tube, steps) },
    { kind: 'figure', ...stripFigure(stripOf(tube, serves.a, ends, steps)) },
    { kind: 'heading', words: `Bends, ${steps.display} and degrees${none ? ': CANNOT BE CLAMPED AS IT IS' : ''}` },
    { kind: 'words', words: howToRead(settings.rotation, serves, none) },
    { kind: 'table', columns: columnsOf(serves), rows: rowsOf(tube, serves, steps) },
    ...fitWords(bench, tube, steps),
    ...clampWords(tube),
    ...thinWords(tube, settings.thinning, steps),
  ];
}

/** How it is turned when it is fitted; the clocking is right-handed about the way counted in, whatever the workshop's sign. */
function fitWords(
  bench: Bench,
  { clocking, fromStart, thinned: [first], id, runner }: BentTube,
  steps: Steps,
): Block[] {
  const part = partOf(bench, runner);
  if (fromStart.length < 2 || !first || !part) return [];
  const toward = dialFigure(Math.abs(clocking), steps);
  const way = clocking < 0 ? 'counter-clockwise' : 'clockwise';
  const words =
    id === runner || first.bend === 1
      ? `Looking from A, bend 1 leads off ${toward} ${way} from ${upWords(bench.header, part.resolved)}.`
      : `Turned so that bend ${first.bend} leads off ${toward} ${way} from where bend ${first.bend - 1} does, looking from A.`;
  return [{ kind: 'words', head: 'Fit', words }];
}

type Serves = { readonly a: boolean; readonly b: boolean };

const columnsOf = ({ a, b }: Serves): FlowColumn[] => [
  { head: 'bend', share: 14, bold: true },
  { head: 'straight', share: 20, light: true },
  { head: 'rotation', share: 21, light: true },
  { head: 'angle', share: 19, light: true },
  { head: 'set', share: 18, figure: true },
  ...(a ? machineColumns('A') : []),
  ...(b ? machineColumns('B') : []),
];

const machineColumns = (end: string): FlowColumn[] => [
  { head: `${end} mark`, share: 22, figure: true },
  { head: `${end} feed`, share: 21, figure: true },
  { head: `${end} dial`, share: 19, figure: true },
];

/** In the order along the runner, whichever end is bent from. */
function rowsOf(tube: BentTube, { a, b }: Serves, steps: Steps): string[][] {
  const { fromStart, fromEnd } = tube;
  const numbers = bendNumbers(tube, 'start');
  const last = fromStart.length - 1;
  const machine = ({ mark, feed, dial }: MachineRow): string[] => [
    tapeFigure(mark, steps),
    tapeFigure(feed, steps),
    dialFigure(dial, steps),
  ];
  return fromStart.map((row, k) => [
    k === last ? 'rest' : String(numbers[k]),
    lengthFigure(row.length, steps.display),
    ...(k === last
      ? []
      : [
          k === 0 ? '' : angleFigure(row.turn),
          angleFigure(row.angle),
          dialFigure(row.set, steps),
          ...(a ? machine(row) : []),
          ...(b ? machine(fromEnd[last - 1 - k]!) : []),
        ]),
  ]);
}

const BOTH = 'From A work down the rows, from B up. ';

function howToRead(rotation: 'right-handed' | 'left-handed', { a, b }: Serves, none: boolean): string {
  const order = a && b ? BOTH : b ? 'Only from end B, working up the rows. ' : none ? '' : 'Only from end A. ';
  return `${order}Rotation: of the bend’s plane from the last one’s, positive ${
    rotation === 'right-handed' ? 'clockwise' : 'counter-clockwise'
  } looking along the tube from the end that is bent from (${rotation}). Set: before it springs back. Mark: from the sawn end to where the bend begins. Feed: the carriage’s travel before it. Dial: the first bend is 0°.`;
}

function sawWords({ cutLength, trimStart, trimEnd }: BentTube, steps: Steps): string {
  const say = (mm: number): string => `${tapeFigure(mm, steps)} ${steps.display}`;
  const trims = [
    ...(trimStart > 0 ? [`${say(trimStart)} at its start`] : []),
    ...(trimEnd > 0 ? [`${say(trimEnd)} at its end`] : []),
  ];
  return `${say(cutLength)} of straight tube.${trims.length > 0 ? ` Once bent, trim off ${trims.join(' and ')}, crossed out below.` : ''}`;
}

function stripOf(tube: BentTube, isFromA: boolean, ends: { start: string; end: string }, steps: Steps) {
  const { fromStart, fromEnd, cutLength, trimStart, trimEnd } = tube;
  const bends = fromStart.slice(0, -1);
  const numbers = bendNumbers(tube, 'start');
  // The strip always lies from A to B; its marks are those of the end that is bent from.
  const placed = bends.map((row, k) => {
    const other = fromEnd[bends.length - 1 - k]!;
    const [from, to] = isFromA ? [row.mark, row.markEnd] : [cutLength - other.markEnd, cutLength - other.mark];
    const machine = isFromA ? row : other;
    return { row, from, to, mark: isFromA ? from : to, words: tapeFigure(machine.mark, steps), dial: machine.dial };
  });
  return {
    length: cutLength,
    bends: placed.map(({ row, from, to }) => ({ from, to, words: dialFigure(row.set, steps) })),
    cuts: [],
    names: placed.map(({ from, to }, k) => ({ at: (from + to) / 2, words: String(numbers[k]) })),
    marks: placed.map(({ mark, words }) => ({ at: mark, words })),
    dials: placed.map(({ from, to, dial }) => ({ at: (from + to) / 2, degrees: dial })),
    waste: [[0, trimStart] as const, [cutLength - trimEnd, cutLength] as const],
    left: `A: ${ends.start}`,
    right: `B: ${ends.end}`,
  };
}

function clampWords({ clampable, offered, remarks }: BentTube): Block[] {
  const told = remarks.map(({ message }): Block => ({ kind: 'words', words: message }));
  if (clampable.fromStart || clampable.fromEnd || offered.length === 0 || told.length > 0) return told;
  return [
    { kind: 'words', head: 'Clamp', words: `Split it before bend ${offered.join(' and ')}: then all can be clamped.` },
  ];
}

/** As `thinningWords`, for a line of its own. */
const RULES: Readonly<Record<ThinningRule, { readonly wall: string; readonly outOfRound: string }>> = {
  geometric: { wall: 'geometry alone', outOfRound: '8 % of the diameter: ASME B31.1' },
  tema: { wall: 'TEMA RCB-2.31', outOfRound: '10 % of the diameter: TEMA' },
  'b31.1': { wall: 'what ASME B31.1, 102.4.5, asks to be left', outOfRound: '8 % of the diameter: ASME B31.1' },
};

/** A line for each ratio: bends of one radius thin alike. */
function thinWords({ thinned }: BentTube, rule: ThinningRule, steps: Steps): Block[] {
  const radii = [...new Set(thinned.map(({ radius }) => radius))];
  const words = RULES[rule];
  return radii.map((radius): Block => {
    const { ratio, percent, wall, outOfRound } = thinned.find((t) => t.radius === radius)!;
    const say = (mm: number): string => `${lengthFigure(mm, steps.display)} ${steps.display}`;
    const which = radii.length > 1 ? `Radius ${say(radius)}: ` : '';
    return {
      kind: 'words',
      head: 'Wall',
      words: `${which}${ratio.toFixed(2)} diameters of radius: outside a bend ${say(wall)} of wall, ${percent.toFixed(0)} % less (${words.wall}). Out of round by ${say(outOfRound)} at most (${words.outOfRound}).`,
    };
  });
}
