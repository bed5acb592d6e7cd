/** How a design is made is asked once it rests, of the newest only; a worker that is at an older one is ended. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { documents } from '../../../src/app/document';
import { keepAnswer, useMakingAnswer } from '../../../src/app/making/answer';
import { createAsker, type MakingAsker, REST } from '../../../src/app/making/asker';
import type { MakingRequest } from '../../../src/app/making/messages';
import type { Making } from '../../../src/shop/making/report';
import { titled } from '../designs';
import { fakeWorkers } from '../fakeWorkers';

const found = { groups: [] } as unknown as Making;

function bench() {
  const { asked, workers, make, reply } = fakeWorkers<MakingRequest>();
  const heard: unknown[] = [];
  const asker = createAsker(
    {
      done: (design) => heard.push(['done', design.title]),
      failed: (design, why) => heard.push(['failed', design.title, why]),
    },
    make,
  );
  return { asked, workers, heard, asker, reply };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the asker', () => {
  it('starts no worker before a design has rested, and then asks for the newest', () => {
    const { asked, workers, asker } = bench();
    for (const title of ['a', 'b', 'c']) {
      asker.ask(titled(title));
      vi.advanceTimersByTime(REST - 1);
    }
    expect(workers).toHaveLength(0);
    vi.advanceTimersByTime(1);
    expect(asked.map((r) => r.design.title)).toEqual(['c']);
  });

  it('keeps a worker that has answered, and ends one that is still at an older design', () => {
    const { asked, workers, heard, asker, reply } = bench();
    asker.ask(titled('a'));
    vi.advanceTimersByTime(REST);
    reply({ number: asked[0]!.number, done: found });
    asker.ask(titled('b'));
    vi.advanceTimersByTime(REST);
    expect(workers).toHaveLength(1);
    asker.ask(titled('c'));
    expect(workers[0]!.ended).toBe(true);
    vi.advanceTimersByTime(REST);
    expect(workers).toHaveLength(2);
    reply({ number: asked[2]!.number, done: found });
    expect(heard).toEqual([
      ['done', 'a'],
      ['done', 'c'],
    ]);
  });

  it('tells why it failed, and starts another worker after one broke', () => {
    const { asked, workers, heard, asker, reply } = bench();
    asker.ask(titled('a'));
    vi.advanceTimersByTime(REST);
    reply({ number: asked[0]!.number, failed: 'no way' });
    asker.ask(titled('b'));
    vi.advanceTimersByTime(REST);
    workers[0]!.onerror!.call(null as never, { message: 'out of memory' } as ErrorEvent);
    asker.ask(titled('c'));
    vi.advanceTimersByTime(REST);
    expect(workers).toHaveLength(2);
    expect(heard).toEqual([
      ['failed', 'a', 'no way'],
      ['failed', 'b', 'out of memory'],
    ]);
  });

  it('hears nothing more of a worker that it has ended', () => {
    const { asked, workers, heard, asker } = bench();
    const say = (data: unknown) => workers[0]!.onmessage!.call(null as never, { data } as MessageEvent);
    asker.ask(titled('a'));
    vi.advanceTimersByTime(REST);
    asker.end();
    say({ number: asked[0]!.number, done: found });
    asker.ask(titled('b'));
    vi.advanceTimersByTime(REST);
    workers[0]!.onerror!.call(null as never, { message: 'late' } as ErrorEvent);
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
    expect(heard).toEqual([]);
  });
});

describe('the answer', () => {
  const asked: string[] = [];
  let ended = 0;
  const fake = (): MakingAsker => ({
    ask: (design) => void asked.push(design.title!),
    end: () => {
      ended += 1;
    },
  });
  beforeEach(() => {
    asked.length = 0;
    ended = 0;
  });

  it('is asked for while something shows it, once however many do, and let go of after the last', () => {
    documents.open(titled('one'), 'one.evenrun.json');
    const first = keepAnswer(fake);
    const second = keepAnswer(fake);
    expect(asked).toEqual(['one']);
    documents.apply(titled('two'), 'Rename');
    expect(asked).toEqual(['one', 'two']);
    first();
    expect(ended).toBe(0);
    second();
    expect(ended).toBe(1);
    documents.apply(titled('three'), 'Rename');
    expect(asked).toEqual(['one', 'two']);
    expect(useMakingAnswer.getState().working).toBe(false);
  });

  it('is not asked again for a design that it is of, and forgotten with another', () => {
    documents.open(titled('one'), 'one.evenrun.json');
    const { settled } = documents.store.getState();
    useMakingAnswer.setState({ making: found, of: settled });
    const stop = keepAnswer(fake);
    expect(asked).toEqual([]);
    ended = 0;
    documents.apply(titled('two'), 'Rename');
    documents.travel(settled!);
    expect(asked).toEqual(['two']);
    expect(ended).toBe(1);
    expect(useMakingAnswer.getState()).toMatchObject({ making: found, of: settled, working: false });
    documents.open(titled('other'), 'other.evenrun.json');
    expect(useMakingAnswer.getState()).toMatchObject({ making: null, working: true });
    stop();
  });
});
