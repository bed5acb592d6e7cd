/**
 * A U-bend stored as two points, then two more bends. Findings used to count the stored points, so that the straight
 * after the U was "between bends 2 and 3" where the bend table, which has the U as one row, calls them 1 and 2.
 */
import { expect, test } from 'vitest';
import { bendTable, centerline } from '../../geometry';
import { placeOnRunner } from '../../geometry/check/words';

// 90° + 90° without a straight, then 45° and back.
const line = centerline(
  [
    [0, 0, 0],
    [0, 100, 0],
    [0, 100, -120],
    [0, 0, -120],
    [0, -100, -220],
    [0, -200, -220],
  ],
  [60, 60, 60, 60],
);

test('places are numbered as the rows of the bend table are', () => {
  const { rows } = bendTable(line, [0, 0, 1]);
  let station = 0;
  for (const [i, row] of rows.entries()) {
    expect(placeOnRunner(line, station + row.length / 2)).toBe(`straight ${i + 1}`);
    station += row.length;
    if (row.angle === 0) continue;
    const arc = (row.radius * row.angle * Math.PI) / 180;
    for (const share of [0.1, 0.5, 0.9]) expect(placeOnRunner(line, station + share * arc)).toBe(`bend ${i + 1}`);
    station += arc;
  }
  expect(rows.map((r) => Math.round(r.angle))).toEqual([180, 45, 45, 0]);
});
