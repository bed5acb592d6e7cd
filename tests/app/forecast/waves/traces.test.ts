/** What the face of the valves reads off traces: values between rows, means, and ranges that leave the blow-down out. */
import { describe, expect, it } from 'vitest';
import { flowRange, highestLift, pressureRange } from '../../../../src/app/forecast/waves/traces';
import { meanOver, valueAt } from '../../../../src/pulse/forecast/waveOverlap';
import { traceOf } from '../../../pulse/forecast/invented';

const VIEW = { from: -250, to: 260 };
const trace = traceOf(1, {
  pressure: (angle) => (angle < -150 ? 6e5 : 1e5),
  exhaustPort: (angle) => 1e5 + 100 * angle,
  intakePort: () => 95_000,
  exhaustFlow: (angle) => (angle > -10 && angle < 10 ? -0.004 : 0.05),
  exhaustLift: () => 0.009,
});

describe('a trace', () => {
  it('is linear between its rows and holds beyond them', () => {
    expect(valueAt(trace, trace.exhaustPort, -13.5)).toBeCloseTo(98_650, 2);
    expect(valueAt(trace, trace.exhaustPort, 400)).toBeCloseTo(136_000, 2);
  });

  it('has the mean of a straight line at its middle, whatever the ends', () => {
    expect(meanOver(trace, trace.exhaustPort, -18.4, 14.2)).toBeCloseTo(1e5 + 100 * -2.1, 1);
    expect(meanOver(trace, trace.intakePort, -360, 360)).toBeCloseTo(95_000, 3);
  });

  it('is drawn on a scale of the ports and the emptied cylinder', () => {
    const [low, high] = pressureRange([trace], VIEW);
    expect(low).toBeLessThanOrEqual(75);
    expect(high).toBeGreaterThanOrEqual(126);
    expect(high).toBeLessThan(200);
    expect(pressureRange([], VIEW)).toEqual([90, 110]);
  });

  it('shows flow the wrong way below zero', () => {
    const [least, most] = flowRange([trace], VIEW);
    expect(least).toBeLessThanOrEqual(-4);
    expect(most).toBeGreaterThanOrEqual(50);
    expect(highestLift([trace])).toBeCloseTo(9, 5);
  });
});
