/** The text in a field: kept until accepted or given up, and nothing applied that was not typed. */
import { describe, expect, it, vi } from 'vitest';
import { settled, typed, UNTOUCHED } from '../../../src/app/inspect/fields/draft';

describe('a draft', () => {
  it('applies nothing where nothing was typed, or the text came back to what it was', () => {
    const accept = vi.fn(() => null);
    expect(settled(UNTOUCHED, '42.4', accept)).toBe(UNTOUCHED);
    expect(settled(typed(UNTOUCHED, ' 42.4 '), '42.4', accept)).toBe(UNTOUCHED);
    expect(accept).not.toHaveBeenCalled();
  });

  it('gives the text to be accepted once, and shows the value again', () => {
    const accept = vi.fn(() => null);
    const after = settled(typed(UNTOUCHED, '44.5'), '42.4', accept);
    expect(accept).toHaveBeenCalledExactlyOnceWith('44.5');
    expect(settled(after, '44.5', accept)).toBe(UNTOUCHED);
    expect(accept).toHaveBeenCalledTimes(1);
  });

  it('keeps what was refused, with why, through further typing', () => {
    const refused = settled(typed(UNTOUCHED, 'wide'), '42.4', () => 'Not a length.');
    expect(refused).toEqual({ text: 'wide', problem: 'Not a length.' });
    expect(typed(refused, 'wider')).toEqual({ text: 'wider', problem: 'Not a length.' });
    expect(settled(typed(refused, '43'), '42.4', () => null)).toEqual(UNTOUCHED);
  });
});
