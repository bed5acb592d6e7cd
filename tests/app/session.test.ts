/** A pin marks the place of the problem being looked at, and nothing else. */
import { expect, test } from 'vitest';
import { useSession } from '../../src/app/session';

test('selecting something else takes the pin away; a mark set after a selection stays', () => {
  const { select, setMark } = useSession.getState();
  select({ kind: 'runner', id: 'r1' });
  setMark([1, 2, 3]);
  expect(useSession.getState().mark).toEqual([1, 2, 3]);
  select({ kind: 'runner', id: 'r2' });
  expect(useSession.getState().mark).toBeNull();
});
