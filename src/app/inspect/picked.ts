/** What the inspectors show: the things picked, without regard to which bend or straight of a runner it was. No React. */
import { placeOfThing, segmentsOf, type Thing } from '../../../shared/design/edit';
import type { Design } from '../../../shared/design/types';
import type { Ref } from '../session';

export type Picked =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'one kind'; readonly of: Thing['kind']; readonly things: readonly Thing[] }
  | { readonly kind: 'mixed'; readonly things: readonly Thing[] };

export function thingOf(ref: Ref): Thing {
  if (ref.kind === 'fastener') return { kind: 'fastener', id: ref.id, index: ref.index };
  return { kind: ref.kind, id: ref.id } as Thing;
}

/** Tooling is a tube's: both are one thing to look at. */
const shown = (thing: Thing, design: Design): Thing =>
  thing.kind === 'tooling' && Object.hasOwn(design.tubes, thing.id) ? { kind: 'tube', id: thing.id } : thing;

/** Things that the design no longer has are left out, each one counts once. */
export function pickedOf(selection: readonly Ref[], design: Design): Picked {
  const things = new Map<string, Thing>();
  for (const ref of selection) {
    const thing = shown(thingOf(ref), design);
    if (segmentsOf(design, thing)) things.set(placeOfThing(thing), thing);
  }
  const list = [...things.values()];
  const [first] = list;
  if (!first) return { kind: 'nothing' };
  return list.every(({ kind }) => kind === first.kind)
    ? { kind: 'one kind', of: first.kind, things: list }
    : { kind: 'mixed', things: list };
}

const NAMES: Record<Thing['kind'], readonly [one: string, many: string]> = {
  port: ['Port', 'ports'],
  flange: ['Flange', 'flanges'],
  fastener: ['Fastener', 'fasteners'],
  tube: ['Tube', 'tubes'],
  tooling: ['Tooling', 'toolings'],
  merge: ['Collector', 'collectors'],
  runner: ['Runner', 'runners'],
  group: ['Group', 'groups'],
  surrounding: ['Surrounding', 'surroundings'],
  service: ['Service point', 'service points'],
  sensor: ['Sensor', 'sensors'],
  engine: ['Engine', 'engines'],
  design: ['Design', 'designs'],
};

export const kindName = (kind: Thing['kind']): string => NAMES[kind][0];

/** `runner r1`, `stud 2 of f1`, `3 runners`, as in the middle of a sentence. */
export function nameOf(things: readonly Thing[]): string {
  const [thing] = things;
  if (!thing) return 'nothing';
  if (things.length > 1)
    return things.every((t) => t.kind === thing.kind)
      ? `${things.length} ${NAMES[thing.kind][1]}`
      : `${things.length} things`;
  if (thing.kind === 'engine' || thing.kind === 'design') return `the ${thing.kind}`;
  if (thing.kind === 'fastener') return `fastener ${thing.index + 1} of ${thing.id}`;
  return `${NAMES[thing.kind][0].toLowerCase()} ${thing.id}`;
}
