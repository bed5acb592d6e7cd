/**
 * The choice among ways to fill stock: how often each is taken so that every piece is had and no more stock of a kind is used
 * than there is. As fractions, with what one more piece would cost (column generation asks that), and in whole numbers.
 */
import type { Highs, Model, SymbolDisposable } from 'highs';
import type { Counts } from './fill';

/** One way to fill one kind of stock. */
export type Column = { readonly kind: number; readonly counts: Counts };
export type Taken = readonly (readonly [column: Column, times: number])[];

export type KindCost = { readonly cost: number; readonly limit: number };

const fullMatrix = (columns: readonly Column[], types: number, rowOf: readonly number[], rows: number) => {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { kind, counts } of columns) {
    for (const [type, n] of counts) {
      indices.push(type);
      values.push(n);
    }
    if (rowOf[kind]! >= 0) {
      indices.push(types + rowOf[kind]!);
      values.push(1);
    }
    starts.push(indices.length);
  }
  return { format: 'csc', numRows: rows, numCols: columns.length, starts, indices, values } as const;
};

/** Rows: one a type, then one for each kind that is limited. */
function rowsOf(kinds: readonly KindCost[]) {
  let next = 0;
  const rowOf = kinds.map(({ limit }) => (Number.isFinite(limit) ? next++ : -1));
  return { rowOf, limited: next };
}

export type Relaxed = {
  readonly value: number;
  readonly times: Float64Array;
  /** What one more of each type would cost. */
  readonly worths: number[];
  /** What one more length of each kind would save; 0 of what is not limited. */
  readonly rents: number[];
};

export type Master = {
  add(columns: readonly Column[]): void;
  /** Null where the columns there are cannot give every piece. */
  solve(): Relaxed | null;
  want(wanted: readonly number[], limits: readonly number[]): void;
  dispose(): void;
};

export function master(highs: Highs, wanted: readonly number[], kinds: readonly KindCost[]): Master {
  const { rowOf, limited } = rowsOf(kinds);
  const rows = wanted.length + limited;
  const limits = kinds.map(({ limit }) => limit).filter(Number.isFinite);
  const model: SymbolDisposable<Model> = highs.createModel({
    numCols: 0,
    numRows: rows,
    colCost: [],
    colLower: [],
    colUpper: [],
    rowLower: [...wanted, ...limits.map(() => -highs.infinity)],
    rowUpper: [...wanted.map(() => highs.infinity), ...limits],
    matrix: fullMatrix([], wanted.length, rowOf, rows),
  });
  model.options.set({ output_flag: false, presolve: 'off', solver: 'simplex' });
  return {
    add(columns) {
      if (columns.length === 0) return;
      model.addCols({
        cost: Float64Array.from(columns, ({ kind }) => kinds[kind]!.cost),
        lower: new Float64Array(columns.length),
        upper: new Float64Array(columns.length).fill(highs.infinity),
        matrix: asTyped(fullMatrix(columns, wanted.length, rowOf, rows)),
      });
    },
    solve() {
      model.run();
      if (model.getModelStatus() !== highs.constants.modelStatus.optimal) return null;
      const { colValue, rowDual } = model.getSolution();
      const worths = Array.from(rowDual.subarray(0, wanted.length), (dual) => Math.max(0, dual));
      const rents = rowOf.map((row) => (row < 0 ? 0 : Math.max(0, -rowDual[wanted.length + row]!)));
      return { value: model.getObjectiveValue(), times: colValue, worths, rents };
    },
    want(next, nextLimits) {
      for (const [row, n] of next.entries()) model.changeRowBounds(row, n, highs.infinity);
      for (const [kind, row] of rowOf.entries())
        if (row >= 0) model.changeRowBounds(wanted.length + row, -highs.infinity, nextLimits[kind]!);
    },
    dispose: () => model.dispose(),
  };
}

const asTyped = ({ starts, indices, values, ...more }: ReturnType<typeof fullMatrix>) => ({
  ...more,
  starts: Int32Array.from(starts),
  indices: Int32Array.from(indices),
  values: Float64Array.from(values),
});

export type Whole = {
  readonly taken: Taken | null;
  readonly value: number;
  /** No choice among these columns is below it. */
  readonly bound: number;
  readonly finished: boolean;
};

/** @param enough a value that cannot be bettered: the search ends there */
export function wholeNumbers(
  highs: Highs,
  wanted: readonly number[],
  kinds: readonly KindCost[],
  columns: readonly Column[],
  limits: { readonly enough: number; readonly nodes: number; readonly seconds: number; readonly start?: Taken },
): Whole {
  const { rowOf, limited } = rowsOf(kinds);
  const rows = wanted.length + limited;
  const most = kinds.map(({ limit }) => limit).filter(Number.isFinite);
  const { modelStatus } = highs.constants;
  return highs.withModel((model): Whole => {
    model.options.set({
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 1e-6,
      mip_max_nodes: limits.nodes,
      time_limit: Math.max(0.01, limits.seconds),
      objective_target: limits.enough + 1e-6 * Math.max(1, limits.enough),
    });
    model.passModel({
      numCols: columns.length,
      numRows: rows,
      colCost: columns.map(({ kind }) => kinds[kind]!.cost),
      colLower: new Float64Array(columns.length),
      colUpper: columns.map(({ kind, counts }) =>
        Math.min(kinds[kind]!.limit, Math.max(1, ...counts.map(([type, n]) => Math.ceil(wanted[type]! / n)))),
      ),
      rowLower: [...wanted, ...most.map(() => -highs.infinity)],
      rowUpper: [...wanted.map(() => highs.infinity), ...most],
      matrix: fullMatrix(columns, wanted.length, rowOf, rows),
      integrality: new Int32Array(columns.length).fill(1),
    });
    model.run();
    const status = model.getModelStatus();
    const finished = status === modelStatus.optimal || status === modelStatus.infeasible;
    if (status === modelStatus.infeasible)
      return { taken: null, value: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY, finished };
    const bound = Number(model.info.get('mip_dual_bound'));
    const value = model.getObjectiveValue();
    if (model.info.get('primal_solution_status') !== 2 || !Number.isFinite(value))
      return { taken: null, value: Number.POSITIVE_INFINITY, bound, finished };
    const { colValue } = model.getSolution();
    const taken = columns.flatMap((column, i) =>
      Math.round(colValue[i]!) > 0 ? [[column, Math.round(colValue[i]!)] as const] : [],
    );
    return { taken, value, bound, finished };
  });
}
