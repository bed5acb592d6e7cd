/** Accuracy: four shock tubes with exact solutions at 200 cells; their data and bounds stand in `tubes.ts`. */
import { expect, test } from 'vitest';
import { stretch, tubeAfter } from '../rigs';
import { densityOff, TUBES, type Tube } from '../tubes';

function densityError(tube: Tube, cells: number, courant: number): number {
  const { left, right, diaphragm, time } = tube;
  const initial = [stretch(0, diaphragm, left), stretch(diaphragm, 1, right)];
  return densityOff(tube, tubeAfter(time, initial, { cells, courant }).density);
}

test.each(TUBES)('$name', (tube) => {
  expect(densityError(tube, 200, 0.8)).toBeLessThanOrEqual(tube.most);
});

test.each(TUBES)('$name, at half the step', (tube) => {
  expect(densityError(tube, 200, 0.4)).toBeLessThanOrEqual(tube.most * 1.1);
});

test.each(TUBES)('$name: twice the cells, less error', (tube) => {
  expect(densityError(tube, 400, 0.8)).toBeLessThan(0.75 * densityError(tube, 200, 0.8));
});
