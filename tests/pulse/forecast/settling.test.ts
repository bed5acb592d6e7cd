import { describe, expect, it } from 'vitest';
import { settling } from '../../../src/pulse/forecast/settling';

function told(values: readonly number[]) {
  const torque = settling();
  for (const value of values) torque.add(value);
  return torque;
}

describe('whether torque still moves', () => {
  it('is not known of one cycle, nor what is ahead of two', () => {
    expect(told([100]).drift).toBe(Infinity);
    expect(told([100, 101]).ahead).toBe(Infinity);
  });

  it('counts what a change that shrinks evenly has ahead of it', () => {
    // 100 − 0.5^n: each change is half the one before, so as much is ahead as the last change was.
    const torque = told(Array.from({ length: 8 }, (_, n) => 100 - 0.5 ** n));
    const left = 0.5 ** 7 / (100 - 0.5 ** 7);
    expect(torque.ahead).toBeCloseTo(left, 5);
  });

  it('does not take a slow drift for rest: small steps that hardly shrink', () => {
    const torque = told(Array.from({ length: 30 }, (_, n) => 100 + 10 * (1 - 0.95 ** n)));
    // The last step is 0.1 % or so, all that is left nearly 2 %.
    expect(torque.drift).toBeLessThan(2e-3);
    expect(torque.ahead).toBeGreaterThan(1e-2);
  });

  it('does not take swings that stay for rest', () => {
    const torque = told(Array.from({ length: 20 }, (_, n) => 100 + (n % 2)));
    expect(torque.ahead).toBeGreaterThan(5e-2);
  });

  it('is at rest once nothing changes', () => {
    expect(told([100, 100, 100]).ahead).toBe(0);
  });
});
