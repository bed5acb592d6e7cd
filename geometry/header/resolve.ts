/**
 * The design with its defaults filled in and its places worked out: what every measurement starts from.
 * Derived, never saved. Expects a document that `parseDesign` accepted: references exist, numbers are finite.
 */
import type { Design, Group, Merge, Port, Runner, Surrounding, Tooling, Tube } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { type Centerline, centerline } from '../curve/centerline';
import { reject, unit } from '../vector';
import { type MergeGeometry, mergeGeometry, type Pose } from './merge';

export type ResolvedPort = { readonly port: Port; readonly pose: Pose; readonly bundle: number };

export type ResolvedMerge = MergeGeometry & {
  readonly merge: Merge;
  readonly pitch: number;
  /** How far from the inlet plane its tubes may touch, mm along their centerlines. */
  readonly bundle: number;
  readonly inletOutsideDiameter: number;
  readonly wall: number;
  readonly material: string;
};

export type ResolvedRunner = {
  readonly runner: Runner;
  readonly tube: Tube;
  readonly tooling: Tooling;
  /** Half the outside diameter. */
  readonly tubeRadius: number;
  readonly start: Pose;
  /** Length in the head before the start; 0 from a merge. */
  readonly lengthInHead: number;
  /** Inlet direction and place; null until an inlet that exists is chosen. */
  readonly end: Pose | null;
  /** Null until routed, or where radii and points do not match. */
  readonly centerline: Centerline | null;
};

export type Header = {
  readonly design: Design;
  readonly ports: ReadonlyMap<string, ResolvedPort>;
  readonly merges: ReadonlyMap<string, ResolvedMerge>;
  readonly runners: readonly ResolvedRunner[];
  readonly groups: ReadonlyMap<string, Group>;
  readonly surroundings: readonly Surrounding[];
  readonly tubeToTube: number;
};

export const DEFAULT_MATERIAL = 'mild-steel';

/** @param previous a header of a design that shares parts with this one: what follows from those alone is kept */
export function resolveHeader(design: Design, previous?: Header): Header {
  const ports = new Map(
    design.ports.map((port) => {
      const kept = previous?.ports.get(port.id);
      return [port.id, kept?.port === port ? kept : resolvePort(port)];
    }),
  );
  const merges = new Map(
    design.merges.map((merge) => [merge.id, resolveMerge(design, merge, previous?.merges.get(merge.id))]),
  );
  const known = new Map(previous?.runners.map((r) => [r.runner.id, r]));
  const runners = design.runners.map((runner) =>
    resolveRunner(design, runner, ports, merges, known.get(runner.id), previous),
  );
  return {
    design,
    ports,
    merges,
    runners,
    groups: new Map(Object.entries(design.groups)),
    surroundings: design.surroundings ?? [],
    tubeToTube: design.clearance?.tubeToTube ?? 0,
  };
}

function resolvePort(port: Port): ResolvedPort {
  const direction = unit(port.direction);
  const up = unit(reject(port.up, direction));
  return { port, pose: { position: port.position, direction, up }, bundle: port.bundle ?? 0 };
}

/** A merge that nothing enters still has a place and a body: its inlets are then as wide as the outlet over their number. */
function resolveMerge(design: Design, merge: Merge, kept?: ResolvedMerge): ResolvedMerge {
  const entering = design.runners.filter((r) => r.to.merge === merge.id).map((r) => design.tubes[r.tube]!);
  const widest =
    Math.max(0, ...entering.map((t) => t.outsideDiameter)) || merge.outletDiameter / Math.sqrt(merge.inlets);
  const pitch = merge.pitch ?? widest;
  const wall = merge.wall ?? entering[0]?.wall ?? 1.5;
  const material = merge.material ?? entering[0]?.material ?? DEFAULT_MATERIAL;
  if (kept?.merge === merge && kept.inletOutsideDiameter === widest && kept.wall === wall && kept.material === material)
    return kept;
  const bundle = merge.bundle ?? 1.5 * widest;
  return {
    ...mergeGeometry(merge, pitch, widest),
    merge,
    pitch,
    bundle,
    inletOutsideDiameter: widest,
    wall,
    material,
  };
}

function resolveRunner(
  design: Design,
  runner: Runner,
  ports: ReadonlyMap<string, ResolvedPort>,
  merges: ReadonlyMap<string, ResolvedMerge>,
  kept?: ResolvedRunner,
  previous?: Header,
): ResolvedRunner {
  const tube = design.tubes[runner.tube]!;
  const tooling = design.tooling[runner.tube]!;
  const fromPort = 'port' in runner.from ? ports.get(runner.from.port)! : null;
  const start = fromPort ? fromPort.pose : merges.get((runner.from as { merge: string }).merge)!.outlet;
  if (
    kept?.runner === runner &&
    kept.tube === tube &&
    kept.tooling === tooling &&
    kept.start === start &&
    previous?.merges.get(runner.to.merge) === merges.get(runner.to.merge)
  )
    return kept;
  const inlet = runner.to.inlet;
  const end = inlet === undefined ? null : (merges.get(runner.to.merge)!.inlets[inlet - 1] ?? null);
  return {
    runner,
    tube,
    tooling,
    tubeRadius: tube.outsideDiameter / 2,
    start,
    lengthInHead: fromPort?.port.lengthInHead ?? 0,
    end,
    centerline: runner.points ? centerline(runner.points, radiiOf(runner, runner.points, tooling)) : null,
  };
}

export function radiiOf(runner: Runner, points: readonly Vec3[], tooling: Tooling): readonly number[] {
  return runner.radii ?? points.slice(1, -1).map(() => tooling.centerlineRadius);
}
