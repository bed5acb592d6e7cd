/** Small changes that break a layout, as data: recorded with what an independent checker found, replayed in the test. */
import { rotate, unit } from '../../geometry';
import { shiftedSurrounding } from '../../shared/design/edit';
import type { Design, Merge, Runner, Surrounding, Tooling } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';

export type Change =
  | { readonly kind: 'move point'; readonly runner: string; readonly point: number; readonly by: Vec3 }
  | { readonly kind: 'move runner'; readonly runner: string; readonly by: Vec3 }
  /** Moves a point toward the next one: a leg shorter, another longer. */
  | { readonly kind: 'slide point'; readonly runner: string; readonly point: number; readonly by: number }
  | { readonly kind: 'swap inlets'; readonly runners: readonly [string, string] }
  | { readonly kind: 'move merge'; readonly merge: string; readonly by: Vec3 }
  | { readonly kind: 'tilt merge'; readonly merge: string; readonly degrees: number }
  | { readonly kind: 'move surrounding'; readonly surrounding: string; readonly by: Vec3 }
  | { readonly kind: 'set clearance'; readonly surrounding: string; readonly to: number }
  | { readonly kind: 'set tube to tube'; readonly to: number }
  | { readonly kind: 'set tooling'; readonly tube: string; readonly field: keyof Tooling; readonly to: number }
  | { readonly kind: 'set group'; readonly group: string; readonly length: number | null; readonly tolerance: number };

const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

export function mutate(design: Design, change: Change): Design {
  const runners = (id: string, f: (r: Runner) => Runner): Design => ({
    ...design,
    runners: design.runners.map((r) => (r.id === id ? f(r) : r)),
  });
  const points = (id: string, f: (p: Vec3, i: number, all: readonly Vec3[]) => Vec3): Design =>
    runners(id, (r) => ({ ...r, points: r.points!.map(f) }));
  const merges = (id: string, f: (m: Merge) => Merge): Design => ({
    ...design,
    merges: design.merges.map((m) => (m.id === id ? f(m) : m)),
  });
  const surroundings = (id: string, f: (s: Surrounding) => Surrounding): Design => ({
    ...design,
    surroundings: design.surroundings!.map((s) => (s.id === id ? f(s) : s)),
  });
  switch (change.kind) {
    case 'move point':
      return points(change.runner, (p, i) => (i === change.point ? plus(p, change.by) : p));
    case 'move runner':
      return points(change.runner, (p) => plus(p, change.by));
    case 'slide point':
      return points(change.runner, (p, i, all) => (i === change.point ? toward(p, all[i + 1]!, change.by) : p));
    case 'swap inlets': {
      const [a, b] = change.runners.map((id) => design.runners.find((r) => r.id === id)!);
      const to = new Map([
        [a!.id, b!.to],
        [b!.id, a!.to],
      ]);
      return { ...design, runners: design.runners.map((r) => ({ ...r, to: to.get(r.id) ?? r.to })) };
    }
    case 'move merge':
      return merges(change.merge, (m) => ({ ...m, position: plus(m.position, change.by) }));
    case 'tilt merge':
      return merges(change.merge, (m) => ({
        ...m,
        axis: rotate(m.axis, unit(m.up), (change.degrees * Math.PI) / 180),
      }));
    case 'move surrounding':
      return surroundings(change.surrounding, (s) => shifted(s, change.by));
    case 'set clearance':
      return surroundings(change.surrounding, (s) => ({ ...s, clearance: change.to }));
    case 'set tube to tube':
      return { ...design, clearance: { tubeToTube: change.to } };
    case 'set tooling': {
      const tooling = { ...design.tooling[change.tube]!, [change.field]: change.to };
      return { ...design, tooling: { ...design.tooling, [change.tube]: tooling } };
    }
    case 'set group': {
      const { length, tolerance } = change;
      return { ...design, groups: { ...design.groups, [change.group]: { length, tolerance } } };
    }
  }
}

function toward(p: Vec3, q: Vec3, by: number): Vec3 {
  const d = unit([q[0] - p[0], q[1] - p[1], q[2] - p[2]]);
  return plus(p, [d[0] * by, d[1] * by, d[2] * by]);
}

function shifted(s: Surrounding, by: Vec3): Surrounding {
  return shiftedSurrounding(s, by);
}
