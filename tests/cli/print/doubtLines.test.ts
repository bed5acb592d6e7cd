/** Which speeds a doubt is of. */
import { expect, test } from 'vitest';
import { doubtLines } from '../../../src/cli/print/pulse/basis';
import type { SpeedAnswer } from '../../../src/pulse/forecast/types';

/** Nothing else of an answer is asked for here. */
const at = (rpm: number, ...kinds: ('coarse' | 'sonic')[]): SpeedAnswer =>
  ({ rpm, torque: 100, doubts: kinds.map((kind) => ({ kind, message: `it is ${kind}` })) }) as unknown as SpeedAnswer;

test('of one speed alone that speed is named; of several those that have it, or all', () => {
  expect(doubtLines([at(3000, 'coarse')])).toEqual(['Doubtful at 3000 rpm: it is coarse']);
  expect(doubtLines([at(3000, 'coarse'), at(4000, 'coarse', 'sonic')])).toEqual([
    'Doubtful at all speeds: it is coarse',
    'Doubtful at 4000 rpm: it is sonic',
  ]);
  // Both curves of a comparison: the same speed twice is one.
  expect(doubtLines([at(3000, 'coarse'), at(3000, 'coarse')])).toEqual(['Doubtful at 3000 rpm: it is coarse']);
});
