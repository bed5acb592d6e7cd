/** Waves play only where some pipe is a drawn tube. */
import { expect, it } from 'vitest';
import { hasTubes } from '../../../../src/app/forecast/motion/tubes';
import { fourIntoOne } from '../../../pulse/forecast/invented';

it('a laid-out header has tubes to play on, a sketch has none', () => {
  const path = fourIntoOne();
  const sketch = { ...path, pipes: path.pipes.map((pipe) => ({ ...pipe, part: null })) };
  expect([hasTubes({ path }), hasTubes({ path: sketch })]).toEqual([true, false]);
});
