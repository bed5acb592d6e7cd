/** A LAYOUT object of an R2000 file: the sheet that a block record is shown on. Nothing is laid out on paper; readers want it. */
import { type Group, point, real, text, whole } from './groups';
import type { Extents } from './write';

/** @param order 0 for the model, 1 for the sheet of paper */
export function layout(
  name: string,
  order: number,
  own: string,
  owner: string,
  record: string,
  { min, max }: Extents,
): Group[] {
  const zeros = (...codes: number[]): Group[] => codes.map((code) => real(code, 0));
  return [
    text(0, 'LAYOUT'),
    text(5, own),
    text(330, owner),
    text(100, 'AcDbPlotSettings'),
    text(1, ''),
    text(2, 'none_device'),
    text(4, ''),
    text(6, ''),
    ...zeros(40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141),
    real(142, 1),
    real(143, 1),
    whole(70, order === 0 ? MODEL_PLOT : 0),
    whole(72, 1),
    whole(73, 0),
    whole(74, 0),
    text(7, ''),
    whole(75, 16),
    real(147, 1),
    ...zeros(148, 149),
    text(100, 'AcDbLayout'),
    text(1, name),
    whole(70, 1),
    whole(71, order),
    ...point(10, min[0], min[1]),
    ...point(11, max[0], max[1]),
    ...point(12, 0, 0, 0),
    ...point(14, min[0], min[1], 0),
    ...point(15, max[0], max[1], 0),
    real(146, 0),
    ...point(13, 0, 0, 0),
    ...point(16, 1, 0, 0),
    ...point(17, 0, 1, 0),
    whole(76, 0),
    text(330, record),
  ];
}

/** The flag of the model's own sheet. */
const MODEL_PLOT = 1024;
