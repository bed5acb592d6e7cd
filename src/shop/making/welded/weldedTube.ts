/**
 * A runner welded up from stock bends and straight bar, as most builders do at home: its pieces as they are sawn, the joints
 * between them with their clocking and the torch's room, and what tape and dial cost. Lengths mm along the real tube, which begins
 * `startTrim` farther in than its centerline; stations along the centerline. Degrees. Nominal cuts are square to the centerline.
 */
import { type BendRow, type Header, type Pose, pointAt, STRAIGHT_TOLERANCE } from '../../../../geometry';
import { settingsOf } from '../../../../shared/stock/workshop';
import { halfTurn, wholeTurn } from '../../angles';
import { arcAngle, arcLength, aroundTube } from '../../arcs';
import type { Part } from '../../part';
import type { Joint, Piece, WeldedTube } from '../report';
import { chooseCuts } from './choose';
import { type Cut, cutsOf, lengthOf, straightsAbout } from './pieces';
import { allowanceRemark, kerfRemarks, radiusRemark, tightRemark, torchRemarks, trimRemark } from './remarks';
import { roundedTube } from './rounded';
import { allowanceOf, sawnOf } from './sawn';
import { arcsOf, type Supply, supplyOf, waysToCut, wholeOf } from './stock';
import { torchAlong } from './torchAt';
import { OWN } from './torchRoom';

/** Shortest piece of bar between two welds, as a share of the outside diameter: what can still be held. Common practice, no source. */
const LEAST_RING = 0.5;

export function weldedTube(header: Header, part: Part): WeldedTube {
  const { id, line, table, startTrim, resolved } = part;
  const { tube, tooling } = resolved;
  const { workshop, display = 'mm' } = header.design;
  const settings = settingsOf(workshop);
  const { kerf, weldSetback, torchRoom } = settings;
  const trims = { start: tooling.trimStart ?? 0, end: tooling.trimEnd ?? 0 };
  const bends = table.rows.slice(0, -1);
  const supplies = bends.map(({ radius }) => supplyOf(workshop, tube, radius));
  const arcs = bends.map(({ angle }, i) => arcsOf(angle, supplies[i]!.stock));
  const allowance = allowanceOf(settings);

  // What the saw leaves longer at a joint must come out of the leg too.
  const spare = Math.max(0, allowance);
  const ways = arcs.map((list, i) =>
    waysToCut(list, supplies[i]!.stock).map(([a, b]) => [Math.max(0, a - spare), Math.max(0, b - spare)] as const),
  );
  const lengths = table.rows.map(({ length }, i) => whole(i === 0 ? length + startTrim : length));
  const begins = beginnings(table.rows, startTrim);
  const torch = torchAlong(header, resolved, torchRoom);
  const chosen = chooseCuts(
    lengths.map((length, i) => ({
      length,
      trim: (i === 0 ? trims.start : 0) + (i === bends.length ? trims.end : 0),
      sunk: i === 0 ? startTrim : 0,
    })),
    ways,
    { setback: weldSetback, leastBar: Math.max(weldSetback, 2 * kerf, tube.outsideDiameter * LEAST_RING) },
    (straight, joint) => torch(begins[straight]! + joint),
  );

  const cuts = cutsOf(table, arcs, chosen);
  const lost = { start: chosen[0]!.lost, end: bends.length > 0 ? chosen.at(-1)!.lost : 0 };
  const sawnOn = { start: trims.start - lost.start, end: trims.end - lost.end };
  const { sawn, untaken } = sawnOf(cuts, settings, sawnOn);
  const pieces = cuts.map(
    ({ kind, angle, radius, ...cut }, k): Piece => ({
      id: `${id}-${k + 1}`,
      kind,
      in: cut.in,
      angle,
      radius,
      out: cut.out,
      sawnIn: sawn[k]!.in,
      sawnOut: sawn[k]!.out,
      kerfAngle: kind === 'bend' ? arcAngle(kerf, radius) : 0,
    }),
  );

  const round = (degrees: number): number => aroundTube(degrees, tube.outsideDiameter);
  const startTurn = bends.length > 0 ? halfTurn(table.clocking + 180) : 0;
  let station = -startTrim;
  let total = startTurn;
  const joints = cuts.slice(0, -1).map((cut, after): Joint => {
    station += lengthOf(cut);
    const turn = turnInto(cuts[after + 1]!, bends);
    total += turn;
    const { position, tangent } = pointAt(line, station);
    const reach = torch(station);
    return {
      after,
      station,
      position,
      direction: tangent,
      turn,
      around: round(turn),
      total: wholeTurn(total),
      totalAround: round(wholeTurn(total)),
      ...straightsAbout(cuts, after),
      torchFree: reach.free,
      torchFreeInPlace: reach.freeInPlace,
      inTheWay: [...(reach.bySelf ? [OWN] : []), ...reach.byOthers],
    };
  });

  const made = { pieces, joints, start: { turn: startTurn, around: round(startTurn) }, startTrim };
  const wholes = cuts.map(({ angle, bend }) => (bend < 0 ? undefined : wholeOf(angle, supplies[bend]!.stock)));
  return {
    runner: id,
    tube: resolved.runner.tube,
    ...made,
    ...(supplies.some(({ assumed }) => assumed) ? { assumed: true as const } : {}),
    rounded: roundedTube(line, startOf(part), made, wholes, settings, sawnOn),
    remarks: [
      ...missingRadii(bends, supplies).flatMap(({ radius, of, supply }) =>
        radiusRemark(id, tube, radius, of, supply, display),
      ),
      ...kerfRemarks(id, pieces, kerf, display),
      ...tightRemark(id, joints, weldSetback, display),
      ...torchRemarks(id, joints),
      ...allowanceRemark(id, untaken, allowance, display),
      ...trimRemark(id, 'start', lost.start, display),
      ...trimRemark(id, 'end', lost.end, display),
    ],
  };
}

/** Where its centerline truly starts: a tube as tacked up may not stand as its port does. */
export const startOf = ({ line, resolved }: Part): Pose => ({
  position: line.points[0]!,
  direction: line.directions[0]!,
  up: resolved.start.up,
});

/** The contract's "no straight between": no saw finds it. */
const whole = (length: number): number => (length < STRAIGHT_TOLERANCE ? 0 : length);

/** Where along the centerline each straight of the real tube begins. */
function beginnings(rows: readonly BendRow[], startTrim: number): number[] {
  let station = -startTrim;
  return rows.map(({ length, angle, radius }, i) => {
    const begins = station;
    station += (i === 0 ? length + startTrim : length) + arcLength({ angle, radius });
    return begins;
  });
}

/** Lines run on over straight pieces, and over joints within a bend: the turn is at the last joint before the next bend. */
const turnInto = ({ begins, bend }: Cut, bends: readonly BendRow[]): number =>
  begins && bend > 0 ? bends[bend]!.rotation : 0;

function missingRadii(bends: readonly BendRow[], supplies: readonly Supply[]) {
  const byRadius = new Map<number, { radius: number; of: number[]; supply: Supply }>();
  for (const [i, { radius }] of bends.entries()) {
    const known = byRadius.get(radius);
    if (known) known.of.push(i + 1);
    else byRadius.set(radius, { radius, of: [i + 1], supply: supplies[i]! });
  }
  return [...byRadius.values()];
}
