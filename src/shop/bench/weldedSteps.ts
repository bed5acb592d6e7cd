/** A runner that is welded up: each piece sawn, dressed, turned to its place and tacked; then checked, welded, looked at. */
import type { Header } from '../../../geometry';
import { aroundTube } from '../arcs';
import type { Joint, Making, Piece, StockCut, UsedStock, WeldedTube } from '../making/report';
import { purgeNote } from '../making/welded/purge';
import { isAllRound, lessInPlace, othersIn } from '../making/welded/torchRoom';
import { partOf, startName } from './bench';
import { checkSteps } from './checkSteps';
import type { Figure, Step } from './step';
import { turnsOf } from './turns';
import type { Units } from './units';

export function weldedSteps(making: Making, header: Header, tube: WeldedTube, units: Units): Step[] {
  const { runner, pieces, joints } = tube;
  const diameter = header.design.tubes[tube.tube]?.outsideDiameter ?? 0;
  const cuts = cutsOf(making);
  // "In all" is the sum of what is turned, as it is on paper.
  const turns = turnsOf(tube, units.steps);
  const care = tube.remarks.map(({ message }) => message);
  const made = pieces.flatMap((piece, i): Step[] => {
    const at = joints.findIndex(({ after }) => after === i - 1);
    return [
      sawing(runner, piece, cuts.get(piece.id), diameter, units, i === 0 ? care : []),
      dressing(runner, piece),
      at >= 0
        ? turning(runner, pieces[i - 1]!, piece, { ...joints[at]!, total: turns[at + 1]!.total }, diameter, units)
        : starting(header, tube, piece, units),
      tacking(runner, i === 0 ? null : pieces[i - 1]!, piece),
    ];
  });
  const welds = joints.map((joint) => welding(runner, pieces[joint.after]!, pieces[joint.after + 1]!, joint));
  return [
    ...made,
    ...checkSteps(making, header, runner, units),
    ...purging(header, tube, welds),
    ...welds,
    looking(header, runner, units),
  ];
}

export type Cut = {
  readonly stock: UsedStock;
  readonly cut: StockCut;
  /** Not in the workshop: taken as on sale. */
  readonly assumed: boolean;
};

/** Where each piece is cut from, as far as the plan has it. */
export function cutsOf({ plan }: Making): ReadonlyMap<string, Cut> {
  const assumed = new Set(plan.buy.filter((line) => line.assumed).map(({ stock }) => stock));
  const used = plan.parts.flatMap((part) => part.used);
  return new Map(
    used.flatMap((stock) =>
      stock.cuts.map((cut): [string, Cut] => [cut.piece, { stock, cut, assumed: assumed.has(stock.stock) }]),
    ),
  );
}

/** `stock bend J 64 #2`; what lies on the shelf is said to, and what is only assumed to be on sale. */
export function stockWords({ stock: { stock, kind, number, source }, assumed }: Cut): string {
  const more = source === 'shelf' ? ', on the shelf' : assumed ? ', assumed to be on sale' : '';
  return `${kind === 'bar' ? 'bar' : 'stock bend'} ${stock} no. ${number}${more}`;
}

function sawing(
  runner: string,
  piece: Piece,
  cut: Cut | undefined,
  diameter: number,
  units: Units,
  care: readonly string[],
): Step {
  const { id, kind, sawnIn, sawnOut, angle, radius, kerfAngle } = piece;
  const bend = kind === 'bend';
  const figures: Figure[] = bend
    ? [
        units.length('Straight before', sawnIn),
        units.angle('Arc', angle),
        units.length('Straight behind', sawnOut),
        { name: 'Radius', kind: 'size', value: radius },
      ]
    : [units.length('Length', sawnIn)];
  const kerf: Figure[] = bend
    ? [{ name: 'The saw takes', kind: 'words', value: `${kerfAngle.toFixed(1)}° of arc` }]
    : [];
  const from: Figure[] = cut
    ? [{ name: 'From', kind: 'words', value: stockWords(cut) }, ...alongStock(cut, units)]
    : [];
  return {
    id: `${runner}/saw/${id}`,
    runner,
    task: 'cut',
    title: `Saw piece ${id}`,
    figures,
    beside: [...from, ...kerf],
    says: [
      'Cuts are square to the tube’s middle line.',
      ...(bend ? ['Arc is measured about the bend’s centre, along the middle line.'] : []),
      ...(cut?.cut.reversed ? ['It lies the other way round in its stock: its far end comes first.'] : []),
    ],
    care,
    drawing: { kind: 'piece', in: sawnIn, angle, radius, out: sawnOut, diameter },
  };
}

function alongStock({ stock, cut }: Cut, units: Units): Figure[] {
  return stock.kind === 'bar'
    ? [units.length('From the bar’s end', cut.from), units.length('to', cut.to)]
    : [units.angle('From the first leg’s end', cut.from), units.angle('to', cut.to)];
}

const dressing = (runner: string, { id, kind }: Piece): Step => ({
  id: `${runner}/dress/${id}`,
  runner,
  task: 'dress',
  title: `Dress piece ${id}`,
  figures: [],
  beside: [],
  says: [
    'Take the burr off inside and outside, and clean to bright metal as far as the weld reaches.',
    `Write ${id} on it, with an arrow the way the gas goes.`,
    kind === 'bend'
      ? 'Scribe its line: along the outside of the bend, away from its centre, to both ends.'
      : 'Scribe a line along it, from end to end.',
  ],
  care: [],
  drawing: null,
});

function starting(header: Header, { runner, start }: WeldedTube, piece: Piece, units: Units): Step {
  const place = placeOf(header, runner);
  return {
    id: `${runner}/turn/start`,
    runner,
    task: 'fit',
    title: `Set piece ${piece.id} at ${place}`,
    figures: [units.turn('Turn', start.turn), units.around('Round the outside', start.around)],
    beside: [],
    says: [`From the mark that shows up at ${place} to the piece’s line, looking along the tube away from it.`],
    care: [],
    drawing: { kind: 'turn', degrees: start.turn, from: 'up', to: piece.id },
  };
}

function turning(runner: string, before: Piece, piece: Piece, joint: Joint, diameter: number, units: Units): Step {
  return {
    id: `${runner}/turn/${before.id}+${piece.id}`,
    runner,
    task: 'fit',
    title:
      units.dial(joint.turn) === 0
        ? `Set piece ${piece.id} on ${before.id}, line to line`
        : `Turn piece ${piece.id} on ${before.id}`,
    figures: [units.turn('Turn', joint.turn), units.around('Round the outside', joint.around)],
    beside: [
      units.angle('From the start’s line, in all', joint.total),
      units.length('round the outside', aroundTube(joint.total, diameter)),
    ],
    says: [`From the line of ${before.id} to the line of ${piece.id}, looking along the tube away from its start.`],
    care: [],
    drawing: { kind: 'turn', degrees: joint.turn, from: before.id, to: piece.id },
  };
}

const tacking = (runner: string, before: Piece | null, piece: Piece): Step => ({
  id: `${runner}/tack/${piece.id}`,
  runner,
  task: 'fit',
  title: before ? `Tack ${before.id} to ${piece.id}` : `Hold piece ${piece.id} there`,
  figures: [],
  beside: [],
  says: before
    ? ['Three or four tacks, evenly round. See that the lines still agree before the last one.']
    : ['Tack it lightly, or hold it with a clamp: it comes off again to be welded.'],
  care: [],
  drawing: null,
});

function welding(runner: string, before: Piece, piece: Piece, joint: Joint): Step {
  const { torchFree, torchFreeInPlace = torchFree } = joint;
  const others = othersIn(joint.inTheWay);
  const who = others.length > 0 ? `with ${others.join(', ')} there ` : '';
  const room: Figure[] = !isAllRound(torchFree)
    ? [{ name: 'Torch has room', kind: 'words', value: degrees(torchFree) }]
    : [];
  const inPlace: Figure[] = lessInPlace(torchFree, torchFreeInPlace)
    ? [{ name: 'On the header', kind: 'words', value: degrees(torchFreeInPlace) }]
    : [];
  return {
    id: `${runner}/weld/${before.id}+${piece.id}`,
    runner,
    task: 'weld',
    title: `Weld ${before.id} to ${piece.id}`,
    figures: [],
    beside: [...room, ...inPlace],
    says: ['Weld by quarters, opposite ones in turn, so that it is drawn evenly.'],
    care: [
      ...(room.length > 0
        ? ['The tube itself is in the torch’s way: weld this joint before the pieces beyond it are on.']
        : []),
      ...(inPlace.length > 0
        ? [`Weld it off the header: ${who}the torch has its room only part of the way round.`]
        : []),
    ],
    drawing: null,
  };
}

const degrees = (free: number): string => `${Math.round(free)}° of 360°`;

/** Before the first of a tube's welds, where its metal asks for it. */
export function purging(
  { design }: Header,
  { runner, tube }: Pick<WeldedTube, 'runner' | 'tube'>,
  welds: readonly Step[],
): Step[] {
  const note = welds.length > 0 ? purgeNote(design.tubes[tube]?.material) : null;
  if (note === null) return [];
  return [
    {
      id: `${runner}/purge`,
      runner,
      task: 'weld',
      title: `Fill tube ${runner} with argon`,
      figures: [],
      beside: [],
      says: [],
      care: [note],
      drawing: null,
    },
  ];
}

/** Where a runner begins, in words. */
export function placeOf(header: Header, runner: string): string {
  const resolved = header.runners.find((r) => r.runner.id === runner);
  return resolved ? startName(resolved) : 'the start';
}

export function looking(header: Header, runner: string, units: Units): Step {
  const part = partOf({ header }, runner);
  // What a cord measures is the tube itself, which may begin elsewhere than its centerline.
  const length = part ? part.line.length + part.startTrim : 0;
  return {
    id: `${runner}/look`,
    runner,
    task: 'prove',
    title: `Look over tube ${runner}`,
    figures: [units.length('Length along its middle', length)],
    beside: [],
    says: ['No crack, hole or bead inside that the gas would strike. Write down its length as built.'],
    care: [],
    drawing: null,
  };
}
