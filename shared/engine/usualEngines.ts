/**
 * Firing orders and numberings to start from, by cylinders and banks. Orders with a key were read in the firing-order
 * lists that tests/reference/fabrication.json names; the others, and how banks are numbered, are from memory and differ
 * between makers: the form shows them to be changed.
 */

export type UsualEngine = {
  readonly cylinders: number;
  /** Cylinders bank by bank, each from the front to the back. */
  readonly banks: readonly (readonly number[])[];
  readonly firingOrder: readonly number[];
  /** Between the banks' cylinder axes, degrees; 0 for one bank, 180 lies flat. */
  readonly vee: number;
  /** Key of the published order, or null: from memory. */
  readonly published: string | null;
};

const inline = (firingOrder: readonly number[], published: string | null): UsualEngine => ({
  cylinders: firingOrder.length,
  banks: [[...firingOrder].sort((a, b) => a - b)],
  firingOrder,
  vee: 0,
  published,
});
const two = (
  vee: number,
  banks: readonly (readonly number[])[],
  firingOrder: readonly number[],
  published: string | null,
): UsualEngine => ({ cylinders: firingOrder.length, banks, firingOrder, vee, published });

const ODD_EVEN = [
  [1, 3, 5, 7],
  [2, 4, 6, 8],
];

export const USUAL_ENGINES: readonly UsualEngine[] = [
  inline([1], null),
  inline([1, 2], null),
  inline([1, 3, 2], 'fire.I3'),
  inline([1, 3, 4, 2], 'fire.I4'),
  inline([1, 2, 4, 5, 3], 'fire.I5'),
  inline([1, 5, 3, 6, 2, 4], 'fire.I6'),
  inline([1, 6, 2, 5, 8, 3, 7, 4], null),
  two(90, [[1], [2]], [1, 2], null),
  two(
    180,
    ODD_EVEN.map((b) => b.slice(0, 2)),
    [1, 3, 2, 4],
    'fire.F4',
  ),
  two(
    90,
    ODD_EVEN.map((b) => b.slice(0, 3)),
    [1, 2, 3, 4, 5, 6],
    'fire.V6_(1-2-3-4-5-6)',
  ),
  two(90, ODD_EVEN, [1, 8, 4, 3, 6, 5, 7, 2], 'fire.V8_a'),
  two(
    72,
    [
      [1, 2, 3, 4, 5],
      [6, 7, 8, 9, 10],
    ],
    [1, 6, 5, 10, 2, 7, 3, 8, 4, 9],
    null,
  ),
  two(
    60,
    [
      [1, 2, 3, 4, 5, 6],
      [7, 8, 9, 10, 11, 12],
    ],
    [1, 7, 5, 11, 3, 9, 6, 12, 2, 8, 4, 10],
    null,
  ),
];

export const usualEngine = (cylinders: number, banks: number): UsualEngine | undefined =>
  USUAL_ENGINES.find((e) => e.cylinders === cylinders && e.banks.length === banks);
