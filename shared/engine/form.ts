/**
 * The engine form: the few numbers a new header starts from, before there is a design. Plain data, mm and degrees, in the
 * design's frame: +X along the crankshaft, +Z up, +Y out of the head of bank 1. What each number means and its bounds:
 * formFields.ts. Usual values: formDefaults.ts. What is refused: formProblems.ts. From a file: readForm.ts.
 */
import type { Display, Opening, OutletJoint, Tooling, Tube, Valve } from '../design/types';
import type { Vec3 } from '../vec3';

/** How the cylinders of one collector come together: straight into it, or in twos or threes first. */
export type Arrangement = 'all-into-one' | 'pairs-then-one' | 'threes-then-one';
export const ARRANGEMENTS: readonly Arrangement[] = ['all-into-one', 'pairs-then-one', 'threes-then-one'];

/** How many cylinders each first merge joins; null: all of them at once. */
export const joinedFirst = (arrangement: Arrangement): 2 | 3 | null =>
  arrangement === 'pairs-then-one' ? 2 : arrangement === 'threes-then-one' ? 3 : null;

export type BankForm = {
  /** From one end of the bank to the other. */
  readonly cylinders: readonly number[];
  /** Centre of the first one's port at the flange's outer face. */
  readonly firstPort: Vec3;
  /** From each port to the next along +X; below zero where the cylinders run the other way. */
  readonly pitch: number;
  /** Out of the head, before `port.angle` drops it. */
  readonly direction: Vec3;
  /** Away from the crankcase: the ports' openings stand by it, and `port.angle` drops away from it. */
  readonly up: Vec3;
};

export type PortForm = {
  readonly opening: Opening;
  /** How far the port points below the bank's `direction`, degrees. */
  readonly angle: number;
  /** Valve seat to the flange's outer face; counts in the runner's length. */
  readonly lengthInHead: number;
};

export type FlangeForm = {
  readonly thickness: number;
  readonly gasket: number;
  readonly material: string;
  readonly thread: string;
  /** Clearance hole of a stud. */
  readonly hole: number;
  readonly studLength: number;
};

export type TubeForm = {
  readonly tube: Tube;
  readonly tooling: Tooling;
  /** For a primary from the valve seat, for a secondary from merge to merge; null: any, but equal. */
  readonly length: number | null;
};

/** A collector that the exhaust leaves the header by. */
export type CollectorForm = {
  readonly cylinders: readonly number[];
  /** Centre of its inlet plane. */
  readonly position: Vec3;
  /** Flow direction. */
  readonly axis: Vec3;
  readonly outletDiameter: number;
  readonly length: number;
  readonly outletJoint?: OutletJoint;
};

export type EngineForm = {
  readonly title: string;
  readonly display: Display;
  readonly cylinders: number;
  readonly banks: readonly BankForm[];
  readonly firingOrder: readonly number[];
  readonly bore?: number;
  readonly stroke?: number;
  readonly rod?: number;
  readonly compressionRatio?: number;
  /** Lowest and highest speed it is used at. */
  readonly rpm?: readonly [number, number];
  readonly intakeValve?: Valve;
  readonly exhaustValve?: Valve;
  readonly port: PortForm;
  readonly flange: FlangeForm;
  readonly arrangement: Arrangement;
  readonly primary: TubeForm;
  /** Between the first merges and the collector; null where there are none. */
  readonly secondary: TubeForm | null;
  /** How far a runner may be from its group's length in the shop, mm. */
  readonly tolerance: number;
  /** Each cylinder goes to one of them. */
  readonly collectors: readonly CollectorForm[];
  /** Least gap from tube to tube. */
  readonly tubeToTube: number;
};
