import { describe, expect, it } from 'vitest';
import { emptyRun, type Run, withTold } from '../../../src/app/forecast/runs';
import { unevenWords } from '../../../src/app/forecast/unevenCost';
import { answerOf, subject, torqueAt } from './fixtures';

const SPEEDS = [3000, 4000, 5000];
const run = (kind: 'equal' | 'uneven', lost: number): Run =>
  SPEEDS.reduce(
    (so, rpm, i) => withTold(so, i, answerOf(rpm, { torque: torqueAt(rpm) - lost })),
    emptyRun(subject(kind), SPEEDS),
  );

describe('what a millimetre of unequal lengths costs', () => {
  it('is the mean loss over the millimetres', () => {
    expect(unevenWords(run('equal', 0), run('uneven', 2), 'mm')).toMatch(/^Each millimetre .* costs 0\.040 N\sm/);
    expect(unevenWords(run('equal', 2), run('uneven', 0), 'mm')).toMatch(/gains 0\.040/);
  });

  it('is not told where settling leaves as much open', () => {
    expect(unevenWords(run('equal', 0), run('uneven', 0.1), 'mm')).toMatch(/no more than settling leaves open, 0\.2 /);
  });

  it('waits for every speed', () => {
    expect(unevenWords(run('equal', 0), emptyRun(subject('uneven'), SPEEDS), 'mm')).toBeNull();
  });
});
