/** Layouts made up for tests of what gathers and shows them: no search, only numbers that rank as asked. */
import type { CheckReport, Layout, Problem } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { designWith } from '../designs';

const report = (problems: readonly Problem[]): CheckReport => ({
  ok: problems.length === 0,
  problems,
  runners: [],
  groups: [],
  clearance: { tubeToTube: null, surroundings: null, mergeBodies: null },
});

/** The one runner of `designWith`, gone round by a corner at `x`: farther than 40 mm apart is another way. */
export const goingBy = (x: number): Design =>
  designWith([
    [0, 0, 0],
    [0, 200, 0],
    [x, 300, -100],
    [0, 400, -300],
  ]);

/** @param x tells ways apart; @param angle ranks them, the less the better */
export const layout = (x: number, angle: number, broken = 0): Layout => ({
  design: goingBy(x),
  report: report(
    Array.from({ length: broken }, (_, k) => ({
      rule: 'surroundings',
      where: `runners/r1/${k}`,
      found: 1,
      allowed: 2,
      message: `Runner r1 is ${k + 1} mm too close.`,
    })),
  ),
  bends: 2,
  angle,
  length: 800,
  margin: 5,
});
