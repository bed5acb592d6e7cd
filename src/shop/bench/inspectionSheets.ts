/**
 * To be filled in by pencil: what came out beside what was wanted, the leak test, retightening after the first heat, who did it and
 * when. Pressure of the leak test and its soapy water are common practice.
 */

import type { Header } from '../../../geometry';
import type { Design, Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';
import { line, text } from '../../formats/drawing/items';
import { type Block, type FlowColumn, flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';
import { THIN, TYPE } from '../sheet/style';
import { type Bench, partOf, stepsOf } from './bench';
import { lengthFigure, tapeFigure } from './figures';

export function inspectionSheets(bench: Bench, paper: Paper, display: Display): Sheet[] {
  const { header } = bench;
  const { design } = header;
  const runners = header.runners.filter((r) => r.centerline);
  if (runners.length === 0) return [];
  const blocks: Block[] = [
    ...lengthBlocks(bench, display),
    ...endBlocks(header, display),
    { kind: 'heading', words: 'Leak test' },
    ...LEAK.map(([head, words]): Block => ({ kind: 'words', head, words })),
    { kind: 'table', columns: LEAK_COLUMNS, rows: LEAK_ROWS },
    { kind: 'sheet' },
    ...boltBlocks(design),
    { kind: 'heading', words: 'Finished' },
    { kind: 'table', columns: DONE_COLUMNS, rows: doneRows(design) },
    { kind: 'figure', height: 34, at: ([x, y], width) => signatures(x, y, width) },
  ];
  return flowSheets('Inspection', blocks, paper);
}

const LENGTHS: readonly FlowColumn[] = [
  { head: 'runner', share: 34, bold: true },
  { head: 'length', share: 26, figure: true },
  { head: 'within ±', share: 20, light: true },
  { head: '  as built', share: 36 },
  { head: 'end to end', share: 28, figure: true },
  { head: '  as built', share: 36 },
  { head: 'heights', share: 18, box: true },
];

function lengthBlocks(bench: Bench, display: Display): Block[] {
  const { header, making } = bench;
  const steps = stepsOf(bench, display);
  const rows = header.runners.flatMap(({ runner, centerline: along }) => {
    if (!along) return [];
    const group = header.groups.get(runner.group ?? '');
    const heights = making.heights.find((h) => h.runner === runner.id);
    return [
      [
        runner.id,
        // What a cord measures is the tube itself, which may begin elsewhere than its centerline.
        tapeFigure(along.length + (partOf(bench, runner.id)?.startTrim ?? 0), steps),
        group ? lengthFigure(group.tolerance, display) : '',
        '',
        heights ? tapeFigure(heights.chord, steps) : '',
        '',
        '',
      ],
    ];
  });
  return [
    { kind: 'heading', words: `As built, ${display}` },
    {
      kind: 'words',
      words:
        'Length of the tube itself, trimmed, along its middle: hold a cord to the side of the tube, halfway between the inside and the outside of each bend, and measure the cord. End to end: straight, from middle to middle. Heights: on a flat plate, as on the runner’s page; tick where they are right.',
    },
    { kind: 'table', columns: LENGTHS, rows },
  ];
}

/** Where collectors end up, once all hangs on the engine: from the middle of the first port. */
function endBlocks({ ports, merges }: Header, display: Display): Block[] {
  const [first] = ports.values();
  if (!first || merges.size === 0) return [];
  const figure = (mm: number): string => lengthParts(mm, display, display === 'in' ? 2 : 1).number.replace('-', '−');
  const rows = [...merges.values()].map(({ merge, outlet }) => [
    merge.id,
    ...outlet.position.flatMap((p, k) => [figure(p - first.port.position[k]!), '']),
  ]);
  return [
    {
      kind: 'words',
      words: `Where the middle of each collector’s outlet lies from the middle of port ${first.port.id} at the flange’s face, in the design’s axes: X along the crankshaft, Y across it, Z up.`,
    },
    {
      kind: 'table',
      columns: [
        { head: 'outlet', share: 44, bold: true },
        ...['X', 'Y', 'Z'].flatMap((axis): FlowColumn[] => [
          { head: axis, share: 24, figure: true },
          { head: '  as built', share: 28 },
        ]),
      ],
      rows,
    },
  ];
}

const LEAK: readonly (readonly [head: string, words: string])[] = [
  [
    'How',
    'Close the ports with a plate and gasket and every outlet with a plug that is held mechanically. Let in air through a regulator, 0.2 bar (3 psi) and no more, brush soapy water over every weld and joint, and look for bubbles. Let the pressure off before anything is loosened.',
  ],
  ['Mind', 'A plug that lets go flies: stand aside. Air only, never oxygen or a fuel gas. Eyes protected.'],
];

const LEAK_COLUMNS: readonly FlowColumn[] = [
  { head: 'what', share: 60, bold: true },
  { head: 'tight', share: 20, box: true },
  { head: 'where it leaked, and what was done', share: 110 },
];

const LEAK_ROWS = ['runners', 'flanges', 'collectors', '', '', ''].map((what) => [what, what ? '' : '-', '']);

function boltBlocks({ flanges = [] }: Design): Block[] {
  const rows = flanges.flatMap(({ id, fasteners = [] }) => {
    const threads = [...new Set(fasteners.map((f) => `${f.thread} ${f.kind}`))];
    return threads.map((thread) => {
      const count = fasteners.filter((f) => `${f.thread} ${f.kind}` === thread).length;
      return [id, `${count} × ${thread}`, '', '', ''];
    });
  });
  if (rows.length === 0) return [];
  return [
    { kind: 'heading', words: 'After the first heat' },
    {
      kind: 'words',
      words:
        'Run it warm, let it cool right down, and tighten every fastener again to the torque that the engine’s or the fastener’s maker gives, in the order of the fitting sheets. Look again after some hours of running.',
    },
    {
      kind: 'table',
      columns: [
        { head: 'flange', share: 50, bold: true },
        { head: 'fasteners', share: 54 },
        { head: 'torque', share: 34 },
        { head: 'first', share: 26, box: true },
        { head: 'again', share: 26, box: true },
      ],
      rows,
    },
  ];
}

const DONE_COLUMNS: readonly FlowColumn[] = [
  { head: '', share: 16, box: true },
  { head: '', share: 174 },
];

const doneRows = ({ sensors = [], wrap }: Design): string[][] =>
  [
    'Inside clean of scale, weld beads and grit: shaken, blown out, looked through',
    'Flange faces flat to a straightedge after welding',
    ...(sensors.length > 0 ? ['Sensors’ threads chased, sensors in by hand'] : []),
    wrap ? 'Coated or left bare as wanted, wrap on and tied' : 'Coated or left bare as wanted',
    'No gas leak heard or felt at idle, cold, outdoors',
  ].map((words) => ['', words]);

function signatures(x: number, y: number, width: number) {
  const half = width / 2;
  return ['made by', 'date', 'checked by', 'date'].flatMap((words, i) => {
    const [left, base] = [x + (i % 2) * half, y + 14 + 15 * Math.floor(i / 2)];
    return [
      text(words, [left, base], TYPE.plain, { bold: true }),
      line([left + 24, base + 1], [left + half - 6, base + 1], THIN),
    ];
  });
}
