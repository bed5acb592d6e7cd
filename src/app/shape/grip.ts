/**
 * A handle opened on one design: where it sits, how it may move, what it snaps to, and which design an amount of movement
 * asks for. Made when hold is taken and kept for the whole gesture. mm, radians.
 */
import { bendTargets, type Header, type Held, placeTargets, type SnapTarget } from '../../../geometry';
import type { Design, Display } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import type { Handle } from './handle';
import { gripOfMerge, gripOfPort, gripOfSurrounding, gripOfTilt } from './placeGrips';
import { gripOfAdd, gripOfBend, gripOfRun, gripOfSlide, gripOfTurn } from './runnerGrips';

export type Amount = { readonly kind: 'move'; readonly by: Vec3 } | { readonly kind: 'turn'; readonly angle: number };

export type Motion =
  | { readonly kind: 'space' }
  /** Only along `way`, a unit vector. */
  | { readonly kind: 'line'; readonly way: Vec3 }
  /** About `axis` through `centre`; `round` is the angle to add before rounding, so that the row's rotation comes out round. */
  | { readonly kind: 'turn'; readonly axis: Vec3; readonly centre: Vec3; readonly round: number };

export type Grip = {
  readonly handle: Handle;
  readonly held: Held;
  /** Where it is drawn and dragged from. */
  readonly at: Vec3;
  readonly motion: Motion;
  /** Unit direction that a typed distance goes while no direction has been shown by the hand. */
  readonly along: Vec3;
  /** The line that the place rides on where it may also be pulled aside: snapping then works along it. */
  readonly rail?: Vec3;
  /** The place that snaps, where it is not `at`. */
  readonly anchor?: Vec3;
  readonly targets: readonly SnapTarget[];
  /** Why it cannot be moved, in words with the remedy; null where it can. */
  readonly refusal: string | null;
  readonly display: Display;
  ask(from: Design, amount: Amount): Design;
};

/** What the makers of grips return; the rest is the same for all. */
export type Maker = Omit<Grip, 'handle' | 'display' | 'targets'> & { readonly targets?: readonly SnapTarget[] };

/** Null where the handle is of nothing in this design, or of a runner without points. */
export function gripOf(header: Header, handle: Handle): Grip | null {
  const made = sketch(header, handle);
  return (
    made && {
      ...made,
      handle,
      display: header.design.display ?? 'mm',
      targets: made.targets ?? targetsOf(header, handle),
    }
  );
}

/** The same without what it snaps to, which takes the longest: for drawing. */
export function sketch(header: Header, handle: Handle): Maker | null {
  switch (handle.kind) {
    case 'bend':
      return gripOfBend(header, handle.runner, handle.bend);
    case 'slide':
      return gripOfSlide(header, handle.runner, handle.bend, handle.along);
    case 'run':
      return gripOfRun(header, handle.runner, handle.straight);
    case 'turn':
      return gripOfTurn(header, handle.runner, handle.straight);
    case 'add':
      return gripOfAdd(header, handle.runner, handle.straight);
    case 'merge':
      return gripOfMerge(header, handle.id);
    case 'tilt':
      return gripOfTilt(header, handle.id, handle.about);
    case 'port':
      return gripOfPort(header, handle.id);
    case 'capsule-end':
    case 'face':
      return gripOfSurrounding(header, handle);
    case 'surrounding':
      return gripOfSurrounding(header, { kind: 'surrounding', id: handle.id });
  }
}

function targetsOf(header: Header, handle: Handle): readonly SnapTarget[] {
  switch (handle.kind) {
    case 'bend':
    case 'slide':
      return bendTargets(header, handle.runner, handle.bend);
    case 'merge':
    case 'port':
    case 'surrounding':
      return placeTargets(header, handle);
    case 'capsule-end':
    case 'face':
      return placeTargets(header, { kind: 'surrounding', id: handle.id });
    default:
      return [];
  }
}

export const byOf = (amount: Amount): Vec3 => (amount.kind === 'move' ? amount.by : [0, 0, 0]);
export const angleOf = (amount: Amount): number => (amount.kind === 'turn' ? amount.angle : 0);
