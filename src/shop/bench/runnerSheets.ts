/** A page a runner (more only where its rows need them): how it is made the way that is chosen, how it is checked, what rounding costs. */

import { DEGREES, type ResolvedRunner } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import { chosenWay } from '../making/chosen';
import type { Rounded } from '../making/report';
import type { Part } from '../part';
import { partsOf } from '../part';
import { type Block, flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';
import { type Bench, endName, startName, stepsOf, tubeWords } from './bench';
import { bentBlocks } from './bentBlocks';
import { aroundStep, fractionOf, type Steps, stepWords, tapeFigure } from './figures';
import { DRAWN, heightsFigure } from './heightsFigure';
import { weldedBlocks } from './weldedBlocks';

export function runnerSheets(bench: Bench, paper: Paper, display: Display): Sheet[] {
  return partsOf(bench.header).parts.flatMap((part) => sheetsOf(bench, part, paper, display));
}

/** On one sheet if that can be, its figure lower for it. */
function sheetsOf(bench: Bench, part: Part, paper: Paper, display: Display): Sheet[] {
  const steps = stepsOf(bench, display);
  return storiesOf(bench, part, steps).flatMap(({ title, blocks }) => {
    const sheets = flowSheets(title, blocks(DRAWN.usual), paper);
    const lower = sheets.length > 1 ? flowSheets(title, blocks(DRAWN.low), paper) : sheets;
    return lower.length < sheets.length ? lower : sheets;
  });
}

type Story = { readonly title: string; readonly blocks: (drawn: number) => Block[] };

function storiesOf(bench: Bench, part: Part, steps: Steps): Story[] {
  const { id, resolved } = part;
  const intro: Block = { kind: 'words', words: introWords(part, steps.display) };
  const last = (drawn: number): Block[] => checkBlocks(bench, part, steps, drawn);
  if (chosenWay(bench.making, resolved.runner.tube) === 'welded')
    return bench.making.welded
      .filter(({ runner }) => runner === id)
      .map((tube) => ({
        title: `Runner ${id}, welded up`,
        blocks: (drawn) => [
          intro,
          ...weldedBlocks(bench, tube, steps),
          ...tube.remarks.map(({ message }): Block => ({ kind: 'words', words: message })),
          ...last(drawn),
          roundedBlock(tube.rounded, steps, `, round the tube to ${aroundStep(steps.display)}`),
        ],
      }));
  const tubes = bench.making.bent.filter(({ runner }) => runner === id);
  return tubes.map((tube, i) => ({
    title: tubes.length > 1 ? `Runner ${id}, bent: tube ${tube.id}` : `Runner ${id}, bent`,
    blocks: (drawn) => [
      ...(i === 0 ? [intro] : []),
      ...bentBlocks(bench, tube, steps),
      ...(i === tubes.length - 1 ? last(drawn) : []),
      roundedBlock(tube.rounded, steps),
    ],
  }));
}

/** In the order a builder reads it: what tube, between what, how long. */
function introWords({ resolved, line, startTrim }: Part, display: Display): string {
  const length = (mm: number): string => formatLength(mm, display);
  const real = line.length + startTrim;
  const moved =
    Math.abs(startTrim) > 0.005
      ? startTrim > 0
        ? ` It stands ${length(startTrim)} in the flange’s step: the tube itself is ${length(real)}.`
        : ` The first ${length(-startTrim)} are the port’s transition: the tube itself is ${length(real)}.`
      : '';
  return `${tubeWords(resolved, display)}. From ${startName(resolved)} to ${endName(resolved)}: ${length(line.length)} along its middle${headWords(resolved, line.length, display)}.${moved}`;
}

const headWords = ({ lengthInHead }: ResolvedRunner, along: number, display: Display): string =>
  lengthInHead > 0 ? `, ${formatLength(along + lengthInHead, display)} with the head` : '';

function checkBlocks({ making }: Bench, part: Part, steps: Steps, drawn: number): Block[] {
  const heights = making.heights.find(({ runner }) => runner === part.id);
  if (!heights) return [];
  const say = (mm: number): string => tapeFigure(mm, steps);
  const middles = bendMiddles(part);
  const places = heights.heights.map(({ at }) => (at === 'start' ? 0 : at === 'end' ? 1 : (middles[at - 1] ?? 0.5)));
  return [
    { kind: 'heading', words: `Proved with a rule, ${steps.display}` },
    {
      kind: 'words',
      words: `Straight from the middle of one end to the middle of the other: ${say(heights.chord)}. Finished and lying by itself on a flat plate, it spans ${say(heights.span)} and its underside stands this high:`,
    },
    { kind: 'figure', ...heightsFigure(heights, part.resolved.tubeRadius, places, say, drawn) },
  ];
}

/** As shares of the tube's length. */
function bendMiddles({ table: { rows }, startTrim }: Part): number[] {
  let at = startTrim;
  const middles = rows.map(({ length, angle, radius }) => {
    const arc = (angle / DEGREES) * radius;
    at += length + arc;
    return at - arc / 2;
  });
  return middles.map((m) => m / at);
}

function roundedBlock({ tape, dial, position, angle, length }: Rounded, steps: Steps, around = ''): Block {
  const say = (mm: number): string => formatLength(Math.abs(mm), steps.display);
  const printed = steps.display === 'in' ? fractionOf(steps.tape) : null;
  const measured =
    printed && Math.abs(25.4 / printed - tape) > 0.02 ? ` (reckoned with steps of ${formatLength(tape, 'in')})` : '';
  const longer =
    Math.abs(length) < 0.005 ? 'as long as designed' : `${say(length)} ${length > 0 ? 'longer' : 'shorter'}`;
  return {
    kind: 'words',
    head: 'Rounding',
    words: `Bold figures are rounded to ${stepWords({ ...steps, tape, dial })}${around}. Made to them exactly, the far end is ${say(position)} and ${angle.toFixed(2)}° off, the tube ${longer}${measured}.`,
  };
}
