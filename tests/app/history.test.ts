/** Undo and redo over the document store: whole edits only, gestures as one step, source data only. No DOM. */
import { beforeEach, describe, expect, it } from 'vitest';
import { createDocumentStore, isDirty } from '../../src/app/document';
import { createHistory } from '../../src/app/history';
import { titled } from './designs';

let documents: ReturnType<typeof createDocumentStore>;
let history: ReturnType<typeof createHistory>;
const title = () => documents.store.getState().design?.title;
const labels = () => history.store.getState().past.map((s) => s.label);

beforeEach(() => {
  documents = createDocumentStore();
  history = createHistory(documents);
  documents.open(titled('a'), 'a.evenrun.json');
});

describe('history', () => {
  it('takes edits back and does them again, in order', () => {
    documents.apply(titled('b'), 'to b');
    documents.apply(titled('c'), 'to c');
    expect(labels()).toEqual(['to b', 'to c']);
    expect(history.undo()).toBe(true);
    expect(title()).toBe('b');
    expect(history.undo()).toBe(true);
    expect(title()).toBe('a');
    expect(history.undo()).toBe(false);
    expect(history.redo()).toBe(true);
    expect(history.redo()).toBe(true);
    expect(title()).toBe('c');
    expect(history.redo()).toBe(false);
    expect(labels()).toEqual(['to b', 'to c']);
  });

  it('gives back the very same design, so that nothing derived needs working out again', () => {
    const before = documents.store.getState().design;
    documents.apply(titled('b'), 'to b');
    history.undo();
    expect(documents.store.getState().design).toBe(before);
  });

  it('forgets what was undone once something else is edited', () => {
    documents.apply(titled('b'), 'to b');
    history.undo();
    documents.apply(titled('c'), 'to c');
    expect(history.redo()).toBe(false);
    expect(labels()).toEqual(['to c']);
  });

  it('forgets everything when another file is opened', () => {
    documents.apply(titled('b'), 'to b');
    documents.open(titled('z'), 'z.evenrun.json');
    expect(history.undo()).toBe(false);
    expect(title()).toBe('z');
  });

  it('ignores an edit that changes nothing', () => {
    documents.apply(documents.store.getState().settled!, 'nothing');
    expect(labels()).toEqual([]);
  });
});

describe('a jump', () => {
  beforeEach(() => {
    for (const t of ['b', 'c', 'd']) documents.apply(titled(t), `to ${t}`);
  });
  const future = () => history.store.getState().future.map((s) => s.label);

  it('reaches any step, and every other stays in order', () => {
    expect(history.jump(1)).toBe(true);
    expect([title(), labels(), future()]).toEqual(['b', ['to b'], ['to c', 'to d']]);
    expect(history.jump(3)).toBe(true);
    expect([title(), labels(), future()]).toEqual(['d', ['to b', 'to c', 'to d'], []]);
    expect(history.jump(0)).toBe(true);
    expect([title(), labels(), future()]).toEqual(['a', [], ['to b', 'to c', 'to d']]);
  });

  it('goes nowhere outside the list or to where we are', () => {
    for (const k of [-1, 3, 4, 0.5, Number.NaN]) expect(history.jump(k)).toBe(false);
    expect([title(), labels(), future()]).toEqual(['d', ['to b', 'to c', 'to d'], []]);
  });

  it('keeps the time of each step', () => {
    let clock = 100;
    const timed = createHistory(documents, () => clock++);
    documents.apply(titled('e'), 'to e');
    documents.apply(titled('f'), 'to f');
    timed.jump(0);
    expect(timed.store.getState().future.map((s) => s.at)).toEqual([100, 101]);
    timed.stop();
  });
});

describe('several designs', () => {
  it('each find their own steps again when they are returned to', () => {
    documents.apply(titled('b'), 'to b');
    documents.apply(titled('c'), 'to c');
    history.undo();
    const { id, settled } = documents.store.getState();
    documents.open(titled('z'), 'z.evenrun.json');
    documents.apply(titled('y'), 'to y');
    documents.open(settled!, 'a.evenrun.json', new Map(), { id });
    expect(labels()).toEqual(['to b']);
    expect(history.redo()).toBe(true);
    expect(title()).toBe('c');
  });

  it('begin anew where a design is another than it was left', () => {
    documents.apply(titled('b'), 'to b');
    const { id } = documents.store.getState();
    documents.open(titled('z'), 'z.evenrun.json');
    documents.open(titled('changed elsewhere'), 'a.evenrun.json', new Map(), { id });
    expect(history.undo()).toBe(false);
  });
});

describe('a design that another tab works on', () => {
  it('is not changed here by anything, and counts what was refused', () => {
    documents.apply(titled('b'), 'to b');
    const held = documents.mark()!;
    held.write(titled('half made'));
    documents.setReadOnly(true);
    expect(title()).toBe('b');
    expect(held.commit('late')).toBe(false);
    expect(documents.apply(titled('c'), 'to c')).toBe(false);
    expect(documents.mark()).toBeNull();
    expect(history.undo()).toBe(false);
    expect(history.jump(0)).toBe(false);
    expect(documents.store.getState().refusals).toBe(4);
    expect([title(), labels()]).toEqual(['b', ['to b']]);
    documents.setReadOnly(false);
    expect(history.undo()).toBe(true);
    expect(title()).toBe('a');
  });
});

describe('a gesture', () => {
  it('is one step however often it writes', () => {
    const gesture = documents.mark()!;
    for (const t of ['b', 'c', 'd']) gesture.write(titled(t));
    expect(title()).toBe('d');
    expect(labels()).toEqual([]);
    expect(documents.store.getState().settled?.title).toBe('a');
    gesture.commit('drag');
    expect(labels()).toEqual(['drag']);
    history.undo();
    expect(title()).toBe('a');
  });

  it('leaves no trace when it bails, or commits without having written', () => {
    const before = documents.store.getState().settled;
    const given = documents.mark()!;
    given.write(titled('b'));
    given.bail();
    expect(documents.store.getState().design).toBe(before);
    documents.mark()!.commit('nothing');
    expect(labels()).toEqual([]);
    expect(documents.store.getState().gesture).toBeNull();
  });

  it('cannot write once it has ended', () => {
    const gesture = documents.mark()!;
    gesture.commit('done');
    expect(gesture.write(titled('late'))).toBe(false);
    expect(gesture.commit('late')).toBe(false);
    expect(title()).toBe('a');
  });

  it('is all that undo and redo give up while it lasts', () => {
    documents.apply(titled('b'), 'to b');
    for (const step of [history.undo, history.redo]) {
      documents.mark()!.write(titled('half made'));
      expect(step()).toBe(true);
      expect([title(), labels()]).toEqual(['b', ['to b']]);
    }
    expect(documents.bail()).toBe(false);
  });

  it('that ends where it began leaves no step, though its objects are new', () => {
    const gesture = documents.mark()!;
    gesture.write(titled('b'));
    gesture.write(titled('a'));
    expect(gesture.commit('there and back')).toBe(true);
    expect(labels()).toEqual([]);
    expect(documents.store.getState().design).toBe(gesture.from);
  });

  it('gives way to an edit, to undo, to another gesture and to another file', () => {
    documents.apply(titled('b'), 'to b');
    const enders = [
      () => documents.apply(titled('e'), 'to e'),
      () => history.undo(),
      () => documents.mark()!.bail(),
      () => documents.open(titled('z'), 'z.evenrun.json'),
    ];
    for (const end of enders) {
      const gesture = documents.mark()!;
      gesture.write(titled('half made'));
      end();
      expect(title()).not.toBe('half made');
      expect(gesture.commit('late')).toBe(false);
      expect(labels()).not.toContain('late');
    }
  });
});

describe('the saved mark', () => {
  it('follows edits, undo and saving', () => {
    const dirty = () => isDirty(documents.store.getState());
    expect(dirty()).toBe(false);
    documents.apply(titled('b'), 'to b');
    expect(dirty()).toBe(true);
    history.undo();
    expect(dirty()).toBe(false);
    history.redo();
    documents.markSaved(documents.store.getState().settled!, 'b.evenrun.json');
    expect(dirty()).toBe(false);
    expect(documents.store.getState().fileName).toBe('b.evenrun.json');
  });
});
