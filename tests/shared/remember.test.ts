/** Answers remembered by what they are of: worked out once for each, and anew as soon as a part is another. */
import { describe, expect, it } from 'vitest';
import { remembered, rememberedByParts } from '../../shared/remember';

describe('remembered', () => {
  it('asks once for each thing, also where the answer is nothing', () => {
    let asked = 0;
    const sizeOf = remembered((of: { readonly n: number }) => {
      asked++;
      return of.n > 0 ? of.n : undefined;
    });
    const [one, none] = [{ n: 1 }, { n: 0 }];
    expect([sizeOf(one), sizeOf(none), sizeOf(one), sizeOf(none)]).toEqual([1, undefined, 1, undefined]);
    expect(asked).toBe(2);
    expect(sizeOf({ n: 1 })).toBe(1);
    expect(asked).toBe(3);
  });
});

describe('remembered by parts', () => {
  type Pair = { readonly a: object; readonly b: object; readonly time: number };
  const made = () =>
    rememberedByParts(
      (of: Pair) => [of.a, of.b],
      ({ a, b }) => ({ a, b }),
    );
  const [a, b, c] = [{}, {}, {}];

  it('gives the very same answer while the parts are the same', () => {
    const pairOf = made();
    expect(pairOf({ a, b, time: 1 })).toBe(pairOf({ a, b, time: 2 }));
  });

  it('answers anew when a part is another, or there are more of them', () => {
    const pairOf = made();
    pairOf({ a, b, time: 1 });
    expect(pairOf({ a, b: c, time: 1 })).toEqual({ a, b: c });
    expect(pairOf({ a, b: c, time: 1 }).b).toBe(c);
    const listOf = rememberedByParts(
      (of: readonly object[]) => of,
      (of) => of.length,
    );
    expect([listOf([a]), listOf([a, b]), listOf([])]).toEqual([1, 2, 0]);
  });

  it('keeps two answers, so that two things asked about in turn do not drive each other out', () => {
    const pairOf = made();
    const [first, second] = [pairOf({ a, b, time: 1 }), pairOf({ a: c, b, time: 1 })];
    expect(pairOf({ a, b, time: 2 })).toBe(first);
    expect(pairOf({ a: c, b, time: 2 })).toBe(second);
  });
});
