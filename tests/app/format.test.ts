/** Numbers as shown. */
import { describe, expect, it } from 'vitest';
import { fixed, formatLength, formatSigned } from '../../src/app/format';

describe('numbers', () => {
  it('keep their decimals, and an inch gets one more', () => {
    expect(formatLength(820, 'mm')).toBe('820.00');
    expect(formatLength(820, 'in')).toBe('32.283');
    expect(formatLength(25.4, 'in', 3)).toBe('1.0000');
  });

  it('carry a real minus and never a negative nothing', () => {
    expect(fixed(-1.234, 2)).toBe('−1.23');
    expect(fixed(-0.001, 2)).toBe('0.00');
  });

  it('show their sign where it matters', () => {
    expect(formatSigned(2.41, 'mm')).toBe('+2.41');
    expect(formatSigned(-2.41, 'mm')).toBe('−2.41');
    expect(formatSigned(0.0001, 'mm')).toBe('0.00');
  });
});
