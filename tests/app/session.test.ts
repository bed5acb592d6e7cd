/** What is picked, pointed at, marked and told, and what of it another design takes away; a pin marks the place of the problem being looked at, and nothing else. */
import { expect, test } from 'vitest';
import { documents } from '../../src/app/document';
import { dismiss, tell, tellFailure, useNotice } from '../../src/app/notices';
import { useSession } from '../../src/app/session';
import { titled } from './designs';

test('selecting something else takes the pin away; a mark set after a selection stays', () => {
  const { select, setMark } = useSession.getState();
  select({ kind: 'runner', id: 'r1' });
  setMark([1, 2, 3]);
  expect(useSession.getState().mark).toEqual([1, 2, 3]);
  select({ kind: 'runner', id: 'r2' });
  expect(useSession.getState().mark).toBeNull();
});

test('another design coming up lets go of all of it', () => {
  const { selectAll, hover, setMark } = useSession.getState();
  const [r1, r2] = [
    { kind: 'runner', id: 'r1' },
    { kind: 'runner', id: 'r2' },
  ] as const;
  selectAll([r1, r2]);
  hover(r1);
  setMark([1, 2, 3]);
  expect(useSession.getState()).toMatchObject({ selected: r2, selection: [r1, r2], hovered: r1, mark: [1, 2, 3] });
  documents.open(titled('another'), 'another.evenrun.json');
  expect(useSession.getState()).toMatchObject({ selected: null, selection: [], hovered: null, mark: null });
});

test('what went well with one design is not told beside another; what failed is', () => {
  documents.open(titled('one'), 'one.evenrun.json');
  tell('Saved as one.evenrun.json');
  documents.open(titled('two'), 'two.evenrun.json');
  expect(useNotice.getState().notice).toBeNull();
  tellFailure('It did not open');
  documents.open(titled('three'), 'three.evenrun.json');
  expect(useNotice.getState().notice?.title).toBe('It did not open');
  dismiss();
});
