/**
 * `joints.csv`: how pieces are turned against each other, a row a joint. Row 0 of each runner is its start: the first piece's scribed
 * line from the port's (or collector's) up. Turns are clockwise, looking along the tube away from its start.
 */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import { turnCell } from './angles';
import type { WeldedTube } from './making/report';

export const JOINTS = 'joints.csv';

export const joints = (tubes: readonly WeldedTube[]): string =>
  writeCsv(
    [
      'runner',
      'joint',
      'piece',
      'next',
      'station',
      'turn',
      'around',
      'total',
      'total_around',
      'straight_before',
      'straight_behind',
      'torch_free',
      'torch_free_in_place',
      'in_the_way',
    ],
    tubes.flatMap((tube): Cell[][] => [
      startRow(tube),
      ...tube.joints.map((joint): Cell[] => [
        tube.runner,
        String(joint.after + 1),
        tube.pieces[joint.after]!.id,
        tube.pieces[joint.after + 1]!.id,
        decimal(joint.station),
        turnCell(joint.turn),
        decimal(joint.around),
        decimal(joint.total),
        decimal(joint.totalAround),
        decimal(joint.before),
        decimal(joint.behind),
        decimal(joint.torchFree),
        decimal(joint.torchFreeInPlace ?? joint.torchFree),
        joint.inTheWay.join('; '),
      ]),
    ]),
  );

function startRow({ runner, start, startTrim = 0, pieces }: WeldedTube): Cell[] {
  const total = start.turn < 0 ? start.turn + 360 : start.turn;
  const totalAround = start.turn < 0 ? start.around * (total / start.turn) : start.around;
  const station = decimal(-startTrim);
  const turned = [turnCell(start.turn), decimal(start.around), decimal(total), decimal(totalAround)];
  return [runner, '0', '', pieces[0]!.id, station, ...turned, '', '', '', '', ''];
}
