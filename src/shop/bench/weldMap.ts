/** The weld map: the header with every weld numbered in the order to make it, then a row a weld with boxes to tick. */
import type { Header } from '../../../geometry';
import { group } from '../../formats/drawing/items';
import { purgeNote } from '../making/welded/purge';
import { isAllRound, lessInPlace, othersIn } from '../making/welded/torchRoom';
import { type Block, type FlowColumn, flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';
import { TYPE } from '../sheet/style';
import { headersApart } from './apart';
import type { Bench } from './bench';
import { headerPicture } from './picture/headerPicture';
import { type Weld, weldOrder } from './weldOrder';

const HEIGHT = 100;
const USUAL_WIDTH = 190;

export function weldMapSheets(bench: Bench, paper: Paper): Sheet[] {
  const welds = weldOrder(bench);
  if (welds.length === 0) return [];
  const asked = welds.some(({ torch }) => torch !== null);
  const rows = welds.map((weld, i) => [String(i + 1), weld.name, torchCell(weld), '', '']);
  const purge = bench.header.runners.map(({ tube }) => purgeNote(tube.material)).find((note) => note) ?? null;
  const blocks: Block[] = [
    ...headersApart(bench.header)
      .map((one) => pictureOf(one, welds))
      .filter((b) => b !== null),
    ...orderWords(welds, purge).map(([head, words]): Block => ({ kind: 'words', head, words })),
    { kind: 'table', columns: COLUMNS.filter(({ head }) => asked || head !== TORCH), rows },
  ];
  return flowSheets('Weld map', blocks, paper);
}

/** Numbers are those of the whole header. */
function pictureOf(header: Header, welds: readonly Weld[]): Block | null {
  const own = new Set(header.runners.map(({ runner }) => runner.id));
  const marks = welds.flatMap(({ runner, place }, i) =>
    own.has(runner) ? [{ words: String(i + 1), place, dot: true, bold: true } as const] : [],
  );
  const picture = headerPicture(header, { width: USUAL_WIDTH, height: HEIGHT }, marks, TYPE.plain);
  return (
    picture && {
      kind: 'figure',
      height: HEIGHT + 2,
      at: ([x, y], width) => [group([x + (width - USUAL_WIDTH) / 2, y], picture.items)],
    }
  );
}

const TORCH = 'torch reaches';
const COLUMNS: readonly FlowColumn[] = [
  { head: 'no.', share: 13, bold: true },
  { head: 'weld', share: 58, bold: true },
  { head: TORCH, share: 88 },
  { head: 'tacked', share: 17, box: true },
  { head: 'welded', share: 17, box: true },
];

function torchCell({ kind, torch, torchInPlace, inTheWay, early }: Weld): string {
  if (kind !== 'joint' || torch === null) return '';
  const others = othersIn(inTheWay);
  const own = isAllRound(torch)
    ? 'all round'
    : `${torch.toFixed(0)}°${early ? ', then its own tube is in the way: at once' : ''}`;
  return lessInPlace(torch, torchInPlace)
    ? `${own}; ${torchInPlace.toFixed(0)}° with ${others.join(', ') || 'the others'} in place`
    : own;
}

function orderWords(welds: readonly Weld[], purge: string | null): (readonly [head: string, words: string])[] {
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
            '“At once”: the finished runner is in its own way there. Weld it as soon as these two pieces are tacked and turned right, before the next piece goes on.',
          ] as const,
        ]
      : []),
    ...(purge ? [['Purge', purge] as const] : []),
  ];
}
