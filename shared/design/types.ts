/**
 * The design document as it lies on disk: source data only, lengths in mm, angles in degrees.
 * Optional fields are absent here; `resolveHeader` (geometry) fills the defaults in. Unknown fields are kept, never dropped.
 */
import type { Vec3 } from '../vec3';

export type Display = 'mm' | 'in';

export type Valve = {
  readonly count: number;
  readonly diameter: number;
  readonly lift: number;
  /** Crank degrees from top dead centre of the exhaust stroke. */
  readonly opens: number;
  readonly closes: number;
  /** As measured: crank degrees from top dead centre of the exhaust stroke, and mm; 0 at both ends. Default: a smooth curve from `opens` to `closes`. */
  readonly lifts?: readonly (readonly [angle: number, lift: number])[];
  /** Of the curtain area, from a flow bench: lift over diameter, coefficient. Default: textbook values. */
  readonly flow?: readonly (readonly [liftOverDiameter: number, coefficient: number])[];
};

/** The way of the fresh charge. mm, cm³. */
export type Intake = {
  /** Valve to plenum or mouth, the port in the head with it. */
  readonly runnerLength?: number;
  /** Inside. */
  readonly runnerDiameter?: number;
  /** 0: none, each runner is open to the air. */
  readonly plenumVolume?: number;
  /** Of one opening that all air passes. */
  readonly throttleDiameter?: number;
};

export type Combustion = {
  /** Air over what the fuel needs: below 1 rich. */
  readonly lambda?: number;
  /** Crank degrees after top dead centre at which half of the heat is released. */
  readonly burnMiddle?: number;
  /** From the first to the last of the heat, crank degrees. */
  readonly burnDuration?: number;
  /** Of the heat that the air can release: what is released. */
  readonly efficiency?: number;
};

/** What a measured curve has told of this engine: factors on the usual values. */
export type Fitted = { readonly flow?: number; readonly friction?: number; readonly heat?: number };

/** A torque curve measured on this engine, before anything was changed. */
export type Baseline = {
  /** What was bolted on. Default "cast". */
  readonly on?: 'cast' | 'header';
  /** rpm and N m, speeds rising. */
  readonly points: readonly (readonly [speed: number, torque: number])[];
  /** Lost between crank and where it was measured, percent. Default 0: measured at the crank. */
  readonly loss?: number;
};

export type Engine = {
  readonly cylinders?: number;
  readonly banks?: readonly (readonly number[])[];
  readonly firingOrder?: readonly number[];
  readonly bore?: number;
  readonly stroke?: number;
  readonly rod?: number;
  readonly compressionRatio?: number;
  readonly rpm?: readonly [number, number];
  readonly intakeValve?: Valve;
  readonly exhaustValve?: Valve;
  /** Crank degrees at which the cylinders fire, in the firing order, the first at 0, rising, below 720. Default: evenly. */
  readonly firingAngles?: readonly number[];
  readonly intake?: Intake;
  readonly combustion?: Combustion;
  /** hPa, °C. Default: the standard atmosphere's, 1013.25 and 15. */
  readonly air?: { readonly pressure?: number; readonly temperature?: number };
  readonly fitted?: Fitted;
  readonly baseline?: Baseline;
};

export type Opening =
  | { readonly shape: 'round'; readonly diameter: number }
  | { readonly shape: 'rounded-rectangle'; readonly width: number; readonly height: number; readonly corner: number }
  | { readonly shape: 'oval'; readonly width: number; readonly height: number };

export type Port = {
  readonly id: string;
  readonly cylinder: number;
  /** Centre of the port at the flange's outer face. */
  readonly position: Vec3;
  /** Leaving the head. */
  readonly direction: Vec3;
  /** Orients the opening; projected square to `direction`. */
  readonly up: Vec3;
  readonly opening: Opening;
  /** Valve seat to the flange's outer face; counts in the runner's length. Default 0. */
  readonly lengthInHead?: number;
  /** Siamesed ports: touching allowed this far out. Default 0. */
  readonly bundle?: number;
  /** A piece formed from the opening to the tube, along the first straight; absent: the tube starts at the flange. */
  readonly transition?: Transition;
};

export type Transition = {
  /** From the flange's outer face to where the tube starts, mm. */
  readonly length: number;
  /** Default: the tube's. */
  readonly wall?: number;
};

/** A corner of a closed plane curve, and the bulge of its edge to the next: tan(turn / 4), positive to the left, 0 straight. */
export type OutlineVertex = readonly [x: number, y: number, bulge: number];

export type Fastener = {
  readonly position: Vec3;
  readonly kind: string;
  readonly thread: string;
  readonly length?: number;
  readonly hole: number;
};

export type Flange = {
  readonly id: string;
  readonly ports: readonly string[];
  readonly thickness: number;
  readonly gasket?: number;
  readonly material?: string;
  readonly fasteners?: readonly Fastener[];
  /** How tubes meet it: butted on its face, or in a step as deep as `stepDepth`. Default "flush". */
  readonly seat?: 'flush' | 'stepped';
  /** Of the step, from the outer face, mm. Default: half the thickness. */
  readonly stepDepth?: number;
  /** Room all round between a tube and its step, mm. Default 0.2. */
  readonly stepGap?: number;
  /** Least metal round openings and holes, mm. Default: by practice, from the thickness. */
  readonly border?: number;
  /** One plate for all ports, or one for each. Default "one". */
  readonly plates?: 'one' | 'separate';
  /** The plate's edge as drawn or traced, mm, counter-clockwise; about its first port's position, x across, y up. Default: made to fit. */
  readonly outline?: readonly OutlineVertex[];
};

export type Tube = { readonly outsideDiameter: number; readonly wall: number; readonly material?: string };

export type Tooling = {
  /** "bent": betweenStraight is the clamp's grip; "welded": cut from stock bends. */
  readonly making?: 'bent' | 'welded';
  readonly centerlineRadius: number;
  readonly otherRadii?: readonly number[];
  readonly firstStraight: number;
  readonly betweenStraight: number;
  readonly lastStraight: number;
  readonly maxBendAngle: number;
  readonly maxBends: number;
  /** Extra tube to cut at each end, trimmed off once bent: for the chuck, the clamp, fitting up. mm, default 0. */
  readonly trimStart?: number;
  readonly trimEnd?: number;
  readonly bender?: Bender;
};

/** What a rotary draw bender with this die needs and does. */
export type Bender = {
  /** Straight tube that the clamp grips ahead of a bend, mm. Default: `betweenStraight`. */
  readonly clamp?: number;
  /** Straight tube that must lie behind the last bend when it is made: pressure die, mandrel, chuck. mm. Default: `lastStraight`. */
  readonly tail?: number;
  /** Test bends: to which angle the dial was set, and what was measured once it had sprung back, degrees. Default: none springs back. */
  readonly testBends?: readonly (readonly [set: number, measured: number])[];
  /** How much longer a bend comes out along its centerline than radius × angle, percent of that. Default 0. */
  readonly stretch?: number;
};

export type OutletJoint = 'slip' | 'band-clamp' | 'flange' | 'flexible' | 'weld';

export type Placement = {
  readonly within: readonly [Vec3, Vec3];
  readonly tilt?: number;
  /** The axis that `tilt` is measured from; written when the merge is first tilted. Default: the merge's own axis. */
  readonly axis?: Vec3;
};

/** To users, a collector. */
export type Merge = {
  readonly id: string;
  readonly inlets: number;
  readonly pattern?: 'ring' | 'line';
  /** Centre of the inlet plane. */
  readonly position: Vec3;
  /** Flow direction. */
  readonly axis: Vec3;
  readonly up: Vec3;
  readonly pitch?: number;
  /** Each inlet leans toward the axis by this angle, degrees. */
  readonly convergence?: number;
  readonly bundle?: number;
  readonly outletDiameter: number;
  readonly wall?: number;
  readonly material?: string;
  readonly length: number;
  readonly outletJoint?: OutletJoint;
  /** How far along the axis its tubes run on from the inlets, cut where they meet, mm. Default: worked out. */
  readonly mergingLength?: number;
  /** Plain outlet behind the cone, within `length`, mm. Default: worked out for the joint. */
  readonly outletLength?: number;
  /** Left open between faces that are welded to each other, mm. Default 0. */
  readonly weldGap?: number;
  /** Room all round between a slip joint's two tubes, mm. Default 0.25. */
  readonly slipGap?: number;
  readonly placement?: Placement;
};

export type RunnerStart = { readonly port: string } | { readonly merge: string };

export type Runner = {
  readonly id: string;
  /** Names an entry of `tubes` and of `tooling`. */
  readonly tube: string;
  readonly group?: string;
  readonly from: RunnerStart;
  readonly to: { readonly merge: string; readonly inlet?: number };
  /** Start, every tangent intersection, end; absent until routed. */
  readonly points?: readonly Vec3[];
  /** One for each interior point; default: the tooling's centerlineRadius. */
  readonly radii?: readonly number[];
  readonly locked?: boolean;
  /** Stretches of its centerline that are wrapped, mm from its start. Default, where the design has a wrap: all of it. */
  readonly wrapped?: readonly (readonly [from: number, to: number])[];
  /** Where it is bent: the bends, counted from 1, before which the tube is made of two that are welded together. */
  readonly splits?: readonly number[];
};

export type Group = { readonly length: number | null; readonly tolerance: number };

/** What a surrounding is fixed to: what is on the engine rocks with the header, the rest stands still. */
export type FixedTo = 'engine' | 'vehicle';

type Surrounding_ = {
  readonly id: string;
  readonly clearance?: number;
  readonly kind?: string;
  /** Default "vehicle". Matters only where the engine rocks. */
  readonly fixedTo?: FixedTo;
};
export type Capsule = Surrounding_ & {
  readonly shape: 'capsule';
  readonly a: Vec3;
  readonly b: Vec3;
  readonly radius: number;
};
export type Box = Surrounding_ & { readonly shape: 'box'; readonly min: Vec3; readonly max: Vec3 };
/** With flat ends; a capsule's are round. */
export type Cylinder = Surrounding_ & {
  readonly shape: 'cylinder';
  readonly a: Vec3;
  readonly b: Vec3;
  readonly radius: number;
};
/** All that lies behind it, away from where `normal` points, is solid. */
export type Plane = Surrounding_ & { readonly shape: 'plane'; readonly position: Vec3; readonly normal: Vec3 };
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in';
export type MeshSurrounding = Surrounding_ & {
  readonly shape: 'mesh';
  /** A file beside the design, no folders: .stl, .obj, .ply or .glb. */
  readonly file: string;
  readonly unit?: LengthUnit;
  readonly pose?: { readonly position?: Vec3; readonly x?: Vec3; readonly y?: Vec3 };
  /** Only triangles that reach into this box count: two corners along the file's own axes, mm. */
  readonly crop?: readonly [Vec3, Vec3];
  /** Thinned so that nothing moved farther than this, mm. */
  readonly thin?: number;
};
export type Surrounding = Capsule | Box | Cylinder | Plane | MeshSurrounding;

/** How the header moves in the space it stands in. Gaps to what does not move along are the least over all of it. */
export type Motion = {
  /** The engine rolls in its mounts about an axis, between two angles, degrees, right-handed about `axis`. */
  readonly rock?: { readonly position: Vec3; readonly axis: Vec3; readonly angles: readonly [number, number] };
  /** The tubes grow from cold to this, °C. */
  readonly heat?: { readonly temperature: number; readonly from?: number };
};

/** Heat wrap, the same all over the header. */
export type Wrap = {
  /** Of one layer, mm. */
  readonly thickness: number;
  readonly layers: number;
  /** The least gap that the roll can be passed through, mm. */
  readonly roll: number;
};

/** What is reached for with tools: which there are, and whether the header must leave them room. */
export type Access = {
  /** Every fastener and service point must be reachable: `check` fails where one is not, the router keeps room. Default false. */
  readonly required?: boolean;
  /** Kinds of tools at hand. Default: all that the tables know (shared/stock/tools.ts). */
  readonly tools?: readonly string[];
  /** Lengths of extension bars at hand, mm. Default: those of the tables. */
  readonly extensions?: readonly number[];
};

export type ServiceKind = 'spark-plug' | 'oil-filter' | 'starter' | 'dipstick' | 'bolt';

/** Something other than the header's own fasteners that must stay reachable. */
export type ServicePoint = {
  readonly id: string;
  readonly kind: ServiceKind;
  /** Where the tool or the hand takes hold: a bolt's face, a plug's seat, a filter's base. */
  readonly position: Vec3;
  /** The way it comes off. */
  readonly direction: Vec3;
  /** Across flats, mm. Default by kind. */
  readonly acrossFlats?: number;
  /** Of what comes out, mm. Default by kind. */
  readonly diameter?: number;
  /** Of what comes out, and so how far it must be drawn, mm. Default by kind. */
  readonly length?: number;
};

export type SensorKind = 'oxygen' | 'temperature';

export type Sensor = {
  readonly id: string;
  readonly kind: SensorKind;
  readonly on: { readonly runner: string } | { readonly merge: string };
  /** Along the runner's centerline from its start, or along the merge's axis from its inlet plane, mm. */
  readonly at: number;
  /** Round the tube, degrees, right-handed about the flow from its uppermost side (+Z; +Y where the tube stands upright). */
  readonly clock: number;
  /** Room straight out of the tube that the sensor with its plug and lead takes, mm. Default by kind. */
  readonly length?: number;
};

/** What tube is sold or lies on the shelf as. */
type Stock_ = {
  /** Unique among bars and bends. */
  readonly id: string;
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly material?: string;
  /** How many lie on the shelf. Default 0. */
  readonly count?: number;
  /** More can be bought. Default true. */
  readonly buy?: boolean;
  /** Of one that is bought, in the workshop's currency. */
  readonly price?: number;
};
/** Straight tube; a leftover too. mm */
export type StockBar = Stock_ & { readonly length: number };
/** A mandrel bend: U (180), J (its legs differ), 90, 45 … mm, degrees. */
export type StockBend = Stock_ & {
  /** Of its centerline. */
  readonly radius: number;
  readonly angle: number;
  /** Straight at either end, beyond the arc. */
  readonly legs: readonly [number, number];
};

/** What the builder has, how it is worked and what it costs: goes from design to design. mm, degrees. */
export type Workshop = {
  /** Lost at each saw cut. */
  readonly kerf?: number;
  /** Sawn off a new bar's end before it is used, at both ends. */
  readonly endTrim?: number;
  /** Leftovers of bars that are kept: at least this long. */
  readonly leastOffcut?: number;
  /** Left open between two pieces that are welded together. */
  readonly weldGap?: number;
  /** How much a weld draws its two pieces together. */
  readonly weldShrinkage?: number;
  /** Straight kept between a weld and a bend, where there is any. */
  readonly weldSetback?: number;
  /** The longest leg that a piece keeps; shorter ones fit more pieces into a bend, and ask for more welds. Default: all that stock has. */
  readonly longestLeg?: number;
  /** Room out from the tube that a torch needs at a weld. */
  readonly torchRoom?: number;
  /** The least step of a tape and of a dial. */
  readonly tape?: number;
  readonly dial?: number;
  /** Which way positive rotations of bend tables turn, looking along the tube the way it is counted. Right-handed: clockwise. */
  readonly rotation?: 'right-handed' | 'left-handed';
  /** By which rule the wall on the outside of a bend is foretold. */
  readonly thinning?: 'geometric' | 'tema' | 'b31.1';
  /** As prices are shown: "EUR". */
  readonly currency?: string;
  /** What an hour costs, in the currency. */
  readonly hourly?: number;
  /** Minutes that one takes. */
  readonly minutes?: { readonly cut?: number; readonly weld?: number; readonly bend?: number; readonly setUp?: number };
  /** Gas, rod and wheels of one weld, in the currency. */
  readonly weldCost?: number;
  readonly bars?: readonly StockBar[];
  readonly bends?: readonly StockBend[];
  /** Of one of anything else on the bill of materials, by its name there. */
  readonly prices?: Readonly<Record<string, number>>;
};

/** One pipe of given length and inside diameter, mm. */
export type PlainPipe = { readonly length: number; readonly bore: number };

/** Behind every collector that nothing follows. */
export type Tailpipe = PlainPipe & {
  /** Resistance in front of the mouth: stagnation pressure lost over the dynamic pressure in the tailpipe. Default 0: none. */
  readonly silencer?: number;
};

/** What the header replaces: short rough branches into one shared passage a bank. */
export type CastManifold = {
  /** From the head's face; the port in the head comes before it. */
  readonly branch: PlainPipe;
  /** From the first branch to the outlet. */
  readonly shared: PlainPipe;
  /** Of the casting, mm. Default 0.5. */
  readonly roughness?: number;
};

/** A header as lengths and inside diameters alone, before it is laid out. Lengths count from the valve. */
export type HeaderSketch = {
  readonly arrangement: 'all-into-one' | 'pairs-then-one' | 'threes-then-one';
  readonly primary: PlainPipe;
  /** Behind the first joins, where there are any. */
  readonly secondary?: PlainPipe;
  /** Its length from inlets to outlet, and the outlet's bore. */
  readonly collector: PlainPipe;
};

/** What the gas passes that is not drawn. */
export type Exhaust = {
  readonly tailpipe?: Tailpipe;
  readonly cast?: CastManifold;
  readonly sketch?: HeaderSketch;
};

export type Design = {
  readonly format: 'evenrun-design';
  readonly version: 1;
  readonly title?: string;
  readonly display?: Display;
  readonly engine?: Engine;
  readonly ports: readonly Port[];
  readonly flanges?: readonly Flange[];
  readonly tubes: Readonly<Record<string, Tube>>;
  readonly tooling: Readonly<Record<string, Tooling>>;
  readonly merges: readonly Merge[];
  readonly runners: readonly Runner[];
  readonly groups: Readonly<Record<string, Group>>;
  readonly surroundings?: readonly Surrounding[];
  readonly clearance?: { readonly tubeToTube: number };
  readonly motion?: Motion;
  readonly wrap?: Wrap;
  readonly access?: Access;
  readonly service?: readonly ServicePoint[];
  readonly sensors?: readonly Sensor[];
  readonly workshop?: Workshop;
  readonly exhaust?: Exhaust;
};
