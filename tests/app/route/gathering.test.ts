/** Rounds come in any order, some broken off: the same rounds are always the same answer. */
import { describe, expect, it } from 'vitest';
import { gathered, nothingYet, type Round } from '../../../geometry';
import { createGathering } from '../../../src/app/route/gathering';
import { random } from '../../random';
import { layout } from './layouts';

/** A round that found two ways. Neighbours within 40 mm crowd each other out, so that order could matter. */
const roundOf = (n: number): Round => ({
  layouts: [layout((n * 37) % 200, 100 + ((n * 53) % 90)), layout((n * 61) % 200, 120 + ((n * 29) % 70))],
  attempt: null,
});
const ROUNDS = 24;
const inOrder = Array.from({ length: ROUNDS }, (_, n) => roundOf(n)).reduce(gathered, nothingYet);

function shuffled<T>(list: readonly T[], seed: number): T[] {
  const next = random(seed);
  const left = [...list];
  return list.map(() => left.splice(next.whole(0, left.length - 1), 1)[0]!);
}

describe('gathering rounds', () => {
  it.each([1, 2, 3, 4, 5])('comes to the same in whatever order they arrive (seed %i)', (seed) => {
    const gathering = createGathering();
    for (const n of shuffled([...Array(ROUNDS).keys()], seed)) gathering.take(n, roundOf(n), false);
    expect(gathering.harvest()).toEqual(inOrder);
    expect(gathering.rounds).toBe(ROUNDS);
  });

  it('would not without being put in order: these rounds do tell', () => {
    const answers = [1, 2, 3, 4, 5].map((seed) =>
      JSON.stringify(
        shuffled([...Array(ROUNDS).keys()], seed)
          .map(roundOf)
          .reduce(gathered, nothingYet),
      ),
    );
    expect(new Set([...answers, JSON.stringify(inOrder)]).size).toBeGreaterThan(1);
  });

  it('hands out each number once, and those that were broken off again, the lowest first', () => {
    const gathering = createGathering();
    expect([1, 2, 3].map(() => gathering.handOut(null))).toEqual([0, 1, 2]);
    gathering.take(1, roundOf(1), false);
    gathering.take(0, roundOf(0), true);
    gathering.recall();
    expect([1, 2, 3].map(() => gathering.handOut(4))).toEqual([0, 2, 3]);
    expect(gathering.handOut(4)).toBeNull();
    expect(gathering.rounds).toBe(1);
  });

  it('counts what was seen of a round under way, until the round itself says what it came to', () => {
    const gathering = createGathering();
    gathering.see(3, layout(0, 150));
    gathering.see(3, layout(0, 140));
    expect(gathering.harvest().best?.angle).toBe(140);
    expect(gathering.rounds).toBe(0);
    gathering.take(3, { layouts: [layout(0, 130)], attempt: null }, false);
    gathering.see(3, layout(0, 90));
    expect(gathering.harvest().best?.angle).toBe(130);
  });

  it('keeps the nearest miss while nothing holds, and no miss in front of what holds', () => {
    const gathering = createGathering();
    gathering.take(0, { layouts: [], attempt: layout(0, 100, 3) }, false);
    gathering.take(1, { layouts: [], attempt: layout(0, 300, 1) }, false);
    expect(gathering.harvest()).toMatchObject({ layouts: [], best: { angle: 300 } });
    gathering.see(2, layout(0, 500));
    expect(gathering.harvest()).toMatchObject({ best: { angle: 500 }, layouts: [{ angle: 500 }] });
  });
});
