/** How fine places are searched for: as asked within, as before afterwards, whatever happens. */
import { expect, test } from 'vitest';
import { resolution, searchedTo } from '../../../geometry/layout/linkSearch';

test('coarser within, as fine as before afterwards, even where something fails', () => {
  const before = resolution.stray;
  expect(searchedTo(0.3, () => searchedTo(0.5, () => resolution.stray) + resolution.stray)).toBe(0.8);
  expect(resolution.stray).toBe(before);
  expect(() =>
    searchedTo(0.3, () => {
      throw new Error('no');
    }),
  ).toThrow('no');
  expect(resolution.stray).toBe(before);
});
