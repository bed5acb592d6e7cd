/** One tube's rows as the bender is set, from the end that can be clamped. */
import type { Display } from '../../../../shared/design/types';
import type { BentTube } from '../../../shop/making/report';
import { type Align, columns } from '../columns';
import { measuresIn } from '../measures';

const ALIGN: readonly Align[] = [...Array<Align>(9).fill('right'), 'left'];

export function bentPart(tube: BentTube, display?: Display): string {
  const { length, gap, unit } = measuresIn(display);
  const { fromStart, fromEnd } = tube.clampable;
  const first = fromStart || !fromEnd;
  const head = ['length', 'turned', 'angle', 'feed', 'turn', 'dial', 'set', 'mark', 'grip', ''];
  const rows = (first ? tube.fromStart : tube.fromEnd).map((row) =>
    row.angle === 0
      ? [length(row.length)]
      : [
          length(row.length),
          `${row.rotation.toFixed(2)}°`,
          `${row.angle.toFixed(2)}°`,
          length(row.feed),
          `${row.turn.toFixed(2)}°`,
          `${row.dial.toFixed(2)}°`,
          `${row.set.toFixed(2)}°`,
          length(row.mark),
          length(row.grip),
          row.clamps ? '' : 'cannot be clamped',
        ],
  );
  const ends = fromStart && fromEnd ? 'from either end' : first ? 'from its start only' : 'from its other end only';
  const can = fromStart || fromEnd ? `bent ${ends}` : 'it cannot be clamped from either end';
  const { rounded } = tube;
  const trims = [
    tube.trimStart > 0 ? `${length(tube.trimStart)} at its start` : '',
    tube.trimEnd > 0 ? `${length(tube.trimEnd)} at its end` : '',
  ].filter(Boolean);
  const trim = trims.length > 0 ? [`  Once bent trim off ${trims.join(' and ')}`] : [];
  const isFirst = tube.from <= 0;
  const bends = tube.fromStart.some(({ angle }) => angle > 0);
  const fit = bends
    ? [
        isFirst
          ? `  Its first bend leads off ${tube.clocking.toFixed(2)}° from the port's or collector's up, clockwise looking along the tube away from its start`
          : `  It is turned ${tube.clocking.toFixed(2)}° on the tube before it, outside line to outside line, clockwise looking along the tube away from its start`,
      ]
    : [];
  const split =
    tube.offered.length > 0 ? [`  Split before ${bendsIn(tube.offered)}, and every bend can be clamped`] : [];
  return [
    `${tube.id}, cut ${length(tube.cutLength)} ${unit}, ${can}; rows from its ${first ? 'start' : 'other end'}`,
    columns([head, ...rows], ALIGN),
    ...trim,
    ...fit,
    ...split,
    `  Set to ${length(rounded.tape)} and ${rounded.dial}° its end is off by ${gap(rounded.position)} and ${rounded.angle.toFixed(2)}°, its length by ${gap(rounded.length)}`,
  ].join('\n');
}

const bendsIn = (bends: readonly number[]): string => `bend ${bends.join(' and bend ')}`;
