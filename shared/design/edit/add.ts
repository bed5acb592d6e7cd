/**
 * Adds things to a design where they are near what is there already and of the same sizes, so that the next edit is small.
 * Each answers the design and what was added. The sizes of the very first are common practice and are meant to be changed.
 * mm, degrees.
 */
import type { Vec3 } from '../../vec3';
import type { Design, Fastener, Flange, Group, Merge, Port, Runner, RunnerStart, Tooling, Tube } from '../types';
import { checked, type Edited, refused } from './edited';
import { sizeOf } from './opening';
import { freeId, type Thing } from './things';

export type Added = { readonly edited: Edited; readonly thing: Thing };

const FIRST_PORT: Port = {
  id: 'p1',
  cylinder: 1,
  position: [0, 0, 0],
  direction: [0, 1, 0],
  up: [0, 0, 1],
  opening: { shape: 'round', diameter: 36 },
};
/** From one port to the next where only one is there: the bore and a wall between, or this. */
const BORE_PITCH = 95;
const BETWEEN_BORES = 12;

/** One bore pitch on from the last port, along the line from the one before it. */
export function addPort(design: Design): Added {
  const last = design.ports.at(-1);
  const before = design.ports.at(-2);
  const id = freeId(
    design.ports.map((port) => port.id),
    'p',
  );
  const pitch = design.engine?.bore ? design.engine.bore + BETWEEN_BORES : BORE_PITCH;
  const step: Vec3 = last && before ? minus(last.position, before.position) : [pitch, 0, 0];
  const moved = step.some((x) => x !== 0) ? step : ([pitch, 0, 0] as Vec3);
  const port: Port = last
    ? { ...last, id, position: plus(last.position, moved), cylinder: nextCylinder(design) }
    : { ...FIRST_PORT, id };
  return { edited: checked({ ...design, ports: [...design.ports, port] }), thing: { kind: 'port', id } };
}

/** The first cylinder without a port; where each has one, the last port's, as for two ports of one cylinder. */
function nextCylinder({ ports, engine }: Design): number {
  const most = engine?.cylinders ?? ports.length + 1;
  for (let n = 1; n <= most; n++) if (!ports.some((port) => port.cylinder === n)) return n;
  return ports.at(-1)!.cylinder;
}

/** For the ports that no flange has yet. */
export function addFlange(design: Design): Added {
  const flanges = design.flanges ?? [];
  const id = freeId(
    flanges.map((flange) => flange.id),
    'f',
  );
  const ports = design.ports.map((port) => port.id).filter((port) => !flanges.some((f) => f.ports.includes(port)));
  const flange: Flange = { id, ports, thickness: flanges.at(-1)?.thickness ?? 10 };
  return { edited: checked({ ...design, flanges: [...flanges, flange] }), thing: { kind: 'flange', id } };
}

/** Room between an opening's edge and the first stud, and between further ones. */
const STUD_FROM_OPENING = 14;
const STUD_STEP = 20;

/** Beside the flange's first port, or a step on from its last fastener. */
export function addFastener(design: Design, flange: string): Added {
  const at = design.flanges?.findIndex((entry) => entry.id === flange) ?? -1;
  const entry = design.flanges?.[at];
  if (!entry) {
    const edited = refused(`flanges/${flange}`, 'nothing there', 'a flange of this design');
    return { edited, thing: { kind: 'fastener', id: flange, index: 0 } };
  }
  const fasteners = entry.fasteners ?? [];
  const last = fasteners.at(-1);
  const port = design.ports.find((p) => p.id === entry.ports[0]);
  const out = port ? sizeOf(port.opening).width / 2 + STUD_FROM_OPENING : 0;
  const fastener: Fastener = last
    ? { ...last, position: plus(last.position, [STUD_STEP, 0, 0]) }
    : { position: plus(port?.position ?? [0, 0, 0], [-out, 0, 0]), kind: 'stud', thread: 'M8', hole: 9 };
  const next = { ...entry, fasteners: [...fasteners, fastener] };
  return {
    edited: checked({ ...design, flanges: design.flanges!.map((f, i) => (i === at ? next : f)) }),
    thing: { kind: 'fastener', id: flange, index: fasteners.length },
  };
}

const FIRST_TUBE: Tube = { outsideDiameter: 42.4, wall: 1.5 };
/** The radius is 1.5 × the outside diameter, as stock bends are sold (common practice). */
const FIRST_TOOLING: Tooling = {
  making: 'welded',
  centerlineRadius: 63.6,
  firstStraight: 20,
  betweenStraight: 10,
  lastStraight: 20,
  maxBendAngle: 170,
  maxBends: 4,
};

/** A tube with its tooling, like the last one. */
export function addTube(design: Design): Added {
  const taken = [...Object.keys(design.tubes), ...Object.keys(design.tooling)];
  const like = Object.keys(design.tubes).at(-1);
  const id = taken.length === 0 ? 'primary' : freeId(taken, 'tube ');
  const tube = (like !== undefined && design.tubes[like]) || FIRST_TUBE;
  const own = like !== undefined && Object.hasOwn(design.tooling, like) ? design.tooling[like] : undefined;
  const tooling = own ?? { ...FIRST_TOOLING, centerlineRadius: 1.5 * tube.outsideDiameter };
  return {
    edited: checked({
      ...design,
      tubes: { ...design.tubes, [id]: tube },
      tooling: { ...design.tooling, [id]: tooling },
    }),
    thing: { kind: 'tube', id },
  };
}

/** Out of the head and down from the ports, or downstream of the last one. */
export function addMerge(design: Design): Added {
  const id = freeId(
    design.merges.map((merge) => merge.id),
    'm',
  );
  const last = design.merges.at(-1);
  const centre = middle(design.ports.map((port) => port.position));
  const merge: Merge = last
    ? {
        id,
        inlets: 2,
        position: plus(last.position, [0, 0, -2 * last.length]),
        axis: last.axis,
        up: last.up,
        outletDiameter: last.outletDiameter,
        length: last.length,
      }
    : {
        id,
        inlets: Math.min(Math.max(design.ports.length, 1), 4),
        position: plus(centre, [0, 250, -350]),
        axis: [0, 0, -1],
        up: [1, 0, 0],
        outletDiameter: 60.3,
        length: 120,
      };
  return { edited: checked({ ...design, merges: [...design.merges, merge] }), thing: { kind: 'merge', id } };
}

/** From the first port or collector outlet that has none, to the first collector with an inlet free. Not laid yet. */
export function addRunner(design: Design): Added {
  const id = freeId(
    design.runners.map((runner) => runner.id),
    'r',
  );
  const thing: Thing = { kind: 'runner', id };
  const place = `runners/${id}`;
  const tube = Object.keys(design.tubes).find((name) => Object.hasOwn(design.tooling, name));
  if (tube === undefined)
    return { edited: refused(`${place}/tube`, 'no tube', 'a tube with tooling: add one first'), thing };
  const starts: RunnerStart[] = [
    ...design.ports
      .filter((port) => !design.runners.some((r) => 'port' in r.from && r.from.port === port.id))
      .map((port) => ({ port: port.id })),
    ...design.merges
      .filter(
        (merge) =>
          merge.outletJoint === undefined &&
          !design.runners.some((r) => 'merge' in r.from && r.from.merge === merge.id),
      )
      .map((merge) => ({ merge: merge.id })),
  ];
  if (starts.length === 0)
    return {
      edited: refused(`${place}/from`, 'a runner at every port and outlet', 'a free port or outlet: add a port first'),
      thing,
    };
  const open = design.merges.filter(
    (merge) => design.runners.filter((r) => r.to.merge === merge.id).length < merge.inlets,
  );
  for (const from of starts) {
    for (const merge of open) {
      const beside = design.runners.find((r) => r.to.merge === merge.id);
      const runner: Runner = {
        id,
        tube: beside?.tube ?? tube,
        ...(beside?.group !== undefined && { group: beside.group }),
        from,
        to: { merge: merge.id },
      };
      const edited = checked({ ...design, runners: [...design.runners, runner] });
      if (edited.ok) return { edited, thing };
    }
  }
  return {
    edited: refused(
      `${place}/to`,
      'no collector inlet that is free',
      'a free inlet: add a collector, or give one more inlets',
    ),
    thing,
  };
}

export function addGroup(design: Design): Added {
  const taken = Object.keys(design.groups);
  const id = taken.length === 0 ? 'primaries' : freeId(taken, 'group ');
  const group: Group = { length: null, tolerance: 1 };
  return { edited: checked({ ...design, groups: { ...design.groups, [id]: group } }), thing: { kind: 'group', id } };
}

export const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export function middle(points: readonly Vec3[]): Vec3 {
  if (points.length === 0) return [0, 0, 0];
  const sum = points.reduce<Vec3>(plus, [0, 0, 0]);
  return [sum[0] / points.length, sum[1] / points.length, sum[2] / points.length];
}
