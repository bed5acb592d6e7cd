/**
 * From the name of a thing to what can be measured of it: its surface, its centre or axis, its direction, its place along
 * a runner. mm, unit vectors, design frame.
 */
import type { Vec3 } from '../../shared/vec3';
import { type Meshes, treeOf } from '../check/meshes';
import { type Chain, chain } from '../clearance/chain';
import type { TriangleTree } from '../clearance/triangleTree';
import type { Centerline } from '../curve/centerline';
import { pointAt } from '../curve/pointAt';
import type { Pose } from '../header/merge';
import type { Header, ResolvedRunner } from '../header/resolve';
import { addScaled, lerp, sub, unit } from '../vector';
import { nearestStation, partStations } from './along';
import {
  boxConvex,
  type Convex,
  capsuleConvex,
  cylinderConvex,
  discConvex,
  frustumConvex,
  openingConvex,
  planeConvex,
  pointConvex,
} from './shapes';
import type { Thing } from './thing';

export type Surface = { readonly tube: Chain } | { readonly convex: Convex } | { readonly tree: TriangleTree };

export type Resolved = {
  readonly surface: Surface;
  /** An axis or a single place; null for a scan, which has neither. */
  readonly core: { readonly line: Chain } | { readonly at: Vec3 } | null;
  /** `twoWay`: an axis that points neither way. */
  readonly direction: { readonly way: Vec3; readonly twoWay: boolean } | null;
  /** The part of a runner's centerline that it is or lies on. */
  readonly along: { readonly runner: string; readonly from: number; readonly to: number } | null;
};

/** Why a thing cannot be measured, in words. */
export type Unmeasurable = { readonly missing: string };

export function resolveThing(header: Header, thing: Thing, meshes: Meshes): Resolved | Unmeasurable {
  switch (thing.kind) {
    case 'runner':
    case 'station': {
      const runner = header.runners.find((r) => r.runner.id === thing.id);
      if (!runner) return gone('runner', thing.id);
      if (!runner.centerline) return { missing: `Runner ${thing.id} has no way yet: lay it first.` };
      return thing.kind === 'station'
        ? place(runner, runner.centerline, thing.station)
        : stretch(runner, runner.centerline, thing);
    }
    case 'port': {
      const port = header.ports.get(thing.id);
      return port ? mouth(port.pose, openingConvex(port.pose, port.port.opening)) : gone('port', thing.id);
    }
    case 'fastener':
      return fastener(header, thing.id, thing.index);
    case 'merge':
      return merge(header, thing.id, thing.mouth);
    case 'surrounding':
      return surrounding(header, thing.id, meshes);
    case 'point':
      return point(header, thing.at, thing.on);
  }
}

const gone = (what: string, id: string): Unmeasurable => ({ missing: `There is no ${what} ${id} any more.` });

function place(r: ResolvedRunner, line: Centerline, station: number): Resolved {
  const { position, tangent } = pointAt(line, station);
  const on = Math.min(Math.max(station, 0), line.length);
  return {
    ...spot(position),
    direction: { way: tangent, twoWay: false },
    along: { runner: r.runner.id, from: on, to: on },
  };
}

function stretch(
  r: ResolvedRunner,
  line: Centerline,
  thing: Extract<Thing, { kind: 'runner' }>,
): Resolved | Unmeasurable {
  const part = partStations(line, thing);
  if (!part) {
    const what = thing.bend === undefined ? `straight ${(thing.straight ?? 0) + 1}` : `bend ${thing.bend + 1}`;
    return { missing: `Runner ${thing.id} has no ${what} any more.` };
  }
  const axis = chain(line, 0, part.from, part.to);
  const tube = chain(line, thing.line ? 0 : r.tubeRadius, part.from, part.to);
  if (!axis || !tube) return { missing: `This part of runner ${thing.id} has no length.` };
  return {
    surface: { tube },
    core: { line: axis },
    direction: part.way && { way: part.way, twoWay: false },
    along: { runner: thing.id, from: part.from, to: part.to },
  };
}

const spot = (at: Vec3): Resolved => ({
  surface: { convex: pointConvex(at) },
  core: { at },
  direction: null,
  along: null,
});

const mouth = ({ position, direction }: Pick<Pose, 'position' | 'direction'>, convex: Convex): Resolved => ({
  surface: { convex },
  core: { at: position },
  direction: { way: direction, twoWay: false },
  along: null,
});

/** Its hole, flat in the flange's outer face: what is left of the flange between holes is measured so. */
function fastener(header: Header, id: string, index: number): Resolved | Unmeasurable {
  const flange = header.design.flanges?.find((f) => f.id === id);
  const found = flange?.fasteners?.[index];
  const pose = flange && header.ports.get(flange.ports[0] ?? '')?.pose;
  if (!found || !pose) return gone('fastener', `${index + 1} of flange ${id}`);
  const { position } = found;
  const direction = pose.direction;
  return {
    ...mouth({ position, direction }, discConvex(position, direction, found.hole / 2)),
    direction: { way: direction, twoWay: true },
  };
}

function merge(header: Header, id: string, which: number | 'outlet' | undefined): Resolved | Unmeasurable {
  const found = header.merges.get(id);
  if (!found) return gone('collector', id);
  const { body, inlets, outlet, inletOutsideDiameter } = found;
  if (which === undefined) {
    const axis = straight(body.position, addScaled(body.position, body.axis, body.length));
    return {
      surface: { convex: frustumConvex(body) },
      core: { line: axis },
      direction: { way: body.axis, twoWay: false },
      along: null,
    };
  }
  const pose = which === 'outlet' ? outlet : inlets[which - 1];
  if (!pose) return gone('inlet', `${which} of collector ${id}`);
  const radius = which === 'outlet' ? body.endRadius : inletOutsideDiameter / 2;
  return mouth(pose, discConvex(pose.position, pose.direction, radius));
}

function surrounding(header: Header, id: string, meshes: Meshes): Resolved | Unmeasurable {
  const found = header.surroundings.find((s) => s.id === id);
  if (!found) return gone('surrounding', id);
  if (found.shape === 'box')
    return {
      ...spot(lerp(found.min, found.max, 0.5)),
      surface: { convex: boxConvex(found) },
    };
  if (found.shape === 'capsule') {
    const way = unit(sub(found.b, found.a));
    const isBall = way.every((x) => x === 0);
    return {
      surface: { convex: capsuleConvex(found) },
      core: isBall ? { at: found.a } : { line: straight(found.a, found.b) },
      direction: isBall ? null : { way, twoWay: true },
      along: null,
    };
  }
  if (found.shape === 'cylinder')
    return {
      surface: { convex: cylinderConvex(found) },
      core: { line: straight(found.a, found.b) },
      direction: { way: unit(sub(found.b, found.a)), twoWay: true },
      along: null,
    };
  if (found.shape === 'plane')
    return {
      ...spot(found.position),
      surface: { convex: planeConvex(found) },
      direction: { way: unit(found.normal), twoWay: false },
    };
  const soup = meshes.get(found.file);
  if (!soup) return { missing: `The mesh ${found.file} of ${id} is not open: open it beside the design.` };
  return { surface: { tree: treeOf(found, soup) }, core: null, direction: null, along: null };
}

/** @param on a path such as `runner/r1`, so that two places on one runner can be measured along it */
function point(header: Header, at: Vec3, on?: string): Resolved {
  const line = header.runners.find((r) => on === `runner/${r.runner.id}`);
  if (!line?.centerline) return spot(at);
  const station = nearestStation(line.centerline, at);
  return { ...spot(at), along: { runner: line.runner.id, from: station, to: station } };
}

/** A line as a chain without thickness. */
function straight(from: Vec3, to: Vec3): Chain {
  const points = Float64Array.from([...from, ...to]);
  const way = unit(sub(to, from));
  const length = Math.hypot(...sub(to, from));
  const tangents = Float64Array.from([...way, ...way]);
  const link = {
    points,
    tangents,
    count: 1,
    radius: 0,
    step: 0,
    station: 0,
    length,
    isFirst: true,
    isLast: true,
  };
  const end = (centre: Vec3, normal: Vec3) => ({ centre, normal, radius: 0 });
  return { tubeRadius: 0, links: [link], ends: [end(from, [-way[0], -way[1], -way[2]]), end(to, way)] };
}
