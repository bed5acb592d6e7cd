/**
 * A thousand random gestures and more on the real stores, against a plain list of written designs kept beside them: no
 * step lost, none too many, and the document equal to the byte wherever undo, redo and jumps lead.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { writeDesign } from '../../shared/design/write';
import { createDocumentStore } from '../../src/app/document';
import { createHistory, LONGEST_PAST } from '../../src/app/history';
import { same } from '../../src/app/sameDesign';
import { type Random, random } from '../random';
import { randomEdit } from './randomEdits';

const EXAMPLES = join(import.meta.dirname, '../../public/examples');
const example = (file: string) => parseDesign(readFileSync(join(EXAMPLES, file), 'utf8'));

/** What history ought to be, as text, by a path of its own: the states in order and where we stand among them. */
class Ledger {
  states: string[];
  at = 0;
  commits = 0;
  constructor(first: Design) {
    this.states = [writeDesign(first)];
  }
  add(next: Design) {
    const text = writeDesign(next);
    if (text === this.states[this.at]) return;
    this.states = [...this.states.slice(0, this.at + 1), text];
    this.at++;
    this.commits++;
  }
  go(k: number) {
    if (k >= 0 && k < this.states.length) this.at = k;
  }
}

function bench(first: Design) {
  const documents = createDocumentStore();
  const history = createHistory(documents, () => 0);
  documents.open(first, 'tried.evenrun.json');
  const ledger = new Ledger(first);
  const settled = () => documents.store.getState().settled!;
  const written = () => writeDesign(settled());
  const agree = () => {
    const { past, future } = history.store.getState();
    expect(past.length).toBe(ledger.at);
    expect(past.length + future.length).toBe(ledger.states.length - 1);
    expect(written()).toBe(ledger.states[ledger.at]);
    expect(documents.store.getState().design).toBe(settled());
    expect(documents.store.getState().gesture).toBeNull();
  };
  return { documents, history, ledger, settled, written, agree };
}

type Bench = ReturnType<typeof bench>;

/** One gesture of several writes; answers how it ended. Whatever cuts it short leaves nothing of it. */
function gesture({ documents, history, ledger, settled }: Bench, r: Random): string {
  const held = documents.mark()!;
  let last = held.from;
  for (let i = r.whole(0, 6); i > 0; i--) {
    last = randomEdit(r() < 0.5 ? held.from : last, r);
    expect(held.write(last)).toBe(true);
  }
  const k = r.whole(0, ledger.states.length - 1);
  const way = r();
  if (way < 0.62) {
    held.commit('drag');
    ledger.add(last);
    return 'commit';
  }
  if (way < 0.76) held.bail();
  else if (way < 0.82) expect(history.undo()).toBe(true);
  else if (way < 0.88) expect(history.redo()).toBe(true);
  else if (way < 0.92) documents.mark()!.bail();
  else if (way < 0.96) {
    history.jump(k);
    ledger.go(k);
  } else {
    const typed = randomEdit(settled(), r);
    documents.apply(typed, 'typed');
    ledger.add(typed);
  }
  // Its handle is dead: nothing that arrives late gets in.
  expect(held.write(randomEdit(held.from, r))).toBe(false);
  expect(held.commit('late')).toBe(false);
  expect(held.bail()).toBe(false);
  return 'cut short';
}

function between(b: Bench, r: Random): void {
  const { documents, history, ledger, settled } = b;
  const way = r();
  if (way < 0.5) return;
  if (way < 0.7) {
    const next = randomEdit(settled(), r);
    documents.apply(next, 'typed');
    ledger.add(next);
  } else if (way < 0.85) {
    expect(history.undo()).toBe(ledger.at > 0);
    ledger.go(ledger.at - 1);
  } else if (way < 0.97) {
    expect(history.redo()).toBe(ledger.at < ledger.states.length - 1);
    ledger.go(ledger.at + 1);
  } else {
    // Near by: jumping far and editing there would cut the walk short again and again.
    const k = Math.max(0, ledger.at - r.whole(0, 8));
    history.jump(k);
    ledger.go(k);
  }
}

function walkBackAndForth({ history, ledger, written }: Bench): void {
  const last = ledger.states.length - 1;
  while (history.redo()) ledger.at++;
  expect(ledger.at).toBe(last);
  for (let k = last; k >= 0; k--) {
    expect(written()).toBe(ledger.states[k]);
    expect(history.undo()).toBe(k > 0);
  }
  expect(written()).toBe(ledger.states[0]);
  for (let k = 0; k <= last; k++) {
    expect(written()).toBe(ledger.states[k]);
    expect(history.redo()).toBe(k < last);
  }
}

describe('a thousand random gestures', () => {
  it.each([
    ['four-4-1.evenrun.json', 11],
    ['v8-both-banks.evenrun.json', 12],
    ['four-4-2-1.evenrun.json', 13],
  ])('on %s lose no step and no byte (seed %i)', (file, seed) => {
    const r = random(seed);
    const b = bench(example(file));
    const ways = new Map<string, number>();
    for (let i = 0; i < 1000; i++) {
      const way = gesture(b, r);
      ways.set(way, (ways.get(way) ?? 0) + 1);
      b.agree();
      between(b, r);
      b.agree();
    }
    expect(ways.get('commit')).toBeGreaterThan(500);
    expect(ways.get('cut short')).toBeGreaterThan(200);
    expect(b.history.store.getState().dropped).toBe(0);
    walkBackAndForth(b);
  });

  it('all committed: a thousand steps and more stay, and lead back to the first byte (seed 14)', () => {
    const r = random(14);
    const b = bench(example('v8-left-bank-4-1.evenrun.json'));
    while (b.ledger.commits < 1500) {
      const held = b.documents.mark()!;
      const next = randomEdit(held.from, r);
      held.write(next);
      held.commit('drag');
      b.ledger.add(next);
    }
    b.agree();
    expect(b.history.store.getState().past).toHaveLength(1500);
    walkBackAndForth(b);
  });

  it(`keeps the newest ${LONGEST_PAST} steps and says how many are gone`, () => {
    const b = bench(example('four-4-1.evenrun.json'));
    for (let i = 0; i < LONGEST_PAST + 7; i++) b.documents.apply({ ...b.settled(), title: `${i}` }, `to ${i}`);
    const { past, dropped } = b.history.store.getState();
    expect(past).toHaveLength(LONGEST_PAST);
    expect(dropped).toBe(7);
    expect(b.history.jump(0)).toBe(true);
    expect(b.settled().title).toBe('6');
  });
});

describe('the same design', () => {
  it('is one that is written as the same bytes (seed 15)', () => {
    const r = random(15);
    let equal = 0;
    for (let i = 0; i < 400; i++) {
      const a = example('four-4-1.evenrun.json');
      const b = r() < 0.3 ? structuredClone(a) : randomEdit(a, r);
      const c = r() < 0.3 ? structuredClone(b) : randomEdit(b, r);
      expect(same(b, c)).toBe(writeDesign(b) === writeDesign(c));
      if (same(b, c)) equal++;
    }
    expect(equal).toBeGreaterThan(50);
    expect(equal).toBeLessThan(300);
  });
});
