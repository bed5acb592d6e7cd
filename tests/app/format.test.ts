/** Numbers as shown. */
import { describe, expect, it } from 'vitest';
import { angleNumber, lengthNumber, signedNumber } from '../../src/app/format';

describe('numbers', () => {
  it('keep their decimals, and an inch gets one more', () => {
    expect(lengthNumber(820, 'mm')).toBe('820.00');
    expect(lengthNumber(820, 'in')).toBe('32.283');
    expect(lengthNumber(25.4, 'in', 3)).toBe('1.0000');
  });

  it('carry a real minus and never a negative nothing', () => {
    expect(lengthNumber(-1.234, 'mm')).toBe('−1.23');
    expect(lengthNumber(-0.001, 'mm')).toBe('0.00');
    expect(angleNumber(-90)).toBe('−90.0');
    expect(angleNumber(-0.01)).toBe('0.0');
  });

  it('show their sign where it matters', () => {
    expect(signedNumber(2.41, 'mm')).toBe('+2.41');
    expect(signedNumber(-2.41, 'mm')).toBe('−2.41');
    expect(signedNumber(0.0001, 'mm')).toBe('0.00');
  });
});
