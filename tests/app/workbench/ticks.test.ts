/** Ticks: done by these numbers, changed by others, gone with the piece; written and read back, kept with their design. */
import { describe, expect, it } from 'vitest';
import { memoryBackend } from '../../../src/app/storage/backend';
import { createKept } from '../../../src/app/storage/kept';
import {
  changesOf,
  firstToDo,
  goneOf,
  nextOpen,
  progressOf,
  readTicks,
  standingOf,
  type Ticks,
  ticked,
  unticked,
  writeTicks,
} from '../../../src/app/workbench/ticks';
import type { Figure, Step } from '../../../src/shop/bench/step';

const length = (name: string, value: number): Figure => ({ name, kind: 'length', value });
const step = (id: string, ...figures: Figure[]): Step => ({
  id,
  runner: 'r1',
  task: 'cut',
  title: `Saw ${id}`,
  figures,
  beside: [{ name: 'From', kind: 'words', value: 'bar #1' }],
  says: [],
  care: [],
  drawing: null,
});
const saw = step('a', length('Before', 43.5), { name: 'Turn', kind: 'angle', value: 34.5, way: 'clockwise' });
const steps = [saw, step('b', length('Before', 1)), step('c')];
const once = ticked({}, saw, 5);

describe('a tick', () => {
  it('stands as long as the numbers are the same', () => {
    expect(standingOf(saw, {})).toBe('open');
    expect(standingOf(saw, once)).toBe('done');
    const elsewhere = { ...saw, beside: [{ name: 'From', kind: 'words', value: 'bar #2' } as const], says: ['Mind.'] };
    expect(standingOf(elsewhere, once)).toBe('done');
    expect(standingOf(step('a', length('Before', 43.5 + 1e-9), saw.figures[1]!), once)).toBe('done');
  });

  it.each([
    ['another number', [length('Before', 44), saw.figures[1]!], ['Before']],
    ['another way round', [saw.figures[0]!, { ...saw.figures[1]!, way: 'counter-clockwise' } as Figure], ['Turn']],
    ['a number more', [...saw.figures, length('Behind', 2)], ['Behind']],
    ['a number less', [saw.figures[1]!], ['Before']],
  ])('is changed by %s, and says which', (_, figures, names) => {
    const changed = step('a', ...figures);
    expect(standingOf(changed, once)).toBe('changed');
    const changes = changesOf(changed, once.a!);
    expect(changes.map(({ name }) => name)).toEqual(names);
    const [was] = changes;
    expect(was!.was ?? was!.now).not.toBeNull();
  });

  it('says what a number was', () => {
    const [change] = changesOf(step('a', length('Before', 44), saw.figures[1]!), once.a!);
    expect(change).toEqual({ name: 'Before', was: length('Before', 43.5), now: length('Before', 44) });
  });

  it('is done again by the new numbers, or taken back', () => {
    const changed = step('a', length('Before', 44), saw.figures[1]!);
    expect(standingOf(changed, ticked(once, changed, 9))).toBe('done');
    expect(unticked(once, ['a'])).toEqual({});
  });

  it('is told of when its step is no longer there', () => {
    expect(goneOf(steps, once)).toEqual([]);
    expect(goneOf(steps.slice(1), once)).toEqual([['a', 'Saw a']]);
  });

  it('of a step that is called like something every object has is none', () => {
    expect(standingOf(step('constructor'), {})).toBe('open');
  });
});

describe('where to go on', () => {
  it('is the next that is not done, round again, changed ones too', () => {
    const two: Ticks = ticked(once, steps[1]!, 6);
    expect(nextOpen(steps, two, 'a')?.id).toBe('c');
    expect(nextOpen(steps, ticked({}, steps[2]!, 1), 'b')?.id).toBe('a');
    expect(nextOpen(steps, ticked(two, steps[2]!, 7), 'a')).toBeNull();
    const again = [step('a', length('Before', 44)), ...steps.slice(1)];
    expect(firstToDo(again, two)?.id).toBe('a');
    expect(firstToDo([steps[2]!, again[0]!], two)?.id).toBe('a');
    expect(firstToDo(steps, two)?.id).toBe('c');
    expect(progressOf(again, two)).toEqual({ done: 1, changed: 1, all: 3 });
  });
});

describe('ticks as text', () => {
  it('come back as they were', () => {
    expect(readTicks(writeTicks(once))).toEqual(once);
  });

  it.each([
    null,
    '',
    '{',
    '[]',
    '{"format":"evenrun-ticks","version":2,"ticks":{}}',
    '{"format":"evenrun-ticks","version":1,"ticks":null}',
  ])('are none in %s', (text) => {
    expect(readTicks(text)).toEqual({});
  });

  it('lose only those that cannot be read', () => {
    const text = writeTicks({ ...once, b: { at: 'never' } as never, c: { at: 1, title: 'C', figures: [{} as never] } });
    expect(readTicks(text)).toEqual(once);
  });

  it('are kept with their design: deleted with it, put back with it, none where they are not whole', async () => {
    const values = new Map<string, unknown>();
    const kept = createKept(memoryBackend(values));
    const design = {
      id: 'x',
      fileName: 'x.json',
      changed: 1,
      origin: 'made',
      inFile: false,
      meshes: {},
      text: '{}',
    } as const;
    await kept.write(design);
    expect(await kept.ticks('x')).toBeNull();
    await kept.setTicks('x', writeTicks(once));
    expect(readTicks(await kept.ticks('x'))).toEqual(once);
    const removed = await kept.remove('x');
    expect(await kept.ticks('x')).toBeNull();
    expect([...values.keys()].filter((key) => key.includes('x'))).toEqual([]);
    await kept.restore(removed!);
    expect(readTicks(await kept.ticks('x'))).toEqual(once);
    values.set('ticks/x', String(values.get('ticks/x')).replace('43.5', '44.5'));
    expect(await kept.ticks('x')).toBeNull();
  });
});
