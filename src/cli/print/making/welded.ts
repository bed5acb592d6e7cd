/** One runner's pieces, each with how the next is turned on it. */
import type { Display } from '../../../../shared/design/types';
import type { WeldedTube } from '../../../shop/making/report';
import { type Align, columns } from '../columns';
import { measuresIn } from '../measures';

const ALIGN: readonly Align[] = ['left', ...Array<Align>(8).fill('right')];

export function weldedPart({ runner, pieces, joints, start, rounded }: WeldedTube, display?: Display): string {
  const { length, gap, unit } = measuresIn(display);
  const head = ['piece', 'straight', 'arc', 'radius', 'straight', 'then turn', 'round', 'in all', 'round'];
  const rows = pieces.map((piece, k) => {
    const joint = joints[k];
    return [
      piece.id,
      length(piece.sawnIn),
      ...(piece.kind === 'bend'
        ? [`${piece.angle.toFixed(2)}°`, length(piece.radius), length(piece.sawnOut)]
        : ['', '', '']),
      ...(joint
        ? [`${joint.turn.toFixed(2)}°`, length(joint.around), `${joint.total.toFixed(2)}°`, length(joint.totalAround)]
        : []),
    ];
  });
  return [
    `${runner}, welded up of ${pieces.length}: as sawn, ${unit}; turns clockwise looking along the tube away from its start`,
    `  The first piece's outside line stands ${start.turn.toFixed(2)}°, ${length(start.around)} round, from its start's up`,
    columns([head, ...rows], ALIGN),
    `  Cut to ${length(rounded.tape)} and ${rounded.dial}° its end is off by ${gap(rounded.position)} and ${rounded.angle.toFixed(2)}°, its length by ${gap(rounded.length)}`,
  ].join('\n');
}
