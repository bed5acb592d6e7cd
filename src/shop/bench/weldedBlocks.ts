/**
 * A runner welded up, for the bench: its strip with the joints, a row a piece in the order they go on (from which stock, as
 * sawn, how it is turned), what the torch must know. Figures are rounded to tape and dial; what that costs is said beneath.
 */

import type { ResolvedRunner } from '../../../geometry';
import { settingsOf } from '../../../shared/stock/workshop';
import { arcLength, aroundTube } from '../arcs';
import type { Joint, StockPlan, WeldedTube } from '../making/report';
import { isPurged } from '../making/welded/purge';
import type { Block, FlowColumn } from '../sheet/flow';
import type { Bench } from './bench';
import { endName, partOf, startName, upWords } from './bench';
import { aroundFigure, dialFigure, lengthFigure, type Steps, tapeFigure } from './figures';
import { stripFigure } from './stripFigure';
import { type Turn, turnsOf } from './turns';

export function weldedBlocks(bench: Bench, tube: WeldedTube, steps: Steps): Block[] {
  const part = partOf(bench, tube.runner);
  if (!part) return [];
  const { outsideDiameter, material } = part.resolved.tube;
  const stock = stockOf(bench.making.plan);
  const turns = turnsOf(tube, steps);
  const round = (degrees: number): string => aroundFigure(aroundTube(degrees, outsideDiameter), steps.display);
  const rows = tube.pieces.map((piece, k) => [
    piece.id,
    stock.get(piece.id) ?? '',
    ...(piece.kind === 'bend'
      ? [tapeFigure(piece.sawnIn, steps), dialFigure(piece.angle, steps), tapeFigure(piece.sawnOut, steps)]
      : [tapeFigure(piece.sawnIn + piece.sawnOut, steps), '', '']),
    // Straight pieces have no line of their own.
    ...(piece.kind === 'bend'
      ? [
          dialFigure(lineTurn(tube, turns, k), steps),
          round(lineTurn(tube, turns, k)),
          dialFigure(turns[k]!.total, steps),
          round(turns[k]!.total),
        ]
      : []),
  ]);
  return [
    { kind: 'figure', ...stripFigure(stripOf(tube, turns, startName(part.resolved), endName(part.resolved), steps)) },
    { kind: 'heading', words: `Pieces in the order they go on, ${steps.display} and degrees` },
    {
      kind: 'words',
      words: howToTurn(bench, part.resolved, radiiOf(tube, steps), allowedFor(bench, part.resolved, steps)),
    },
    { kind: 'table', columns: COLUMNS, rows },
    ...(isPurged(material)
      ? [
          {
            kind: 'words',
            head: 'Purge',
            words: 'Argon inside at every weld of this tube; how, and what to mind, stands on the weld map.',
          } as const,
        ]
      : []),
  ];
}

const COLUMNS: readonly FlowColumn[] = [
  { head: 'piece', share: 19, bold: true },
  { head: 'from stock', share: 37 },
  { head: 'in', share: 22, figure: true },
  { head: 'arc', share: 18, figure: true },
  { head: 'out', share: 22, figure: true },
  { head: 'turn', share: 19, figure: true },
  { head: 'round', share: 18, figure: true },
  { head: 'total', share: 19, figure: true },
  { head: 'round', share: 18, figure: true },
];

/** What sawn lengths hold beside the tube itself: for welds, and to be trimmed off at its ends. */
function allowedFor({ header }: Bench, { tooling }: ResolvedRunner, steps: Steps): string {
  const { weldGap, weldShrinkage } = settingsOf(header.design.workshop);
  const { trimStart = 0, trimEnd = 0 } = tooling;
  const say = (mm: number): string => tapeFigure(mm, steps);
  const exact = (mm: number): string => lengthFigure(mm, steps.display);
  const held = [
    ...(weldGap > 0 ? [`a gap of ${exact(weldGap)} a weld`] : []),
    ...(weldShrinkage > 0 ? [`${exact(weldShrinkage)} that each weld draws in`] : []),
    ...(trimStart > 0 ? [`${say(trimStart)} to trim at the start`] : []),
    ...(trimEnd > 0 ? [`${say(trimEnd)} to trim at the end`] : []),
  ];
  return held.length > 0 ? `, reckoned with ${held.join(', ')}` : '';
}

function howToTurn({ header }: Bench, resolved: ResolvedRunner, radii: string, allowed: string): string {
  const start = 'port' in resolved.runner.from ? 'flange' : 'collector';
  return `In, arc and out are as sawn, ${radii}${allowed}; a straight piece is all in. Scribe a line along the outside of each bend, away from its centre, and on over straight pieces. Turn: how far it lies round from the last bend’s, clockwise looking along the tube away from the ${start}, − the other way; the first one’s from ${upWords(header, resolved)}. Total: from up, as on the dials. Round: as much along the tube’s outside.`;
}

const radiiOf = ({ pieces }: WeldedTube, steps: Steps): string => {
  const radii = [...new Set(pieces.filter((p) => p.kind === 'bend').map((p) => lengthFigure(p.radius, steps.display)))];
  return `centerline radius ${radii.join(' or ')}`;
};

/** Of a bend's line from the last line there is: a straight piece before it has none, so what that was turned by is this one's. */
function lineTurn({ pieces }: Pick<WeldedTube, 'pieces'>, turns: readonly Turn[], k: number): number {
  const own = turns[k]!.turn;
  const before = pieces[k - 1];
  return before?.kind === 'straight' ? own + lineTurn({ pieces }, turns, k - 1) : own;
}

/** `u180 no. 2` by piece; what is only assumed to be on sale has no name that anybody knows. */
export function stockOf({ parts, buy }: StockPlan): Map<string, string> {
  const used = parts.flatMap((p) => p.used);
  const assumed = new Set(buy.filter((b) => b.assumed).map((b) => b.stock));
  return new Map(
    used.flatMap(({ stock, kind, number, cuts }) => {
      const name = assumed.has(stock) ? `assumed ${kind}` : stock;
      const several = used.filter((u) => u.stock === stock).length > 1;
      return cuts.map(({ piece }) => [piece, several ? `${name} no. ${number}` : name] as const);
    }),
  );
}

function stripOf(tube: WeldedTube, turns: readonly Turn[], left: string, right: string, steps: Steps) {
  let at = 0;
  const placed = tube.pieces.map((piece) => {
    const from = at;
    const bend = from + piece.in;
    at = bend + arcLength(piece) + piece.out;
    return { piece, from, bend, bent: bend + arcLength(piece), to: at };
  });
  const bent = placed.filter(({ piece }) => piece.kind === 'bend');
  return {
    length: at,
    bends: bent.map(({ piece, bend, bent: to }) => ({ from: bend, to, words: dialFigure(piece.angle, steps) })),
    cuts: placed.slice(1).map(({ from }) => from),
    names: placed.map(({ piece, from, to }) => ({ at: (from + to) / 2, words: piece.id })),
    marks: [...placed.slice(1).map(({ from }) => from), at].map((s) => ({ at: s, words: tapeFigure(s, steps) })),
    dials: placed.flatMap(({ piece, bend, bent: to }, k) =>
      piece.kind === 'bend' ? [{ at: (bend + to) / 2, degrees: turns[k]!.total }] : [],
    ),
    waste: [],
    left: `${left}, measured along the middle of the tube`,
    right,
  };
}

/** Between which pieces, `r1-1 | r1-2`. */
export const jointName = ({ pieces }: WeldedTube, { after }: Joint): string =>
  `${pieces[after]!.id} | ${pieces[after + 1]!.id}`;
