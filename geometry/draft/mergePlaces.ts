/**
 * Where merges may stand, one proposal after another, likeliest first: the collectors where the form wants them, turned
 * about their axes; the first merges on the way to them from the middle of their ports, side by side. mm, design frame.
 */
import type { Design, Merge, Port } from '../../shared/design/types';
import type { CollectorForm, EngineForm, TubeForm } from '../../shared/engine/form';
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, anySquareTo, cross, lerp, norm, reject, scale, sub, unit } from '../vector';
import type { Joining } from './joining';

/** Inlets lean toward the axis, degrees: a gentle joint, and room between neighbours behind it. Common practice. */
const CONVERGENCE = 7;
/** How far balance may move and tilt a first merge from where it was proposed, mm and degrees. */
const ROOM = 90;
const TILT = 25;
/** How sharply a first merge's axis takes the collector's direction: 0 heads for the collector, 1 is parallel to it. */
const BLENDS = [0.5, 0.15, 0.85];
/** How far along the way from the ports to the collector. */
const SHARES = [0.5, 0.36, 0.64];

type Turn = 0 | 1;
export type MergePlaces = readonly Merge[];

/** At most a few dozen; each is a list of all merges. */
export function mergePlaces(
  form: EngineForm,
  joining: readonly Joining[],
  parts: Omit<Design, 'merges'>,
): MergePlaces[] {
  const turns: readonly Turn[] = [0, 1];
  const staged = joining.some((j) => j.first.length > 0);
  if (!staged) return turns.map((turn) => form.collectors.map((c, i) => collectorAt(form, c, joining[i]!, turn)));
  const sides: readonly Side[] = ['along', 'out'];
  return SHARES.flatMap((share) =>
    BLENDS.flatMap((blend) =>
      sides.flatMap((side) =>
        [1, -1].map((order) =>
          form.collectors.flatMap((c, i) => {
            const last = collectorAt(form, c, joining[i]!, 0);
            return [...firstMerges(form, joining[i]!, last, parts, { share, blend, side, order }), last];
          }),
        ),
      ),
    ),
  );
}

function collectorAt(form: EngineForm, collector: CollectorForm, { collector: id, first }: Joining, turn: Turn): Merge {
  const inlets = first.length || collector.cylinders.length;
  const axis = unit(collector.axis);
  return {
    ...patternOf(inlets, axis, turn),
    id,
    inlets,
    position: collector.position,
    axis: collector.axis,
    outletDiameter: collector.outletDiameter,
    length: collector.length,
    ...materialOf(first.length > 0 ? form.secondary! : form.primary),
    ...(collector.outletJoint ? { outletJoint: collector.outletJoint } : {}),
  };
}

/** Two lie side by side along the crankshaft, more in a ring; the other turn puts the next inlet there. */
function patternOf(inlets: number, axis: Vec3, turn: Turn): Pick<Merge, 'pattern' | 'up' | 'convergence'> {
  const along = reject([1, 0, 0], axis);
  const v = norm(along) > 0.2 ? unit(along) : unit(reject([0, 1, 0], axis));
  // A merge's v is axis × up.
  const up = cross(v, axis);
  if (inlets < 2) return { up };
  const angle = turn * (inlets === 2 ? Math.PI / 2 : Math.PI / inlets);
  return {
    pattern: inlets === 2 ? 'line' : 'ring',
    up: addScaled(scale(up, Math.cos(angle)), v, Math.sin(angle)),
    convergence: CONVERGENCE,
  };
}

type Side = 'along' | 'out';
type Proposal = { readonly share: number; readonly blend: number; readonly side: Side; readonly order: number };

function firstMerges(
  form: EngineForm,
  { first }: Joining,
  last: Merge,
  parts: Omit<Design, 'merges'>,
  { share, blend, side, order }: Proposal,
): Merge[] {
  const { outsideDiameter: primary } = form.primary.tube;
  const { tube: secondary, tooling } = form.secondary!;
  const length = Math.round(2 * secondary.outsideDiameter);
  const axis = unit(last.axis);
  const wide = Math.max(2.2 * primary, secondary.outsideDiameter) + form.tubeToTube + 10;
  const hubs = first.map(({ cylinders }) => hubOf(form, cylinders, parts.ports));
  const hub = scale(hubs.reduce(add), 1 / hubs.length);
  // Room behind the collector for the secondaries' last bends.
  const behind = addScaled(last.position, axis, -(tooling.lastStraight + tooling.centerlineRadius));
  return first.map(({ merge: id, cylinders }, k): Merge => {
    const middle = lerp(lerp(hub, hubs[k]!, 0.5), behind, share);
    const heading = unit(sub(last.position, middle));
    const w = unit(lerp(heading, axis, blend));
    const across = sideways(side, w, outOf(parts.ports, cylinders));
    const offset = order * (k - (first.length - 1) / 2) * wide;
    const centre = addScaled(addScaled(middle, w, -length / 2), across, offset);
    return {
      ...patternOf(cylinders.length, w, 0),
      id,
      inlets: cylinders.length,
      position: centre,
      axis: w,
      outletDiameter: secondary.outsideDiameter,
      length,
      ...materialOf(form.primary),
      placement: { within: [addScaled(centre, ONES, -ROOM), addScaled(centre, ONES, ROOM)], tilt: TILT },
    };
  });
}

const ONES: Vec3 = [1, 1, 1];

/** A place before the ports' middle where their runners can have turned by. */
function hubOf(form: EngineForm, cylinders: readonly number[], ports: readonly Port[]): Vec3 {
  const own = ports.filter((p) => cylinders.includes(p.cylinder));
  const middle = scale(own.map((p) => p.position).reduce(add), 1 / own.length);
  const out = own.map((p) => unit(p.direction)).reduce(add);
  const { firstStraight, centerlineRadius } = form.primary.tooling;
  const far = firstStraight + 1.5 * centerlineRadius;
  return norm(out) > 0.1 ? addScaled(middle, unit(out), far) : middle;
}

function outOf(ports: readonly Port[], cylinders: readonly number[]): Vec3 {
  const out = ports
    .filter((p) => cylinders.includes(p.cylinder))
    .map((p) => unit(p.direction))
    .reduce(add);
  return norm(out) > 0.1 ? out : [0, 1, 0];
}

function sideways(side: Side, axis: Vec3, out: Vec3): Vec3 {
  const along = reject([1, 0, 0], axis);
  const outward = reject(out, axis);
  const chosen = side === 'along' ? along : outward;
  if (norm(chosen) > 0.2) return unit(chosen);
  const other = side === 'along' ? outward : along;
  return norm(other) > 0.2 ? unit(other) : anySquareTo(axis);
}

const materialOf = ({ tube }: TubeForm): Pick<Merge, 'wall' | 'material'> => ({
  wall: tube.wall,
  ...(tube.material ? { material: tube.material } : {}),
});
