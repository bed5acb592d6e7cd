/** Over the whole registry: nothing claims another's key, name or id; and finding by words and keys does what it says. */
import { describe, expect, it } from 'vitest';
import { keyCaps, matches, parseKeys, sameKeys } from '../../../src/app/actions/list/keys';
import { nextIn } from '../../../src/app/actions/list/pickActions';
import { actionFor, allActions } from '../../../src/app/actions/list/registry';
import { byGroup, searchActions } from '../../../src/app/actions/list/search';

const repeated = (list: readonly string[]) => list.filter((x, i) => list.indexOf(x) !== i);
const press = (key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>> = {}) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
});

describe('the registry', () => {
  it('has no two actions with one key', () => {
    const claimed = allActions.flatMap((a) => (a.keys ?? []).map(sameKeys));
    expect(claimed.length).toBeGreaterThan(20);
    expect(repeated(claimed)).toEqual([]);
  });

  it('has no two actions with one name or id, and none without a heading', () => {
    expect(repeated(allActions.map((a) => a.id))).toEqual([]);
    expect(repeated(allActions.map((a) => a.name.toLowerCase()))).toEqual([]);
    expect(allActions.filter((a) => a.group.trim() === '' || a.name.trim() === '')).toEqual([]);
  });

  it('tells why each action that may be unready is so', () => {
    expect(allActions.filter((a) => a.ready && !a.why).map((a) => a.id)).toEqual([]);
  });

  it('leaves the keys that move the focus and press buttons alone', () => {
    const kept = ['tab', 'enter', ' ', 'escape', 'arrowleft', 'arrowright', 'arrowup', 'arrowdown'];
    const claimed = allActions.flatMap((a) => (a.keys ?? []).map(parseKeys)).filter((c) => !c.mod && !c.alt);
    expect(claimed.filter((c) => kept.includes(c.key))).toEqual([]);
  });
});

describe('keys', () => {
  it('Mod is Ctrl or Command; letters mind Shift, signs do not', () => {
    const undo = parseKeys('Mod+Z');
    expect(matches(undo, press('z', { ctrlKey: true }))).toBe(true);
    expect(matches(undo, press('z', { metaKey: true }))).toBe(true);
    expect(matches(undo, press('Z', { ctrlKey: true, shiftKey: true }))).toBe(false);
    expect(matches(undo, press('z'))).toBe(false);
    expect(matches(parseKeys('?'), press('?', { shiftKey: true }))).toBe(true);
    expect(matches(parseKeys('?'), press('?'))).toBe(true);
    expect(matches(parseKeys('+'), press('+', { shiftKey: true }))).toBe(true);
  });

  it('refuses what is not a chord, draws the caps of what is', () => {
    expect(() => parseKeys('Hyper+Z')).toThrow(/Hyper/);
    expect(keyCaps('Mod+Shift+Z', false)).toEqual(['Ctrl', 'Shift', 'Z']);
    expect(keyCaps('Mod+K', true)).toEqual(['⌘', 'K']);
    expect(sameKeys('Shift+Mod+z')).toBe(sameKeys('Mod+Shift+Z'));
  });

  it('finds the action, and of two the one that can be done', () => {
    expect(actionFor(press('z', { ctrlKey: true }))?.id).toBe('history.undo');
    expect(actionFor(press('Z', { metaKey: true, shiftKey: true }))?.id).toBe('history.redo');
    expect(actionFor(press('q'))).toBeNull();
    const two = [
      { id: 'a', name: 'A', group: 'G', keys: ['F'], ready: () => false, run: () => {} },
      { id: 'b', name: 'B', group: 'G', keys: ['F'], run: () => {} },
    ];
    expect(actionFor(press('f'), two)?.id).toBe('b');
  });
});

describe('searching', () => {
  const first = (typed: string) => searchActions(allActions, typed)[0]?.id;

  it('by the beginnings of words of the name, of other words, of the heading', () => {
    expect(first('bal')).toBe('work.balance');
    expect(first('EXPORT bend')).toBe('work.shop');
    expect(first('prev ben')).toBe('pick.previous-bend');
    expect(first('screenshot')).toBe('picture.save');
    expect(searchActions(allActions, 'measure').map((a) => a.id)).toContain('measure.clear');
  });

  it('finds nothing where one word fits nowhere, and all where none is typed', () => {
    expect(searchActions(allActions, 'balance zebra')).toEqual([]);
    expect(searchActions(allActions, '  ')).toEqual(allActions);
    expect(byGroup(allActions).flatMap((g) => g.actions)).toHaveLength(allActions.length);
  });
});

it('next and previous run round, from either end where nothing is picked', () => {
  expect([nextIn(4, -1, 1), nextIn(4, 3, 1), nextIn(4, 0, -1), nextIn(4, -1, -1)]).toEqual([0, 0, 3, 3]);
});
