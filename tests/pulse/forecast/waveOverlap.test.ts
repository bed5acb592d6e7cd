/** What is said of the overlap, against traces whose means are known because they are made up. */
import { describe, expect, it } from 'vitest';
import { overlapMeans, overlapWords } from '../../../src/pulse/forecast/waveOverlap';
import { answerOf, ENGINE, traceOf } from './invented';

/** Within the overlap, −18 to 14, and a little beyond; another pressure elsewhere. */
const near = (angle: number) => angle > -20 && angle < 16;
const runOf = (name: string, port: number, flow: number, into: number) => ({
  name,
  engine: ENGINE,
  answer: answerOf(5000, null, [
    traceOf(1, {
      exhaustPort: (angle) => (near(angle) ? port : 110_000),
      exhaustFlow: (angle) => (near(angle) ? flow : 0.05),
      intakePort: () => 95_000,
      intakeFlow: () => into,
    }),
  ]),
});

describe('the overlap', () => {
  it('has the means of its traces', () => {
    const means = overlapMeans(runOf('a', 48_000, 0.0088, 0.009), 1)!;
    expect(means.exhaustPort).toBeCloseTo(48_000, 3);
    expect(means.exhaustFlow).toBeCloseTo(0.0088, 7);
    // 35 rows of 720.
    expect(means.offMean).toBeCloseTo(-62_000 * (1 - 35 / 720), 1);
    expect(overlapMeans(runOf('a', 48_000, 0.0088, 0.009), 2)).toBeNull();
  });

  it('is told by what was measured: what draws, what pushes back, what does neither', () => {
    expect(
      overlapWords([runOf('This header', 48_000, 0.0088, 0.009), runOf('Cast manifold', 153_000, 0.0058, -0.0051)], 1),
    ).toBe(
      'In the overlap “This header” holds 48 kPa at the exhaust port and draws: 9.0 g/s flow in through the intake valve, 8.8 g/s flow out through the exhaust valve. “Cast manifold” holds 153 kPa at the exhaust port and pushes back: 5.1 g/s flow back out through the intake valve, 5.8 g/s flow out through the exhaust valve.',
    );
    // A cylinder below both ports is filled from both.
    expect(overlapWords([runOf('a', 75_000, -0.0013, 0.01)], 1)).toContain(
      'draws: 10.0 g/s flow in through the intake valve, 1.3 g/s flow back in',
    );
    expect(overlapWords([runOf('a', 99_000, 0.002, 0.001)], 1)).toContain('exhaust port: 1.0 g/s flow in');
    expect(overlapWords([runOf('a', 99_000, -0.002, 0)], 1)).toContain('pushes back');
  });

  it('is not spoken of where there is none, or no trace', () => {
    const run = runOf('a', 48_000, 0.01, 0.01);
    const engine = { ...ENGINE, intakeValve: { ...ENGINE.intakeValve, lifts: [[20, 0] as const, [200, 0] as const] } };
    expect(overlapWords([{ ...run, engine }], 1)).toBe('');
    expect(overlapWords([{ ...run, answer: answerOf(5000, null) }], 1)).toBe('');
  });
});
