/** Ticks on their way to and from this browser: none is lost to one still being written, nor to what cannot be read. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { loadTicks, tick, useTicks } from '../../../src/app/workbench/tickStore';
import { readTicks, ticked, writeTicks } from '../../../src/app/workbench/ticks';
import type { Step } from '../../../src/shop/bench/step';

const store = vi.hoisted(() => ({
  texts: new Map<string, string>(),
  read: async (id: string): Promise<string | null> => store.texts.get(id) ?? null,
  write: async (id: string, text: string): Promise<void> => void store.texts.set(id, text),
}));
vi.mock('../../../src/app/shelf/browserShelf', () => ({
  kept: { ticks: (id: string) => store.read(id) },
  shelf: { keepTicks: (id: string, text: string) => store.write(id, text) },
}));

const { read, write } = store;
const step = (id: string): Step => ({
  id,
  runner: 'r1',
  task: 'cut',
  title: `Saw ${id}`,
  figures: [],
  beside: [],
  says: [],
  care: [],
  drawing: null,
});
const idsOf = (id: string) => Object.keys(readTicks(store.texts.get(id) ?? null));

beforeEach(() => {
  store.texts.clear();
  Object.assign(store, { read, write });
});

describe('ticks of the open design', () => {
  it('outlive a workbench that is closed and opened again before the last was written', async () => {
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await loadTicks('x');
    store.write = (id, text) => held.then(() => write(id, text));
    tick(step('a'));
    const again = loadTicks('x');
    release();
    await again;
    tick(step('b'));
    await vi.waitFor(() => expect(idsOf('x')).toEqual(['a', 'b']));
  });

  it('are those of the design asked for last, whichever is read first', async () => {
    store.texts.set('slow', writeTicks(ticked({}, step('a'), 1)));
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    store.read = (id) => (id === 'slow' ? held.then(() => read(id)) : read(id));
    const slow = loadTicks('slow');
    await loadTicks('quick');
    release();
    await slow;
    expect(useTicks.getState()).toMatchObject({ of: 'quick', ticks: {} });
  });

  it.each([
    ['of a later version', '{"format":"evenrun-ticks","version":2,"ticks":{}}', read],
    ['that cannot be read', writeTicks(ticked({}, step('a'), 1)), () => Promise.reject(new Error('no storage'))],
  ] as const)('%s are never written over, and it is told', async (_, text, reading) => {
    store.texts.set('x', text);
    store.read = reading;
    await loadTicks('x');
    expect(useTicks.getState().trouble).not.toBeNull();
    tick(step('b'));
    expect(Object.keys(useTicks.getState().ticks)).toEqual(['b']);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(store.texts.get('x')).toBe(text);
  });
});
