/** The weld map: the header with every weld numbered in the order to make it, then a row a weld with boxes to tick. */
import type { Display } from '../../../shared/design/types';
import { group } from '../../formats/drawing/items';
import { type Block, type FlowColumn, flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';
import { TYPE } from '../sheet/style';
import { type Bench, isPurged, stepsOf } from './bench';
import { tapeFigure } from './figures';
import { headerPicture } from './picture/headerPicture';
import { type Weld, weldOrder } from './weldOrder';

const HEIGHT = 100;
const USUAL_WIDTH = 190;

export function weldMapSheets(bench: Bench, paper: Paper, display: Display): Sheet[] {
  const welds = weldOrder(bench);
  if (welds.length === 0) return [];
  const steps = stepsOf(bench, display);
  const picture = headerPicture(
    bench.header,
    { width: USUAL_WIDTH, height: HEIGHT },
    welds.map(({ place }, i) => ({ words: String(i + 1), place, dot: true, bold: true })),
    TYPE.plain,
  );
  const rows = welds.map((weld, i) => [
    String(i + 1),
    weld.name,
    weld.station === null ? '' : tapeFigure(weld.station, steps),
    torchCell(weld),
    '',
    '',
  ]);
  const purged = bench.header.runners.some(({ tube }) => isPurged(tube.material));
  const blocks: Block[] = [
    ...(picture
      ? [
          {
            kind: 'figure',
            height: HEIGHT + 2,
            at: ([x, y]: readonly [number, number], width: number) => [
              group([x + (width - USUAL_WIDTH) / 2, y], picture.items),
            ],
          } as const,
        ]
      : []),
    ...orderWords(welds, purged).map(([head, words]): Block => ({ kind: 'words', head, words })),
    { kind: 'table', columns: columnsOf(display), rows },
  ];
  return flowSheets('Weld map', blocks, paper);
}

const columnsOf = (display: Display): FlowColumn[] => [
  { head: 'no.', share: 13, bold: true },
  { head: 'weld', share: 58, bold: true },
  { head: `from start, ${display}`, share: 34, light: true },
  { head: '  torch reaches', share: 54 },
  { head: 'tacked', share: 17, box: true },
  { head: 'welded', share: 17, box: true },
];

function torchCell({ kind, torch, inTheWay, early }: Weld): string {
  if (kind !== 'joint' || torch === null) return '';
  if (torch >= 359.5) return 'all round';
  const by = inTheWay.length > 0 ? `, less ${inTheWay.join(', ')}` : '';
  return `${torch.toFixed(0)}°${by}${early ? ': weld at once' : ''}`;
}

function orderWords(welds: readonly Weld[], purged: boolean): (readonly [head: string, words: string])[] {
  const early = welds.filter((w) => w.early).length;
  const joints = welds.filter((w) => w.kind === 'joint').length;
  return [
    [
      'Order',
      `Numbers are an order to weld in. Tack everything first, three or four tacks a joint, the flange bolted down cold and true, and try it on the engine. Then weld ${
        joints > 0 ? 'joints runner by runner on the bench, ' : ''
      }flanges from the middle outward, collectors last, with every tube lying in its inlet without force. Opposite quarters in turn draw least.`,
    ],
    ...(early > 0
      ? [
          [
            'Torch',
            '“Weld at once”: the finished runner is in its own way there. Weld it as soon as these two pieces are tacked and turned right, before the next piece goes on.',
          ] as const,
        ]
      : []),
    ...(purged ? [['Purge', 'Every weld of stainless or titanium tube is purged inside.'] as const] : []),
  ];
}
