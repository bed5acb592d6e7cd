/** Overall width and height with extension lines, dimension lines and slim arrows, figures above and turned as on a drawing. mm. */
import type { Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';
import type { Box, Item } from '../../formats/drawing/drawing';
import { heightOf, widthOf } from '../../formats/drawing/drawing';
import { arrowHead, line, text } from '../../formats/drawing/items';
import { THIN, TYPE } from '../sheet/style';
import type { Place } from './plate';

const OFF = 12;
const HEAD = 3;

/** @param box of the plate, as `plateBox` gives it */
export function overallDimensions(box: Box, { at }: Place, display: Display): Item[] {
  const [left, top] = at([box.left, -box.top]);
  const [right, bottom] = at([box.right, -box.bottom]);
  const figure = (mm: number): string => lengthParts(mm, display).number;
  const [y, x] = [bottom + OFF, left - OFF];
  return [
    line([left, bottom + 1], [left, y + 2], THIN),
    line([right, bottom + 1], [right, y + 2], THIN),
    line([left, y], [right, y], THIN),
    arrowHead([left, y], Math.PI, HEAD),
    arrowHead([right, y], 0, HEAD),
    text(figure(widthOf(box)), [(left + right) / 2, y - 1.2], TYPE.number, { anchor: 'middle' }),
    line([left - 1, top], [x - 2, top], THIN),
    line([left - 1, bottom], [x - 2, bottom], THIN),
    line([x, top], [x, bottom], THIN),
    arrowHead([x, top], -Math.PI / 2, HEAD),
    arrowHead([x, bottom], Math.PI / 2, HEAD),
    text(figure(heightOf(box)), [x - 1.2, (top + bottom) / 2], TYPE.number, { anchor: 'middle', turn: 90 }),
  ];
}
