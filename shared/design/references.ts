/**
 * What the parts of a document owe each other: ids once, names that exist, one runner to a port or inlet, merges that
 * flow one way. Expects a document of the right shape.
 */

import { isToolKind, TOOL_KINDS } from '../stock/tools';
import { ID_RULE, isGoodId, LISTS, pathOf, sameId } from './ids';
import { MAX_ENTRIES } from './limits';
import { describe, oneOf, type Refusal } from './refusal';
import type { Design } from './types';

const RECORDS = ['tubes', 'tooling', 'groups'] as const;

export function referenceProblems(design: Design): Refusal[] {
  return [
    ...idProblems(design),
    ...cylinderProblems(design),
    ...flangeProblems(design),
    ...runnerProblems(design),
    ...sharingProblems(design),
    ...crowdingProblems(design),
    ...cycleProblems(design),
    ...outletProblems(design),
    ...sensorProblems(design),
    ...toolProblems(design),
    ...stockProblems(design),
  ];
}

function idProblems(design: Design): Refusal[] {
  const problems: Refusal[] = [];
  /** The names of one list's or record's entries. */
  const look = (ids: readonly string[], pathAt: (i: number) => string, what: string, where: string): void => {
    const seen = new Set<string>();
    ids.forEach((id, i) => {
      const path = pathAt(i);
      if (!isGoodId(id)) problems.push({ path, found: describe(id), allowed: ID_RULE });
      else if (seen.has(sameId(id))) {
        problems.push({
          path,
          found: `${describe(id)} again`,
          allowed: `${what} not yet used in ${where}, capitals or not`,
        });
      }
      seen.add(sameId(id));
    });
  };
  for (const list of LISTS) {
    const ids = (design[list] ?? []).map(({ id }) => id);
    look(ids, (i) => `${list}/${i}/id`, 'an id', list);
  }
  for (const record of RECORDS) {
    const names = Object.keys(design[record]);
    if (names.length > MAX_ENTRIES) {
      problems.push({ path: record, found: `${names.length} entries`, allowed: `at most ${MAX_ENTRIES}` });
    }
    look(names, (i) => pathOf(design, [record, names[i]!]), 'a name', record);
  }
  return problems;
}

/** One name for each bar and bend of the shelf, so that a plan can tell them apart. */
function stockProblems({ workshop }: Design): Refusal[] {
  const { bars = [], bends = [] } = workshop ?? {};
  const named = [
    ...bars.map(({ id }, i) => ({ id, path: `workshop/bars/${i}/id` })),
    ...bends.map(({ id }, i) => ({ id, path: `workshop/bends/${i}/id` })),
  ];
  const seen = new Set<string>();
  return named.flatMap(({ id, path }): Refusal[] => {
    const again = seen.has(sameId(id));
    seen.add(sameId(id));
    if (!isGoodId(id)) return [{ path, found: describe(id), allowed: ID_RULE }];
    return again ? [{ path, found: `${describe(id)} again`, allowed: 'an id that no other bar or bend has' }] : [];
  });
}

function cylinderProblems({ engine, ports, ...design }: Design): Refusal[] {
  const problems: Refusal[] = [];
  const most = engine?.cylinders;
  const once = (numbers: readonly number[], path: (i: number) => string): void => {
    numbers.forEach((n, i) => {
      const again = numbers.indexOf(n) < i;
      if (again) problems.push({ path: path(i), found: `cylinder ${n} again`, allowed: 'each cylinder once' });
      else if (most !== undefined && n > most) {
        problems.push({ path: path(i), found: String(n), allowed: `a cylinder from 1 to ${most}` });
      }
    });
  };
  const order = engine?.firingOrder;
  if (order) {
    once(order, (i) => `engine/firingOrder/${i}`);
    if (most !== undefined && order.length !== most) {
      problems.push({
        path: 'engine/firingOrder',
        found: describe(order),
        allowed: `all ${most} cylinders, each once`,
      });
    }
  }
  const banks = engine?.banks ?? [];
  const places = banks.flatMap((bank, b) => bank.map((_, i) => `engine/banks/${b}/${i}`));
  once(banks.flat(), (i) => places[i]!);
  ports.forEach((port, i) => {
    if (most !== undefined && port.cylinder > most) {
      const path = pathOf({ ...design, ports }, ['ports', i, 'cylinder']);
      problems.push({ path, found: String(port.cylinder), allowed: `a cylinder from 1 to ${most}` });
    }
  });
  return problems;
}

function flangeProblems(design: Design): Refusal[] {
  const known = new Set(design.ports.map((port) => port.id));
  return (design.flanges ?? []).flatMap((flange, i) =>
    flange.ports.flatMap((port, k): Refusal[] => {
      const path = pathOf(design, ['flanges', i, 'ports', k]);
      if (!known.has(port)) return [{ path, found: describe(port), allowed: oneOf(known) }];
      if (flange.ports.indexOf(port) < k)
        return [{ path, found: `${describe(port)} again`, allowed: 'each port once' }];
      return [];
    }),
  );
}

function runnerProblems(design: Design): Refusal[] {
  const ports = new Set(design.ports.map((port) => port.id));
  const merges = new Map(design.merges.map((merge) => [merge.id, merge]));
  const problems: Refusal[] = [];
  design.runners.forEach((runner, i) => {
    const at = (...rest: (string | number)[]): string => pathOf(design, ['runners', i, ...rest]);
    const known = (place: readonly string[], name: string, names: Iterable<string>, has: boolean): void => {
      if (!has) problems.push({ path: at(...place), found: describe(name), allowed: oneOf(names) });
    };
    known(['tube'], runner.tube, Object.keys(design.tubes), Object.hasOwn(design.tubes, runner.tube));
    if (Object.hasOwn(design.tubes, runner.tube) && !Object.hasOwn(design.tooling, runner.tube)) {
      const allowed = `a tube that has an entry in tooling too: ${oneOf(Object.keys(design.tooling))}`;
      problems.push({ path: at('tube'), found: describe(runner.tube), allowed });
    }
    if (runner.group !== undefined) {
      known(['group'], runner.group, Object.keys(design.groups), Object.hasOwn(design.groups, runner.group));
    }
    if ('port' in runner.from && 'merge' in runner.from) {
      problems.push({ path: at('from'), found: 'a port and a merge', allowed: 'one of the two' });
    } else if ('port' in runner.from) known(['from', 'port'], runner.from.port, ports, ports.has(runner.from.port));
    else known(['from', 'merge'], runner.from.merge, merges.keys(), merges.has(runner.from.merge));

    const merge = merges.get(runner.to.merge);
    known(['to', 'merge'], runner.to.merge, merges.keys(), merge !== undefined);
    if (merge && runner.to.inlet !== undefined && runner.to.inlet > merge.inlets) {
      const allowed = `a whole number from 1 to ${merge.inlets}, the inlets of ${describe(merge.id)}`;
      problems.push({ path: at('to', 'inlet'), found: String(runner.to.inlet), allowed });
    }
  });
  return problems;
}

/** One runner to a port, a merge's outlet, an inlet. */
function sharingProblems(design: Design): Refusal[] {
  const problems: Refusal[] = [];
  const taken = new Map<string, string>();
  design.runners.forEach(({ id, from, to }, i) => {
    const take = (place: string, ...field: string[]): void => {
      const other = taken.get(place);
      if (other === undefined) {
        taken.set(place, id);
        return;
      }
      const found = `${place}, where runner ${describe(other)} is`;
      problems.push({ path: pathOf(design, ['runners', i, ...field]), found, allowed: 'one runner there' });
    };
    if ('port' in from) take(`port ${describe(from.port)}`, 'from', 'port');
    else take(`the outlet of ${describe(from.merge)}`, 'from', 'merge');
    if (to.inlet !== undefined) take(`inlet ${to.inlet} of ${describe(to.merge)}`, 'to', 'inlet');
  });
  return problems;
}

function crowdingProblems(design: Design): Refusal[] {
  return design.merges.flatMap((merge, i): Refusal[] => {
    const entering = design.runners.filter((runner) => runner.to.merge === merge.id).length;
    if (entering <= merge.inlets) return [];
    const found = `${merge.inlets} for ${entering} runners`;
    return [
      { path: pathOf(design, ['merges', i, 'inlets']), found, allowed: `at least ${entering}, or fewer runners` },
    ];
  });
}

/** Follows the flow from each merge; it has at most one runner leaving it by now, or sharingProblems has said so. */
function cycleProblems(design: Design): Refusal[] {
  const next = new Map<string, { merge: string; runner: number }>();
  design.runners.forEach(({ from, to }, runner) => {
    if ('merge' in from && !next.has(from.merge)) next.set(from.merge, { merge: to.merge, runner });
  });
  const done = new Set<string>();
  const problems: Refusal[] = [];
  for (const { id } of design.merges) {
    const way: string[] = [];
    let at: string | undefined = id;
    while (at !== undefined && !done.has(at) && !way.includes(at)) {
      way.push(at);
      at = next.get(at)?.merge;
    }
    if (at !== undefined && way.includes(at)) {
      const circle = [...way.slice(way.indexOf(at)), at];
      const path = pathOf(design, ['runners', next.get(way.at(-1)!)!.runner, 'to', 'merge']);
      problems.push({
        path,
        found: `a circle, ${circle.slice(0, 6).join(' → ')}`,
        allowed: 'flow that never comes back to a merge',
      });
    }
    for (const merge of way) done.add(merge);
  }
  return problems;
}

function outletProblems(design: Design): Refusal[] {
  return design.merges.flatMap((merge, i): Refusal[] => {
    const follower = design.runners.find(({ from }) => 'merge' in from && from.merge === merge.id);
    if (merge.outletJoint === undefined || !follower) return [];
    const path = pathOf(design, ['merges', i, 'outletJoint']);
    return [{ path, found: describe(merge.outletJoint), allowed: `none, as runner ${describe(follower.id)} follows` }];
  });
}

function sensorProblems(design: Design): Refusal[] {
  const runners = new Set(design.runners.map(({ id }) => id));
  const merges = new Set(design.merges.map(({ id }) => id));
  return (design.sensors ?? []).flatMap(({ on }, i): Refusal[] => {
    if ('runner' in on && 'merge' in on)
      return [
        { path: pathOf(design, ['sensors', i, 'on']), found: 'a runner and a collector', allowed: 'one of the two' },
      ];
    const [field, name, known] =
      'runner' in on ? (['runner', on.runner, runners] as const) : (['merge', on.merge, merges] as const);
    if (known.has(name)) return [];
    return [{ path: pathOf(design, ['sensors', i, 'on', field]), found: describe(name), allowed: oneOf(known) }];
  });
}

function toolProblems({ access }: Design): Refusal[] {
  return (access?.tools ?? []).flatMap((name, i): Refusal[] =>
    isToolKind(name) ? [] : [{ path: `access/tools/${i}`, found: describe(name), allowed: oneOf(TOOL_KINDS) }],
  );
}
