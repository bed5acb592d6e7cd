/** Inlets in firing order: all the ways round and no others, what pins leave of them, and what is said where there is none. */
import { describe, expect, it } from 'vitest';
import { allowedOrders, firingOrderProblem } from '../../../geometry/route/firingOrder';
import { assigned, leastTurns, pinnedByOrder } from '../../../geometry/route/inletOrder';
import { router } from '../../../geometry/route/router';
import { taskOf } from '../../../geometry/route/task';
import type { Design, Merge, Runner } from '../../../shared/design/types';
import { loadLayout } from '../../layouts/load';
import { random } from '../../random';
import { opposed } from './opposed';

const ONE = opposed(1, 150, 170, 4);

/** Ports of these cylinders, into merges as said: each entry a merge's id, its inlets and what comes into it. */
function header(
  firingOrder: readonly number[] | undefined,
  merges: readonly { id: string; inlets: number; from: readonly (number | string)[]; pattern?: 'line' }[],
): Design {
  const cylinders = merges.flatMap((m) => m.from.filter((f) => typeof f === 'number'));
  const { engine: _engine, ...rest } = ONE;
  return {
    ...rest,
    ...(firingOrder ? { engine: { firingOrder } } : {}),
    ports: cylinders.map((c) => ({ ...ONE.ports[0]!, id: `p${c}`, cylinder: c, position: [90 * c, 0, 0] as const })),
    merges: merges.map(({ id, inlets, pattern }, i): Merge => {
      const { convergence: _c, ...given } = ONE.merges[0]!;
      return {
        ...given,
        id,
        inlets,
        pattern: pattern ?? 'ring',
        position: [200 + 150 * i, 260, -320],
        axis: [0, 0, -1],
      };
    }),
    runners: merges.flatMap(({ id, from }) =>
      from.map((f): Runner => {
        const source = typeof f === 'number' ? { port: `p${f}` } : { merge: f };
        return { id: `from ${f}`, tube: 'primary', from: source, to: { merge: id } };
      }),
    ),
    groups: {},
  };
}

const pinned = (design: Design, inlets: Readonly<Record<string, number>>): Design => ({
  ...design,
  runners: design.runners.map((r) => (inlets[r.id] ? { ...r, to: { ...r.to, inlet: inlets[r.id]! } } : r)),
});

/** Cylinders as they come round, from each runner's inlet. */
const round = (design: Design, way: readonly number[]): string =>
  way.map((_, k) => design.runners[way.indexOf(k + 1)]!.id.replace('from ', '')).join('');

const FOUR = header([1, 3, 4, 2], [{ id: 'm', inlets: 4, from: [1, 2, 3, 4] }]);

describe('all the ways', () => {
  it('round a ring of four: four beginnings, two directions', () => {
    const [{ orders }] = allowedOrders(FOUR) as [ReturnType<typeof allowedOrders>[0]];
    const rounds = orders.map((way) => round(FOUR, way)).sort();
    expect(rounds).toEqual(['1243', '1342', '2134', '2431', '3124', '3421', '4213', '4312']);
  });
  it('along a line, the same cut open', () => {
    const line = header([1, 3, 4, 2], [{ id: 'm', inlets: 4, from: [1, 2, 3, 4], pattern: 'line' }]);
    expect(allowedOrders(line)[0]!.orders.length).toBe(8);
    const two = header([1, 3, 4, 2], [{ id: 'm', inlets: 2, from: [1, 4], pattern: 'line' }]);
    expect(allowedOrders(two)[0]!.orders.length).toBe(2);
  });
  it('round three: every way is one', () => {
    const three = header([1, 3, 2], [{ id: 'm', inlets: 3, from: [1, 2, 3] }]);
    expect(allowedOrders(three)[0]!.orders.length).toBe(6);
  });
  it('of a bank: those that it takes, as they fire', () => {
    const bank = header([1, 8, 4, 3, 6, 5, 7, 2], [{ id: 'm', inlets: 4, from: [1, 3, 5, 7] }]);
    const rounds = allowedOrders(bank)[0]!.orders.map((way) => round(bank, way));
    expect(rounds.length).toBe(8);
    for (const r of rounds) expect(['13571357', '75317531'].some((both) => both.includes(r))).toBe(true);
  });
  it('of what leaves merges: by the cylinder that fires first', () => {
    // Pairs 1+8, 2+7, 3+6 and 4+5, whose first fire in the order 1, 4 (for 4+5), 3, 2.
    const eight = header(
      [1, 4, 3, 2, 8, 5, 6, 7],
      [
        { id: 'a', inlets: 2, from: [1, 8] },
        { id: 'b', inlets: 2, from: [2, 7] },
        { id: 'c', inlets: 2, from: [3, 6] },
        { id: 'd', inlets: 2, from: [4, 5] },
        { id: 'm', inlets: 4, from: ['a', 'b', 'c', 'd'] },
      ],
    );
    const { runners, orders } = allowedOrders(eight)[4]!;
    const rounds = orders.map((way) =>
      way.map((_, k) => eight.runners[runners[way.indexOf(k + 1)]!]!.id.at(-1)).join(''),
    );
    expect(rounds.length).toBe(8);
    expect(rounds).toContain('adcb');
    expect(rounds).not.toContain('abdc');
  });
  it('two ports of one cylinder come in either order', () => {
    const twin = header([1, 2, 3], [{ id: 'm', inlets: 4, from: [1, 2, 3] }]);
    const port = { ...twin.ports[0]!, id: 'again' };
    const more: Runner = { ...twin.runners[0]!, id: 'from again', from: { port: 'again' } };
    const design = { ...twin, ports: [...twin.ports, port], runners: [...twin.runners, more] };
    // Two sequences of the four, eight ways each; the two ports are neighbours in all of them.
    const { orders } = allowedOrders(design)[0]!;
    expect(orders.length).toBe(16);
    for (const way of orders) expect([1, 3]).toContain(Math.abs(way[0]! - way[3]!));
  });
  it('with an inlet left free: in order round the others', () => {
    const three = header([1, 3, 2], [{ id: 'm', inlets: 4, from: [1, 2, 3] }]);
    expect(allowedOrders(three)[0]!.orders.length).toBe(24);
  });
});

describe('inlets that are given', () => {
  it('stay, and leave what fits', () => {
    const design = pinned(FOUR, { 'from 1': 2 });
    const { orders } = allowedOrders(design)[0]!;
    expect(orders.map((way) => round(design, way)).sort()).toEqual(['2134', '3124']);
    expect(firingOrderProblem(design)).toBeNull();
  });
  it('that contradict the order are named', () => {
    const design = pinned(FOUR, { 'from 1': 1, 'from 4': 2 });
    expect(allowedOrders(design)[0]!.orders).toEqual([]);
    expect(firingOrderProblem(design)).toBe(
      'Collector m: the inlets given (from 1 at 1, from 4 at 2) do not follow the firing order 1-3-4-2; leave some of them open.',
    );
    const task = taskOf(design, new Map());
    const given = pinnedByOrder(task, leastTurns(task, task), () => 0).runners.map((r) => r.pinnedInlet);
    expect(given).toEqual([1, null, null, 2]);
  });
});

describe('without a firing order', () => {
  it('says that there is none', () => {
    const none = header(undefined, [{ id: 'm', inlets: 2, from: [1, 2] }]);
    expect(firingOrderProblem(none)).toMatch(/the engine's firing order is not given/);
    expect(allowedOrders(none)).toEqual([]);
  });
  it('names a cylinder that is not in it', () => {
    const short = header([1, 2], [{ id: 'm', inlets: 3, from: [1, 2, 3] }]);
    expect(firingOrderProblem(short)).toMatch(/1-2: cylinder 3 is not in it/);
  });
});

describe('given out', () => {
  const next = random(8);
  const task = taskOf(FOUR, new Map());
  it('at the least cost of those allowed, seed 8', () => {
    const orders = allowedOrders(FOUR);
    let dearer = 0;
    for (let k = 0; k < 50; k++) {
      const costs = task.runners.map(() => [1, 2, 3, 4].map(() => next()));
      const cost = (way: readonly number[]): number => way.reduce((sum, inlet, i) => sum + costs[i]![inlet - 1]!, 0);
      const own = cost(assigned(task, costs, orders));
      expect(own).toBeCloseTo(Math.min(...orders[0]!.orders.map(cost)), 12);
      const free = cost(assigned(task, costs));
      expect(free).toBeLessThanOrEqual(own);
      if (free < own) dearer++;
    }
    expect(dearer).toBeGreaterThan(10);
  });
  it('pinned for a round, all in order, and not always the same, seed 8', () => {
    const allowed = allowedOrders(FOUR)[0]!.orders.map((way) => way.join());
    const seen = new Set<string>();
    for (let k = 0; k < 30; k++) {
      const own = pinnedByOrder(task, leastTurns(task, task), next)
        .runners.map((r) => r.pinnedInlet)
        .join();
      expect(allowed).toContain(own);
      seen.add(own);
    }
    expect(seen.size).toBeGreaterThan(2);
  });
  it('the router lays them so', () => {
    const { design: given, meshes } = loadLayout('classic', 'c1-i4-4-1-rear-down');
    // Of the two orders that an engine of four in a row has, and the third there could be, a free search finds one at most.
    for (const firingOrder of [
      [1, 3, 4, 2],
      [1, 2, 4, 3],
      [1, 2, 3, 4],
    ]) {
      const design = { ...given, engine: { firingOrder } };
      const { layouts } = router(design, meshes, { order: 'firing' }).round(1);
      const way = layouts[0]!.design.runners.map((r) => r.to.inlet!);
      expect(allowedOrders(design)[0]!.orders.map((w) => w.join())).toContain(way.join());
    }
  });
});
