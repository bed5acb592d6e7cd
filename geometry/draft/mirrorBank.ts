/**
 * A second bank from the first: ports, flanges, merges, runners, their sensors and what they need, seen in a plane and given the numbers
 * of the cylinders opposite. Every rule that held for the bank alone holds for its image: lengths and bends are the same,
 * rotations turn the other way. mm, design frame.
 */
import { dimensionProblems } from '../../shared/design/dimensions';
import { LISTS, sameId } from '../../shared/design/ids';
import { MAX_LENGTH } from '../../shared/design/limits';
import { referenceProblems } from '../../shared/design/references';
import { DesignError, describe, insist, oneOf, type Refusal } from '../../shared/design/refusal';
import type { Design, Runner, Sensor } from '../../shared/design/types';
import { distance } from '../vector';
import { type BankParts, bankParts } from './bankParts';
import { chosenCylinders, oppositeOf } from './mirrorCylinders';
import { grownEngine } from './mirrorEngine';
import { reflectedClocks, reflectedService } from './mirrorFitted';
import { freeName, mirroredName, takenNames } from './mirrorNames';
import {
  type Plane,
  type Reflection,
  reflectedFlange,
  reflectedInlet,
  reflectedMerge,
  reflectedPort,
  reflectedSurrounding,
  reflection,
} from './reflect';

export type MirrorOptions = {
  /** Which of the engine's banks, from 1; default: every cylinder that has a port. */
  readonly bank?: number;
  /**
   * The cylinder opposite each one; default: by the engine's two banks, first to first and so on. Numbers that follow the
   * engine's own make it larger.
   */
  readonly cylinders?: ReadonlyMap<number, number>;
  /** Default: upright along the crankshaft through the origin. */
  readonly plane?: Plane;
  /** New ids for old ones; default: the cylinders' numbers in them changed. */
  readonly names?: ReadonlyMap<string, string>;
  /** Ids of surroundings to mirror too; default: the head stand-ins of the bank, and nothing else. */
  readonly surroundings?: readonly string[];
  /** Ids of service points to mirror too; default: spark plugs, where all cylinders are mirrored. */
  readonly service?: readonly string[];
};

const UPRIGHT: Plane = { point: [0, 0, 0], normal: [0, 1, 0] };

/** @throws DesignError naming the place where ids collide, a cylinder has no opposite, or parts are shared by both banks */
export function mirrorBank(design: Design, options: MirrorOptions = {}): Design {
  const chosen = chosenCylinders(design, options.bank);
  const opposite = oppositeOf(design, chosen, options.cylinders);
  const engine = grownEngine(design, opposite);
  const parts = bankParts(design, chosen, options);
  const across = reflection(options.plane ?? UPRIGHT);
  insist([...coincidences(design, parts, across), ...outOfBounds(parts, across)]);
  const names = namesOf(design, parts, opposite, options.names ?? new Map());
  const result = withImages(engine ? { ...design, engine } : design, parts, opposite, names, across);
  insist([...referenceProblems(result), ...dimensionProblems(result)]);
  return result;
}

/** A plane through the bank itself would lay the image over it. */
function coincidences(design: Design, parts: BankParts, across: Reflection): Refusal[] {
  return parts.ports.flatMap((port): Refusal[] => {
    const image = across.point(port.position);
    const tube = parts.runners.find((r) => 'port' in r.from && r.from.port === port.id)?.tube;
    const room = tube === undefined ? 0 : design.tubes[tube]!.outsideDiameter;
    const near = design.ports.find((p) => distance(p.position, image) < room);
    if (!near) return [];
    const found = `an image at ${describe(image)}, on port ${describe(near.id)}`;
    return [
      { path: `ports/${port.id}/position`, found, allowed: 'a plane midway between the banks: give a point of it' },
    ];
  });
}

/** A document holds no place so far out, so the design could not be read back. */
function outOfBounds(parts: BankParts, across: Reflection): Refusal[] {
  const places = [
    ...parts.ports.map((p) => p.position),
    ...parts.merges.map((m) => m.position),
    ...parts.runners.flatMap((r) => r.points ?? []),
    ...parts.service.map((s) => s.position),
  ];
  const inside = places.every((p) => across.point(p).every((x) => Math.abs(x) <= MAX_LENGTH));
  const found = `an image farther out than ${MAX_LENGTH} mm`;
  return inside ? [] : [{ path: 'plane', found, allowed: 'a plane nearer to the bank' }];
}

type Names = ReadonlyMap<string, string>;
type NamesByList = { readonly [List in (typeof LISTS)[number]]: Names };

function namesOf(design: Design, parts: BankParts, opposite: ReadonlyMap<number, number>, given: Names): NamesByList {
  const ids = new Set(LISTS.flatMap((list) => parts[list].map(({ id }) => id)));
  const stranger = [...given.keys()].find((id) => !ids.has(id));
  if (stranger !== undefined) insist([{ path: 'names', found: describe(stranger), allowed: oneOf(ids) }]);
  const renamed = (list: readonly { readonly id: string }[], there: readonly { readonly id: string }[] = []): Names => {
    const used = new Set(there.map(({ id }) => sameId(id)));
    return new Map(
      list.map(({ id }) => {
        const name = given.get(id) ?? freeName(mirroredName(id, opposite), id, used);
        used.add(sameId(name));
        return [id, name];
      }),
    );
  };
  const names: NamesByList = {
    ports: renamed(parts.ports, design.ports),
    flanges: renamed(parts.flanges, design.flanges),
    merges: renamed(parts.merges, design.merges),
    runners: renamed(parts.runners, design.runners),
    surroundings: renamed(parts.surroundings, design.surroundings),
    service: renamed(parts.service, design.service),
    sensors: renamed(parts.sensors, design.sensors),
  };
  insist(LISTS.flatMap((list) => takenNames(list, design[list] ?? [], names[list])));
  return names;
}

function withImages(
  design: Design,
  parts: BankParts,
  opposite: ReadonlyMap<number, number>,
  names: NamesByList,
  across: Reflection,
): Design {
  const images = parts.surroundings.map((s) => {
    const image = reflectedSurrounding(s, across);
    if (!image) {
      const allowed = 'a capsule, or a box and a plane square to an axis; draw its image by hand';
      throw new DesignError([{ path: `surroundings/${s.id}`, found: `a ${s.shape}`, allowed }]);
    }
    return { ...image, id: names.surroundings.get(s.id)! };
  });
  const flanges = parts.flanges.map((f) => ({
    ...reflectedFlange(f, across),
    id: names.flanges.get(f.id)!,
    ports: f.ports.map((p) => names.ports.get(p)!),
  }));
  const service = parts.service.map((s) => ({ ...reflectedService(s, across), id: names.service.get(s.id)! }));
  const clocks = reflectedClocks(design, parts.sensors, across);
  const sensors = parts.sensors.map(
    (s): Sensor => ({
      ...s,
      id: names.sensors.get(s.id)!,
      on: 'runner' in s.on ? { runner: names.runners.get(s.on.runner)! } : { merge: names.merges.get(s.on.merge)! },
      clock: clocks.get(s.id)!,
    }),
  );
  return {
    ...design,
    ports: [
      ...design.ports,
      ...parts.ports.map((p) => ({
        ...reflectedPort(p, across),
        id: names.ports.get(p.id)!,
        cylinder: opposite.get(p.cylinder)!,
      })),
    ],
    ...(flanges.length > 0 ? { flanges: [...(design.flanges ?? []), ...flanges] } : {}),
    merges: [
      ...design.merges,
      ...parts.merges.map((m) => ({ ...reflectedMerge(m, across), id: names.merges.get(m.id)! })),
    ],
    runners: [...design.runners, ...parts.runners.map((r) => imageOf(r, design, names, across))],
    ...(images.length > 0 ? { surroundings: [...(design.surroundings ?? []), ...images] } : {}),
    ...(service.length > 0 ? { service: [...(design.service ?? []), ...service] } : {}),
    ...(sensors.length > 0 ? { sensors: [...(design.sensors ?? []), ...sensors] } : {}),
  };
}

function imageOf(runner: Runner, design: Design, names: NamesByList, across: Reflection): Runner {
  const { from, to, points } = runner;
  const merge = design.merges.find((m) => m.id === to.merge)!;
  return {
    ...runner,
    id: names.runners.get(runner.id)!,
    from: 'port' in from ? { port: names.ports.get(from.port)! } : { merge: names.merges.get(from.merge)! },
    to: {
      ...to,
      merge: names.merges.get(to.merge)!,
      ...(to.inlet === undefined ? {} : { inlet: reflectedInlet(merge, to.inlet) }),
    },
    ...(points ? { points: points.map(across.point) } : {}),
  };
}
