/** The pool without threads: rounds are handed out by number, meshes sent once, and the end comes by rounds, time or hand. */
import { describe, expect, it } from 'vitest';
import type { Meshes } from '../../../geometry';
import { createGathering } from '../../../src/app/route/gathering';
import { startPool, workerCount } from '../../../src/app/route/pool';
import { titled } from '../designs';
import { layout } from './layouts';
import { emptyRound, fakeMachine } from './machine';

const MESHES: Meshes = new Map([['bay.stl', new Float32Array(9)]]);

function bench(
  cores: number,
  wish: { readonly seconds?: number; readonly rounds?: number } = {},
  gathering = createGathering(),
) {
  const fake = fakeMachine(cores);
  const heard: string[] = [];
  const { seconds = 10, rounds = null } = wish;
  const pool = startPool(
    { design: titled('a'), meshes: MESHES, options: { seed: 7 }, seconds, rounds },
    gathering,
    {
      changed: () => void heard.push('changed'),
      ended: () => void heard.push('ended'),
      failed: (why) => void heard.push(why),
    },
    fake.machine,
  );
  return { ...fake, gathering, heard, pool };
}

describe('the pool of workers', () => {
  it('takes every core, at least one worker and at most eight', () => {
    expect([0, Number.NaN, 1, 2, 8, 64].map(workerCount)).toEqual([1, 1, 1, 2, 8, 8]);
    expect(bench(3).workers.length).toBe(3);
    expect(bench(64).workers.length).toBe(8);
  });

  it('starts no more workers than there are rounds', () => {
    const { workers, rounds } = bench(8, { rounds: 2 });
    expect(workers.length).toBe(2);
    expect([rounds(0), rounds(1)]).toEqual([[0], [1]]);
  });

  it('sends the design and its meshes to each worker once, before any round', () => {
    const { workers, reply } = bench(2);
    for (const n of [0, 2, 3]) reply(0, emptyRound(n));
    for (const { asked } of workers) {
      expect(asked.filter((r) => r.do === 'lay').length).toBe(1);
      expect(asked[0]).toMatchObject({ do: 'lay', meshes: MESHES, options: { seed: 7 } });
    }
  });

  it('hands the next free number to whoever is free', () => {
    const { rounds, reply } = bench(2);
    reply(1, emptyRound(1));
    reply(1, emptyRound(2));
    reply(0, emptyRound(0));
    expect([rounds(0), rounds(1)]).toEqual([
      [0, 4],
      [1, 2, 3],
    ]);
  });

  it('tells of each layout as soon as it is found', () => {
    const { heard, gathering, reply } = bench(2);
    reply(1, { n: 1, seen: layout(0, 200) });
    expect(heard).toEqual(['changed']);
    expect(gathering.harvest().best?.angle).toBe(200);
  });

  it('ends once the last of the rounds asked for is done', () => {
    const { heard, workers, reply } = bench(2, { rounds: 3 });
    reply(0, emptyRound(0));
    reply(0, emptyRound(2));
    expect(heard).not.toContain('ended');
    reply(1, emptyRound(1));
    expect(heard.filter((h) => h === 'ended').length).toBe(1);
    expect(workers.every((w) => w.ended)).toBe(true);
  });

  it('comes to the same whichever worker is the faster', () => {
    const found = (order: readonly number[]) => {
      const b = bench(2, { rounds: 4 });
      for (const k of order) {
        const n = b.rounds(k).at(-1)!;
        b.reply(k, { n, round: { layouts: [layout(30 * n, 200 - n)], attempt: null }, cut: false });
      }
      expect(b.heard).toContain('ended');
      return b.gathering.harvest();
    };
    expect(found([0, 1, 0, 1])).toEqual(found([1, 1, 1, 0]));
  });

  it('hands out nothing once the time is up, and counts what a round that ended for it has', () => {
    const { heard, rounds, gathering, reply, pass } = bench(2, { seconds: 1 });
    pass(1000);
    reply(0, { n: 0, round: { layouts: [], attempt: layout(0, 100, 2) }, cut: true });
    expect(rounds(0)).toEqual([0]);
    expect(heard).not.toContain('ended');
    reply(1, emptyRound(1, true));
    expect(heard.at(-1)).toBe('ended');
    expect(gathering.harvest().best?.report.problems.length).toBe(2);
    expect(gathering.rounds).toBe(0);
  });

  it('ends workers that do not hear that the time is up', () => {
    const { heard, workers, reply, pass } = bench(2, { seconds: 1 });
    reply(0, { n: 0, seen: layout(0, 200) });
    pass(5000);
    expect(heard.at(-1)).toBe('ended');
    expect(workers.every((w) => w.ended)).toBe(true);
  });

  it('stops at once, and hears nothing of what still comes', () => {
    const { heard, workers, pool, gathering, reply, pass } = bench(2);
    pool.stop();
    expect(workers.every((w) => w.ended)).toBe(true);
    reply(0, { n: 0, seen: layout(0, 200) });
    pass(60_000);
    expect(heard).toEqual([]);
    expect(gathering.harvest().best).toBeNull();
  });

  it('goes on where an earlier run was broken off', () => {
    const first = bench(2);
    first.reply(0, emptyRound(0));
    first.pool.stop();
    const second = bench(2, {}, first.gathering);
    expect([second.rounds(0), second.rounds(1)]).toEqual([[1], [2]]);
  });

  it('ends even where every round asked for is done already', () => {
    const first = bench(1, { rounds: 1 });
    first.reply(0, emptyRound(0));
    const second = bench(1, { rounds: 1 }, first.gathering);
    second.pass(0);
    expect(second.heard).toEqual(['ended']);
  });

  it.each([
    ['that says so', (b: ReturnType<typeof bench>) => b.reply(1, { failed: 'no' }), 'no'],
    ['that breaks', (b: ReturnType<typeof bench>) => b.breaks(1, 'out of memory'), 'out of memory'],
  ])('stops them all for a worker %s', (_, breaks, why) => {
    const b = bench(2);
    breaks(b);
    expect(b.heard).toEqual([why]);
    expect(b.workers.every((w) => w.ended)).toBe(true);
  });
});
