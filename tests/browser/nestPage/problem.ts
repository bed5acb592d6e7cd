/** A cutting problem whose bound is not found by room alone, so that the solver is needed. */
const LENGTHS = [45, 36, 31, 14].flatMap((length, i) => Array(([97, 610, 395, 211] as const)[i]!).fill(length));

export const problem = {
  pieces: LENGTHS.map((length, i) => ({ id: `${i}`, length })),
  stock: [
    { id: 'a', length: 100, count: 0, buy: true, price: 10 },
    { id: 'b', length: 73, count: 20, buy: true, price: 7.25 },
  ],
  kerf: 0,
  endTrim: 0,
};
