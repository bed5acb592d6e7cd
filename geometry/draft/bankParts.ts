/** What belongs to some cylinders alone: their ports, the flanges that hold no others, and everything down the flow. */
import { DesignError, describe, oneOf, type Refusal } from '../../shared/design/refusal';
import type { Design, Flange, Merge, Port, Runner, Sensor, ServicePoint, Surrounding } from '../../shared/design/types';
import { sensorsOn, usualService } from './mirrorFitted';

export type BankParts = {
  readonly ports: readonly Port[];
  readonly flanges: readonly Flange[];
  readonly merges: readonly Merge[];
  readonly runners: readonly Runner[];
  readonly surroundings: readonly Surrounding[];
  readonly service: readonly ServicePoint[];
  readonly sensors: readonly Sensor[];
};

/** Ids of what stands around and what must stay reachable, to take instead of the usual. */
export type Wanted = { readonly surroundings?: readonly string[]; readonly service?: readonly string[] };

/** @throws DesignError where a flange or merge is shared with other cylinders, or a thing named is not there */
export function bankParts(design: Design, cylinders: readonly number[], wanted: Wanted = {}): BankParts {
  const ports = design.ports.filter((p) => cylinders.includes(p.cylinder));
  const portIds = new Set(ports.map((p) => p.id));
  const mergeIds = new Set<string>();
  const runnerIds = new Set<string>();
  // Merges flow one way, so as many rounds as there are merges reach the last.
  for (let round = 0; round <= design.merges.length; round++)
    for (const { id, from, to } of design.runners)
      if ('port' in from ? portIds.has(from.port) : mergeIds.has(from.merge)) {
        runnerIds.add(id);
        mergeIds.add(to.merge);
      }
  const flanges = (design.flanges ?? []).filter((f) => f.ports.some((p) => portIds.has(p)));
  const merges = design.merges.filter((m) => mergeIds.has(m.id));
  const shared: Refusal[] = [
    ...flanges.flatMap((f) => {
      const other = f.ports.find((p) => !portIds.has(p));
      return other === undefined ? [] : [strangerAt(`flanges/${f.id}`, `port ${describe(other)}`)];
    }),
    ...merges.flatMap((m) => {
      const other = design.runners.find((r) => r.to.merge === m.id && !runnerIds.has(r.id));
      return other === undefined ? [] : [strangerAt(`merges/${m.id}`, `runner ${describe(other.id)}`)];
    }),
  ];
  if (shared.length > 0) throw new DesignError(shared);
  const runners = design.runners.filter((r) => runnerIds.has(r.id));
  return {
    ports,
    flanges,
    merges,
    runners,
    surroundings: wanted.surroundings
      ? named('surroundings', design.surroundings, wanted.surroundings)
      : usualSurroundings(design, cylinders),
    service: wanted.service ? named('service', design.service, wanted.service) : usualService(design, cylinders),
    sensors: sensorsOn(design, runners, merges),
  };
}

const strangerAt = (path: string, other: string): Refusal => ({
  path,
  found: `${other}, of another bank`,
  allowed: 'parts of the mirrored bank alone; split it, or mirror all its cylinders',
});

/** Unless said, the stand-in for a head goes with its bank where one can tell: where the design has one for each flange. */
export function usualSurroundings(design: Design, cylinders: readonly number[]): readonly Surrounding[] {
  const all = design.ports.every((p) => cylinders.includes(p.cylinder));
  return all ? (design.surroundings ?? []).filter((s) => s.kind === 'head') : [];
}

function named<T extends { readonly id: string }>(
  list: 'surroundings' | 'service',
  all: readonly T[] = [],
  wanted: readonly string[],
): readonly T[] {
  return wanted.map((id) => {
    const found = all.find((s) => s.id === id);
    if (!found) throw new DesignError([{ path: list, found: describe(id), allowed: oneOf(all.map((s) => s.id)) }]);
    return found;
  });
}
