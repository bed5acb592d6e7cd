/** The paper of this browser: kept, read back, and whatever else lies in its place counts for nothing. */
import { afterEach, expect, test, vi } from 'vitest';
import { choosePaper, remembered, USUAL } from '../../src/app/paperChoice';

const store = new Map<string, string>();
vi.stubGlobal('localStorage', {
  getItem: (key: string) => store.get(key) ?? null,
  setItem: (key: string, value: string) => store.set(key, value),
});
afterEach(() => store.clear());

test('nothing kept: as usual', () => expect(remembered()).toEqual(USUAL));

test('what is chosen is there again', () => {
  choosePaper({ paper: 'letter', paperThickness: 0.2 });
  choosePaper({ stations: 8 });
  expect(remembered()).toEqual({ paper: 'letter', paperThickness: 0.2, stations: 8 });
});

test.each(['null', '[', '3', '{"paper":"a3","paperThickness":9,"stations":12}', '{"paperThickness":"0.1"}'])(
  '%s is none',
  (text) => {
    store.set('evenrun.paper', text);
    expect(remembered()).toEqual(USUAL);
  },
);

test('one part that cannot be leaves the others', () => {
  store.set('evenrun.paper', '{"paper":"letter","paperThickness":-1,"stations":8}');
  expect(remembered()).toEqual({ ...USUAL, paper: 'letter', stations: 8 });
});
