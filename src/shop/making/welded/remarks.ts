/** What a builder must know before the saw is out: a shelf without the radius, tight joints, allowances with nowhere to go, a kerf that eats a piece. */
import { DEFAULT_MATERIAL } from '../../../../geometry';
import type { Display, Tube } from '../../../../shared/design/types';
import { formatAngle, formatLength } from '../../../../shared/units';
import { arcAngle, arcLength } from '../../arcs';
import { list } from '../../list';
import type { Joint, Piece, Remark } from '../report';
import type { Supply } from './stock';
import { isAllRound } from './torchRoom';

const sayTube = ({ outsideDiameter, wall, material = DEFAULT_MATERIAL }: Tube, display: Display): string =>
  `${formatLength(outsideDiameter, display)} × ${formatLength(wall, display)} ${material}`;

/** @param bends numbers of the runner's bends of this radius, from 1 */
export function radiusRemark(
  runner: string,
  tube: Tube,
  radius: number,
  bends: readonly number[],
  { otherRadii }: Supply,
  display: Display,
): Remark[] {
  if (!otherRadii) return [];
  const say = (mm: number) => formatLength(mm, display);
  const which = bends.length === 1 ? `bend ${bends[0]} has` : `bends ${list(bends.map(String))} have`;
  return [
    {
      where: 'workshop/bends',
      message: `${runner}: ${which} a radius of ${say(radius)}, and the stock bends of ${sayTube(tube, display)} have ${list(otherRadii.map(say))}; add a stock bend of radius ${say(radius)}, or give the runner a radius that is there.`,
      stops: true,
    },
  ];
}

export function tightRemark(runner: string, joints: readonly Joint[], setback: number, display: Display): Remark[] {
  const tight = joints.filter(({ before, behind }) => before <= 0 && behind <= 0);
  if (tight.length === 0 || setback <= 0) return [];
  const say = (mm: number) => formatLength(mm, display);
  const which = list(tight.map(({ after }) => `${after + 1}`));
  return [
    {
      where: `runners/${runner}`,
      message: `${runner}: joint${tight.length > 1 ? 's' : ''} ${which} ${tight.length > 1 ? 'stand' : 'stands'} between two arcs with no straight on either side, where ${say(setback)} are wanted; the tight inner side is hard to reach with a torch: weld that side first, or leave a straight there or use a stock bend that turns more.`,
      stops: false,
    },
  ];
}

/** Of the tube alone: what other runners take is told by each joint, and is a matter of which is put in first. */
export function torchRemarks(runner: string, joints: readonly Joint[]): Remark[] {
  return joints
    .filter(({ torchFree }) => !isAllRound(torchFree))
    .map(({ after, torchFree }) => ({
      where: `runners/${runner}`,
      message: `${runner}: at joint ${after + 1} a torch has room over ${formatAngle(torchFree, 0)} of the round while all of this tube is there; weld it before the pieces that come near it are put on.`,
      stops: false,
    }));
}

/** @param untaken joints by the piece before */
export function allowanceRemark(
  runner: string,
  untaken: readonly number[],
  allowance: number,
  display: Display,
): Remark[] {
  if (untaken.length === 0) return [];
  const say = (mm: number) => formatLength(Math.abs(mm), display);
  const many = untaken.length > 1;
  return [
    {
      where: `runners/${runner}`,
      message: `${runner}: at joint${many ? 's' : ''} ${list(untaken.map((k) => String(k + 1)))} neither piece has straight to take what the weld ${allowance > 0 ? 'draws in' : 'opens'}, ${say(allowance)}${many ? ' each' : ''}: the tube comes out ${say(allowance * untaken.length)} ${allowance > 0 ? 'shorter' : 'longer'}; check its length before the last cut.`,
      stops: false,
    },
  ];
}

export function trimRemark(runner: string, end: 'start' | 'end', lost: number, display: Display): Remark[] {
  if (lost <= 0) return [];
  const say = (mm: number) => formatLength(mm, display);
  return [
    {
      where: `runners/${runner}`,
      message: `${runner}: its ${end} is the end of an arc, and the piece there has no leg for ${say(lost)} of the trim that the tooling asks for; it is sawn without, so fit it as it is, or give the runner a straight there.`,
      stops: false,
    },
  ];
}

/** Pieces that the saw turns to dust. */
export function kerfRemarks(runner: string, pieces: readonly Piece[], kerf: number, display: Display): Remark[] {
  const say = (mm: number) => formatLength(mm, display);
  return pieces.flatMap((piece) => {
    const length = piece.sawnIn + arcLength(piece) + piece.sawnOut;
    if (length > kerf) return [];
    const remedy =
      piece.kind === 'bend'
        ? `let the bend turn more than ${formatAngle(arcAngle(kerf, piece.radius), 2)}`
        : 'lay the tube with a longer straight there';
    return [
      {
        where: `runners/${runner}`,
        message: `${piece.id}: the piece is ${say(length)} long and the saw's kerf is ${say(kerf)}; saw with a thinner blade, or ${remedy}.`,
        stops: true,
      },
    ];
  });
}
