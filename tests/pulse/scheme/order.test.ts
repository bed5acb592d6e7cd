/** Accuracy: a smooth finite wave that runs one way, against its exact solution by characteristics. */
import { expect, test } from 'vitest';
import { stretch, tubeAfter } from '../rigs';
import { WAVE_TIME, waveBegins, waveOff } from '../smoothWave';

function errorWith(cells: number): number {
  const initial = waveBegins(cells).map((state, i) => stretch(i / cells, (i + 1) / cells, state));
  return waveOff(tubeAfter(WAVE_TIME, initial, { cells }).density);
}

test('a smooth wave is followed to second order', () => {
  const errors = [100, 200, 400].map(errorWith);
  const orders = [Math.log2(errors[0]! / errors[1]!), Math.log2(errors[1]! / errors[2]!)];
  expect(Math.min(...orders)).toBeGreaterThanOrEqual(1.9);
});
