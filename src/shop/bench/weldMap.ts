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

/** Of a picture; lower where that saves a sheet. */
const HEIGHTS = [100, 84, 70];
const USUAL_WIDTH = 190;

export function weldMapSheets(bench: Bench, paper: Paper): Sheet[] {
  const welds = weldOrder(bench);
  if (welds.length === 0) return [];
  const asked = welds.some(({ torch }) => torch !== null);
  const rows = welds.map((weld, i) => [String(i + 1), weld.name, torchCell(weld), '', '']);
  const purge = bench.header.runners.map(({ tube }) => purgeNote(tube.material)).find((note) => note) ?? null;
  const blocks = (height: number): Block[] => [
    ...headersApart(bench.header)
      .map((one) => pictureOf(one, welds, height))
      .filter((b) => b !== null),
    ...orderWords(welds, purge, bench.header.merges.size > 0).map(
      ([head, words]): Block => ({ kind: 'words', head, words }),
    ),
    asked ? { kind: 'table', columns: COLUMNS, rows } : besides(rows),
  ];
  const tried = HEIGHTS.map((height) => flowSheets('Weld map', blocks(height), paper));
  const fewest = Math.min(...tried.map(({ length }) => length));
  return tried.find(({ length }) => length === fewest)!;
}

/** Numbers are those of the whole header. */
function pictureOf(header: Header, welds: readonly Weld[], height: number): Block | null {
  const own = new Set(header.runners.map(({ runner }) => runner.id));
  const marks = welds.flatMap(({ runner, place }, i) =>
    own.has(runner) ? [{ words: String(i + 1), place, dot: true, bold: true } as const] : [],
  );
  const picture = headerPicture(header, { width: USUAL_WIDTH, height }, marks, TYPE.plain);
  return (
    picture && {
      kind: 'figure',
      height: height + 2,
      at: ([x, y], width) => [group([x + (width - USUAL_WIDTH) / 2, y], picture.items)],
    }
  );
}

const COLUMNS: readonly FlowColumn[] = [
  { head: 'no.', share: 13, bold: true },
  { head: 'weld', share: 58, bold: true },
  { head: 'torch reaches', share: 88 },
  { head: 'tacked', share: 17, box: true },
  { head: 'welded', share: 17, box: true },
];

/** Where no torch is asked there is room for two columns of welds, the second behind the first. */
function besides(rows: readonly (readonly string[])[]): Block {
  const bare: FlowColumn[] = [
    { head: 'no.', share: 10, bold: true },
    { head: 'weld', share: 53, bold: true },
    { head: 'tacked', share: 15, box: true },
    { head: 'welded', share: 17, box: true },
  ];
  const half = Math.ceil(rows.length / 2);
  const cells = (row: readonly string[] | undefined): string[] =>
    row ? [row[0]!, row[1]!, '', ''] : ['', '', '-', '-'];
  return {
    kind: 'table',
    columns: [...bare, ...bare],
    rows: rows.slice(0, half).map((row, i) => [...cells(row), ...cells(rows[half + i])]),
  };
}

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

function orderWords(
  welds: readonly Weld[],
  purge: string | null,
  hasCollectors: boolean,
): (readonly [head: string, words: string])[] {
  const early = welds.filter((w) => w.early).length;
  const joints = welds.filter((w) => w.kind === 'joint').length;
  return [
    [
      'Order',
      `Numbers are an order to weld in. Tack everything first, three or four tacks a joint, the flange bolted down cold and true, and try it on the engine. Then weld ${
        joints > 0 ? 'joints runner by runner on the bench, ' : ''
      }flanges from the middle outward, collectors last, with every tube lying in its inlet without force. Opposite quarters in turn draw least.`,
    ],
    ...(hasCollectors
      ? [
          [
            'Collectors',
            'Each is welded up by itself first: its stubs to one another and to what fills the middle, then cone, outlet, joint. Those welds have no number here.',
          ] as const,
        ]
      : []),
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
